// What a step's own words give to be careful about. Pure. Common practice, no source; local codes come first.

/** What a hand must know before it begins, found in the words of a step. */
export type StepCaution = { readonly about: string; readonly say: string };

const CAUTIONS: readonly { readonly about: string; readonly words: RegExp; readonly say: string }[] = [
	{
		about: "mains",
		words:
			/\b(mains|plug|flex|fuse|earth|earthed|bond(s|ed)?|insulation|live|line voltage|transformer|230 ?v|120 ?v|wire up|wiring|electrical|ballast|socket)\b/i,
		say: "Unplug, tag the plug, prove dead. Switched off is not dead: start buttons and door switches may carry mains.",
	},
	{ about: "a capacitor", words: /\bcapacitors?\b/i, say: "Discharge it through a resistor, then measure." },
	{ about: "stored force", words: /\b(springs?|counterweight|raised arm|weights?)\b/i, say: "Block it first." },
	{
		about: "mercury or a fluorescent tube",
		words: /\b(mercury|fluorescent|tube lamp|starter)\b/i,
		say: "Do not break it. In a sleeve; waste for a licensed trade.",
	},
	{
		about: "PCB",
		words: /\b(pcb|ballast|motor capacitor)\b/i,
		say: "Before 1979, and unless it is marked otherwise, treat it as containing PCB: gloves, a tub, licensed disposal. Photograph the label first.",
	},
	{
		about: "asbestos",
		words: /\b(asbestos|brake pad|resistor board|strip backing)\b/i,
		say: "Do not sand, drill or blow. A laboratory says what it is.",
	},
	{
		about: "lead paint",
		words: /\b(lead paint|old paint|strip(ping)? paint|sand(ing)?)\b/i,
		say: "Wet methods; no dry sanding, no heat gun on old paint.",
	},
	{ about: "solvents", words: /\b(solvent|enamel|two-part|epoxy|lacquer)\b/i, say: "Air and gloves." },
];

/** Every caution that the words call for; "mains" first. */
export const cautionsIn = (text: string): StepCaution[] =>
	CAUTIONS.filter(({ words }) => words.test(text)).map(({ about, say }) => ({ about, say }));

/** Stands before everything else wherever mains may be met. */
export const CODES_COME_FIRST = "Local codes, the maker's instructions and a licensed electrician come first.";
