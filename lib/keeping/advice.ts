// What must not share a bag, and what must stay dry: hints at the moment of bagging, never a ban. Pure.
//
// The rules are those of conservation guides on plastics, rubber and bags (of the Canadian Conservation Institute and
// others) as the trade has them; where no guide was seen it says "common practice, no source".

/** A thing as the advice sees it: its words and its material, as far as somebody said them. */
export type Kept = { readonly name: string; readonly material: string };

export type Hint = {
	/** What to do: "Not in one bag with metal: …". */
	readonly say: string;
	/** Where that stands. */
	readonly source: string;
};

const GUIDES = "conservation guides on plastics, rubber and bags";
const PRACTICE = "common practice, no source";

type Kind =
	| "rubber"
	| "soft plastic"
	| "celluloid"
	| "battery"
	| "oily metal"
	| "paper"
	| "bright metal"
	| "felt or wool"
	| "raw wood or card"
	| "lead or zinc"
	| "steel"
	| "metal";

/** Words by which a kind is known, in the material or the name. */
const WORDS: Readonly<Record<Kind, RegExp>> = {
	rubber: /\brubber|\bneoprene\b/i,
	"soft plastic": /\bpvc\b|\bvinyl\b|soft plastic|\bplasticised/i,
	celluloid: /celluloid|cellulose (?:nitrate|acetate)/i,
	battery: /batter(?:y|ies)|\baccumulator/i,
	"oily metal": /\boil(?:y|ed)\b|\bgreas(?:y|ed)\b|\bgearbox\b/i,
	paper: /\bpapers?\b|\bcards?\b|\btickets?\b|\bdecals?\b|\bschematic|\binstruction|\bprint(?:ed)?\b/i,
	"bright metal": /\bcopper\b|\bbrass\b|\bsilver\b/i,
	"felt or wool": /\bfelt\b|\bwool/i,
	"raw wood or card": /\bwood(?:en)?\b|\bplywood\b|\boak\b|\bpine\b|\bbeech\b|\bcardboard\b|\bhardboard\b/i,
	"lead or zinc": /\blead\b|\bzinc\b|\bzamak\b|pot ?metal|\bdie-?cast\b/i,
	steel: /\bsteel\b|\biron\b/i,
	metal: /\bsteel\b|\biron\b|\bbrass\b|\bcopper\b|\bsilver\b|\bzinc\b|\balumini?um\b|\bmetal\b|\bbronze\b/i,
};

/** What is of rubber unless a material is said: "drive belt" is, "drive belt, leather" is not. */
const LIKELY_RUBBER = /\btyres?\b|\bgrommets?\b|\bo-rings?\b|\bdrive belt/i;
/** Materials that are of no kind here, and decide against the guess all the same. */
const OTHER_MATERIAL = /\bleather\b|\bcloth\b|\bcanvas\b|\bcotton\b|\bcord\b|\bnylon\b|\bplastic\b/i;
/** Lead in a name is a wire ("mains lead") unless it is said so. */
const LEAD_METAL = /\blead(?= (?:weights?|seals?|shot|ballast|sheet|sinkers?|figures?|washers?|pipes?|alloy)\b)|\bof lead\b/i;

const kindsIn = (words: string): Kind[] => (Object.keys(WORDS) as Kind[]).filter((kind) => WORDS[kind].test(words));

/**
 * The kinds that a thing is of. A material that is said decides before a guess from the name. "Wood" in a screw's name
 * (wood screw) is no wood, a "card" of circuits is no paper, and a "lead" is a wire.
 */
export function kindsOf({ name, material }: Kept): Kind[] {
	const plain = name.replace(/wood[- ]?screws?|No\.? ?\d+ wood|circuit cards?/gi, "");
	const called = LEAD_METAL.test(plain) ? plain : plain.replace(/\bleads?\b/gi, "");
	const said = kindsIn(`${material} ${called}`);
	const isGuessed = material.trim() === "" && LIKELY_RUBBER.test(name) && !OTHER_MATERIAL.test(name) && !said.some(isMaterial);
	return isGuessed ? ["rubber", ...said.filter((kind) => kind !== "rubber")] : said;
}

/** A battery and an oily gearbox are things, the rest is what a thing is made of. */
const isMaterial = (kind: Kind): boolean => kind !== "battery" && kind !== "oily metal";

/** Two kinds that must not lie together, and why. */
const APART: readonly { readonly one: Kind; readonly other: Kind; readonly why: string; readonly source: string }[] = [
	{ one: "rubber", other: "bright metal", why: "the sulphur in rubber tarnishes copper, brass and silver", source: PRACTICE },
	{
		one: "felt or wool",
		other: "bright metal",
		why: "felt and wool give off sulphur, which tarnishes copper, brass and silver",
		source: PRACTICE,
	},
	{ one: "celluloid", other: "metal", why: "celluloid gives off acid as it ages, which eats metal", source: GUIDES },
	{ one: "soft plastic", other: "metal", why: "soft PVC sweats plasticiser and acid", source: PRACTICE },
	{ one: "oily metal", other: "paper", why: "oil goes through paper and stays", source: PRACTICE },
	{
		one: "raw wood or card",
		other: "lead or zinc",
		why: "raw wood and card give off acid, which eats lead and zinc alloys",
		source: PRACTICE,
	},
];

/** What a thing asks for by itself, whatever it lies with. */
const ALONE: readonly { readonly kind: Kind; readonly say: string; readonly source: string }[] = [
	{ kind: "rubber", say: "Rubber by itself: it marks and sticks to what it touches, and perishes sooner shut in.", source: GUIDES },
	{ kind: "soft plastic", say: "Soft PVC by itself, not wrapped in other plastic.", source: GUIDES },
	{ kind: "celluloid", say: "Celluloid cool, aired and alone, not wrapped: it burns fiercely and spoils what is near.", source: GUIDES },
	{ kind: "battery", say: "A battery out of the machine and in no bag with anything: it leaks.", source: PRACTICE },
	{ kind: "paper", say: "Pin-hole the bag: sealed polyethylene sweats, and acids from paper build up in it.", source: GUIDES },
	{ kind: "raw wood or card", say: "Pin-hole the bag: sealed polyethylene sweats, and acids from wood build up in it.", source: GUIDES },
	{
		kind: "steel",
		say: "Bare steel dry: oiled paper or a sachet of desiccant, renewed every year (40 % relative humidity or less).",
		source: GUIDES,
	},
];

/** Rubber bands and tape never touch a part: said with every bag that is made. */
export const NEVER: Hint = { say: "No rubber bands and no adhesive tape on parts.", source: GUIDES };

/**
 * The hints for a thing that goes into a bag with what is in it already: first what must not lie together, then what the
 * thing asks for by itself. Each once.
 */
export function adviceFor(thing: Kept, inTheBag: readonly Kept[]): Hint[] {
	const own = kindsOf(thing);
	const apart = inTheBag.flatMap((other) => {
		const its = kindsOf(other);
		return APART.flatMap(({ one, other: two, why, source }) => {
			const clash = (own.includes(one) && its.includes(two)) || (own.includes(two) && its.includes(one));
			return clash ? [{ say: `Not in one bag with the ${lower(other.name)}: ${why}.`, source }] : [];
		});
	});
	const alone = ALONE.flatMap(({ kind, say, source }) => (own.includes(kind) ? [{ say, source }] : []));
	return [...new Map([...apart, ...alone].map((hint) => [hint.say, hint])).values()];
}

/** The hints for a bag as it is: every two things in it that must not lie together. */
export function adviceForBag(things: readonly Kept[]): Hint[] {
	const hints = things.flatMap((thing, at) =>
		adviceFor(thing, things.slice(0, at)).map((hint) => ({
			...hint,
			say: hint.say.replace(/^Not in one bag with/, `${thing.name}: not in one bag with`),
		})),
	);
	return [...new Map(hints.map((hint) => [hint.say, hint])).values()];
}

const lower = (name: string): string => (/^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name);
