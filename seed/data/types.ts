// What the demo shop's data looks like: plain values, as a restorer would write them down. Nothing here knows the database.

/** How a part stands to the machine. */
export type Origin = "original" | "period" | "reproduction" | "modern" | "unknown";
/** How we know. */
export type EvidenceKind = "seen" | "documented" | "told" | "assumed";
/** What a piece of evidence supports: "was in it when it came" or "was in it when it was made". */
export type Claim = "came" | "made";
/** Labour by kind, as the trade sorts it. */
export type StepKind = "take-out" | "put-in" | "alter" | "clean" | "repair" | "make" | "test" | "document" | "move";
/** Colour codes of IEC 60757. */
export type Colour = "BK" | "BN" | "RD" | "OG" | "YE" | "GN" | "BU" | "VT" | "GY" | "WH" | "PK" | "GD" | "TQ" | "SR" | "GNYE";
export type PersonKey = "A" | "B" | "C";
/** Position of a machine, as its table numbers it: k01, n5, a31. */
export type PositionId = string;
/** A part of a machine. The part that came in a position carries the position's own id. */
export type PartKey = string;
/** Instant in UTC, `2026-03-02T08:00:00.000Z`. */
export type Instant = string;
/** Day in the shop's time zone, `2026-03-02`. */
export type Day = string;
/** Whole minor units of the currency named beside it. */
export type Minor = number;

/** Three-point time in whole minutes, low <= likely <= high. */
export type Minutes = { readonly low: number; readonly likely: number; readonly high: number };

/** What a part's picture is drawn as. */
export type SketchKind =
	| "ballast"
	| "belt"
	| "block"
	| "board"
	| "bush"
	| "buzzer"
	| "cam"
	| "casting"
	| "cord"
	| "coupling"
	| "disc"
	| "door"
	| "fuse"
	| "gear"
	| "glass"
	| "harness"
	| "holder"
	| "lamp"
	| "lever"
	| "mech"
	| "motor"
	| "panel"
	| "paper"
	| "plate"
	| "reel"
	| "relay"
	| "rod"
	| "screws"
	| "scene"
	| "seat"
	| "shell"
	| "ship"
	| "spring"
	| "supply"
	| "switch"
	| "timer"
	| "transformer"
	| "tray"
	| "trim"
	| "tube"
	| "wheel"
	| "foot";

/** What holds a part: one line an item, in the words a label would carry. */
export type Fixing = {
	readonly count: number;
	/** "screw", "hex screw", "roll clip", "hinge pin" ... */
	readonly what: string;
	/** Thread or size: "4BA", "No.8 wood", "10-32 UNF". */
	readonly thread?: string;
	/** Length under the head with its unit: "1/2 in", "8 mm". */
	readonly length?: string;
	readonly head?: string;
	readonly drive?: string;
	readonly note?: string;
	/** The other position this very fixing holds too. */
	readonly sharedWith?: PositionId;
	/** How the members of the lot differ by place. */
	readonly differs?: string;
};

export type Connection = {
	/** Terminal at the part. */
	readonly from: string;
	/** Terminal at the far end. */
	readonly to: string;
	readonly colours: readonly Colour[];
	/** Base and tracer of old cloth wire are two fields: the code of a pair hides which is which. */
	readonly base?: Colour;
	readonly tracer?: Colour;
	readonly gauge?: string;
	/** Tag tied on this end, tag tied on the far end. */
	readonly tags?: readonly [string, string];
	readonly note?: string;
};

export type SettingKind =
	| "turns"
	| "angle"
	| "timing-mark"
	| "shims"
	| "cord"
	| "gap"
	| "left-hand-thread"
	| "pin-direction"
	| "place-of-members"
	| "count"
	| "order"
	| "slot"
	| "force";

/** Information that is no part and is lost when a thing is moved. */
export type Setting = { readonly kind: SettingKind; readonly words: string; readonly value?: number; readonly unit?: string };

export type Evidence = { readonly kind: EvidenceKind; readonly how: string; readonly claim: Claim; readonly words: string };

/** A later look at the same position: added to the first record, never written over it. */
export type LaterKnowledge = {
	readonly at: Instant;
	readonly by: PersonKey;
	readonly origin: Origin;
	readonly evidence: readonly Evidence[];
};

export type AsFound = {
	readonly state: "present" | "missing" | "wrong" | "not-seen";
	/** Only for what is there to be judged. */
	readonly origin?: Origin;
	readonly evidence: readonly Evidence[];
	/** State in words: what is worn, cracked, perished. */
	readonly condition?: string;
	readonly works?: boolean;
	readonly later?: readonly LaterKnowledge[];
};

export type Position = {
	readonly id: PositionId;
	/** The position whose part carries this one; null is the machine itself. */
	readonly hostPosition: PositionId | null;
	/** The very part that carries it, where that is not the one that came in `hostPosition`. */
	readonly hostPart?: PartKey;
	readonly name: string;
	readonly area: string;
	/** How many identical things make the lot; 1 for a single part. */
	readonly count: number;
	readonly sides?: readonly string[];
	/** A place that is worked on (drilled, filled) as well as, or instead of, holding a part. */
	readonly isPlace?: true;
	readonly fixings: readonly Fixing[];
	/** The fixings as one would say them. */
	readonly fixingWords?: string;
	readonly connections: readonly Connection[];
	readonly connectionWords?: string;
	readonly minutesOut: Minutes | null;
	readonly minutesIn: Minutes | null;
	readonly settings: readonly Setting[];
	readonly mirrorOf?: PositionId;
	/** Comes out as one piece: its members are not undone singly. */
	readonly whole?: true;
	readonly hazards: readonly string[];
	readonly massGrams?: number;
	readonly persons?: 2;
	readonly notes?: string;
	/** Absent for a position that did not exist when the machine came. */
	readonly asFound?: AsFound;
	readonly sketch: SketchKind;
};

/** While the part in `blocker` is fitted, `blocked` cannot be reached (from `side`, or from all sides). */
export type Obstruction = { readonly blocker: PositionId; readonly blocked: PositionId; readonly side?: string };

export type Part = {
	readonly key: PartKey;
	readonly name: string;
	readonly origin: Origin;
	readonly count: number;
	/** Where it is meant to go. */
	readonly position: PositionId;
	readonly evidence: readonly Evidence[];
	/** Purchase lines it was made or taken from. */
	readonly from: readonly string[];
	readonly fixings: readonly Fixing[];
	readonly mark?: string;
	/** Where it lies while it is not fitted yet. */
	readonly location?: string;
	readonly notes?: string;
	readonly sketch: SketchKind;
};

export type Hazard = { readonly what: string; readonly positions: readonly PositionId[]; readonly caution: string };

export type Session = { readonly person: PersonKey; readonly start: Instant; readonly minutes: number };

/** Where a part or a fixing goes when it comes out. */
export type Destination =
	| { readonly bag: number }
	| { readonly location: string }
	| { readonly tray: string }
	| { readonly onPosition: PositionId };

export type Move =
	| { readonly kind: "take-out"; readonly position: PositionId; readonly part: PartKey; readonly to: Destination }
	| { readonly kind: "put-in"; readonly position: PositionId; readonly part: PartKey };

export type Step = {
	readonly id: string;
	readonly kind: StepKind;
	readonly what: string;
	readonly who: readonly PersonKey[];
	readonly minutes: Minutes;
	/** Each person of the step, in minutes; absent while it is not done. */
	readonly actualMinutes?: number;
	readonly wait?: { readonly minutes: number; readonly why: string };
	readonly after: readonly string[];
	/** What it holds of the shop's equipment, by key; `untilDry` keeps it through the wait. */
	readonly holds?: { readonly equipment: readonly string[]; readonly untilDry?: true };
	/** Put into the plan after the work had begun. */
	readonly added?: true;
	readonly conversion?: string;
	readonly words?: string;
	/** In the order in which they were done. */
	readonly moves: readonly Move[];
	readonly sessions: readonly Session[];
	readonly state: "planned" | "started" | "done";
};

export type Pot = { readonly kind: "discount" | "freight" | "duty" | "handling" | "tax"; readonly minor: Minor };

/** Where some of a line went. `quantity` is in the line's own unit. */
export type Use = {
	readonly quantity: number;
	readonly for:
		| { readonly part: PartKey }
		| { readonly position: PositionId }
		| { readonly alteration: string }
		| { readonly fixingOf: PositionId }
		| { readonly consumable: string };
	readonly words: string;
};

export type PurchaseLine = {
	readonly id: string;
	readonly what: string;
	readonly quantity: number;
	readonly unit: string;
	/** Net in the shop's currency, before any pot. */
	readonly netMinor: Minor;
	/** Net in the currency of the invoice, where that is another. */
	readonly foreignMinor?: Minor;
	readonly uses: readonly Use[];
};

export type Purchase = {
	readonly id: string;
	readonly supplier: string;
	readonly reference: string;
	readonly ordered: Day;
	readonly received?: Day;
	/** Days from the order to the door, as they were thought of when it was ordered. */
	readonly lead?: { readonly low: number; readonly likely: number; readonly high: number };
	readonly currency: string;
	/** Shop currency for one unit of the foreign one, as the decimal text on the day's note. */
	readonly rate?: string;
	/** Foreign amounts of pots that came on the foreign invoice. */
	readonly foreignPots?: readonly Pot[];
	readonly lines: readonly PurchaseLine[];
	readonly pots: readonly Pot[];
	readonly taxPermille: number;
	/** What the 21 % was levied on. */
	readonly taxOn: readonly ("goods" | "discount" | "freight" | "duty" | "handling")[];
	readonly paidMinor: Minor;
	readonly added?: true;
};

/** Something that was thought to have to be bought, before it was. */
export type Wanted = {
	readonly what: string;
	/** What it was thought to cost, with freight and tax. */
	readonly minor: Minor;
	/** The step that needs it. */
	readonly step: string;
	/** When it was put on the list. */
	readonly at: Instant;
	/** The purchase line that it was bought with. */
	readonly line?: string;
	/** Why the first plan did not have it. */
	readonly addedWhy?: string;
};

export type OtherCost = {
	readonly kind: "consumable" | "outside-work" | "disposal" | "carriage" | "inspection" | "deposit-forgone";
	readonly what: string;
	readonly minor: Minor;
	readonly day: Day;
	readonly supplier?: string;
	/** Shown, and left out of every sum. */
	readonly shownOnly?: true;
	readonly detail?: string;
};

export type AlterationAt = { readonly position: PositionId } | { readonly part: PartKey } | { readonly place: string };

export type Alteration = {
	readonly id: string;
	readonly at: AlterationAt;
	readonly where: string;
	readonly what: string;
	readonly undo:
		| { readonly grade: "clean" | "trace"; readonly how: string; readonly minutes: Minutes; readonly waitMinutes?: number }
		| { readonly grade: "never"; readonly why: string };
	readonly step: string;
	readonly conversion?: string;
	readonly agreedBy?: string;
};

export type DecisionOption = {
	readonly name: string;
	readonly costMinor: Minor;
	readonly minutes: number;
	/** In the words of whoever decided; what can be worked out is left to the program. */
	readonly loses: string;
	readonly undo: "clean" | "trace" | "never";
	/** What it would do to the machine; left out where it is more than one thing, or none of these. */
	readonly does?: "nothing" | { readonly alters: PartKey } | { readonly partsWith: PartKey };
	readonly chosen: boolean;
	readonly refusedBecause?: string;
};

export type Decision = {
	readonly id: string;
	readonly question: string;
	readonly at: Instant;
	readonly step: string;
	readonly by: PersonKey;
	readonly agreedBy: string;
	readonly options: readonly DecisionOption[];
};

export type BagContent = {
	readonly words: string;
	readonly count: number;
	readonly part?: PartKey;
	/** Screws, washers and pins belong to the position they came from. */
	readonly fixingOf?: PositionId;
};

export type BagKind = "bag" | "open-bag" | "tote" | "tube" | "sleeve" | "tub" | "envelope" | "tray";

export type Bag = {
	readonly number: number;
	/** The tag in full, with its ISO 7064 MOD 37-2 check character. */
	readonly tag: string;
	readonly kind: BagKind;
	/** Holding: emptied when the machine goes back together. Keeping: stays with the machine for ever. */
	readonly keeping: boolean;
	readonly label: string;
	readonly side?: "LEFT" | "RIGHT" | "FRONT" | "REAR";
	readonly wayUp?: string;
	readonly contents: readonly BagContent[];
	/** The bag this one lies in. */
	readonly parent?: number;
	readonly location: string;
	readonly packedIn: string;
	readonly emptiedIn?: string;
	readonly emptiedOn?: Day;
	readonly hazards: readonly string[];
	readonly neverRefit?: true;
	readonly notes?: string;
};

export type Limit = {
	readonly what: string;
	readonly min?: number;
	readonly max?: number;
	readonly equals?: string;
	readonly unit: string;
	readonly source: string;
};

export type Measured = { readonly what: string; readonly value?: number; readonly unit: string; readonly words: string };

export type TestRun = {
	readonly when: "before" | "after";
	readonly at: Instant;
	readonly by: PersonKey;
	readonly step: string;
	readonly instrument?: string;
	readonly measured: readonly Measured[];
	readonly verdict: "pass" | "fail" | "noted" | "not-tested";
	readonly words?: string;
};

export type MachineTest = {
	readonly id: string;
	readonly what: string;
	readonly limits: readonly Limit[];
	/** How the limit is printed. */
	readonly limitWords: string;
	readonly runs: readonly TestRun[];
};

export type DigitalItem = {
	readonly name: string;
	readonly version: string;
	readonly part: PartKey;
	/** The file, byte for byte. */
	readonly text: string;
	readonly sha256: string;
	readonly pins: readonly { readonly pin: number; readonly what: string }[];
	readonly howToLoad: string;
};

export type Conversion = {
	readonly id: string;
	readonly name: string;
	readonly safety: boolean;
	readonly why: string;
	readonly partsOut: readonly PartKey[];
	readonly partsIn: readonly PartKey[];
	readonly alterations: readonly string[];
	readonly connections: readonly string[];
	readonly steps: readonly string[];
	readonly tests: readonly string[];
};

export type ConnectionChange = {
	readonly at: PositionId;
	readonly before: string;
	readonly after: string;
	readonly connectionsAfter: readonly Connection[];
	readonly conversion?: string;
	readonly step: string;
	readonly fittedNotConnected?: true;
};

export type Loan = {
	readonly part: PartKey;
	readonly to: string;
	readonly why: string;
	readonly since: Day;
	readonly due: Day;
	readonly answers: string;
	readonly costMinor?: Minor;
	readonly depositMinor?: Minor;
};

export type Disposal = {
	readonly part: PartKey;
	readonly day: Day;
	readonly by: string;
	readonly reason: string;
	readonly certificate: string;
	readonly photographedFirst: readonly string[];
	readonly bag: number;
};

export type Place = { readonly id: string; readonly name: string; readonly area: string };

/** A paper as the shop handed it over: the book proposes the lines, and some are written by hand. */
export type OwnerAsked = {
	readonly at: Instant;
	readonly by: PersonKey;
	readonly until: Day;
	/** Per cent on parts. */
	readonly handling: string;
	/** Per cent on all proposed lines, as a line of its own. */
	readonly contingency?: string;
	readonly lines?: readonly { readonly what: string; readonly minor: Minor }[];
	readonly limitMinor: Minor;
	readonly why?: string;
	readonly terms: readonly string[];
};

/** What was agreed with the owner of a customer's machine, and what waits for an answer. */
export type OwnerDealings = {
	readonly quote: OwnerAsked;
	readonly answer: { readonly at: Instant; readonly by: string; readonly how: string };
	readonly deposit: { readonly day: Day; readonly at: Instant; readonly minor: Minor; readonly words: string };
	readonly more: OwnerAsked;
};

/** How the machine came, and how it left. */
export type Ownership =
	| {
			readonly kind: "shop";
			readonly seller: string;
			readonly boughtMinor: Minor;
			readonly carriageMinor: Minor;
			readonly bought: Day;
			readonly story: string;
	  }
	| {
			readonly kind: "customer";
			readonly owner: string;
			readonly valueAgreedMinor: Minor;
			readonly limitMinor?: Minor;
			readonly story: string;
	  };

export type Sale = {
	readonly buyer: string;
	readonly day: Day;
	readonly at: Instant;
	readonly minor: Minor;
	readonly bagsCounted: number;
	readonly words: string;
};

export type Machine = {
	readonly number: number;
	readonly name: string;
	readonly what: string;
	readonly maker: string;
	readonly plate?: string;
	/** Date of manufacture, EDTF. */
	readonly madeEdtf: string;
	readonly supplyVolts: string;
	readonly massGrams: number;
	readonly received: Instant;
	readonly state: "as-found" | "waiting" | "in-work" | "finished" | "sold";
	readonly stateWords: string;
	readonly location: string;
	readonly ownership: Ownership;
	readonly dealings?: OwnerDealings;
	readonly sale?: Sale;
	readonly hazards: readonly Hazard[];
	readonly positions: readonly Position[];
	/** Places that are worked on and hold no part; not counted among the positions. */
	readonly places: readonly Place[];
	readonly obstructions: readonly Obstruction[];
	/** Parts that came later; those that came with the machine are its positions. */
	readonly newParts: readonly Part[];
	readonly conversions: readonly Conversion[];
	readonly connectionChanges: readonly ConnectionChange[];
	readonly steps: readonly Step[];
	readonly wanted: readonly Wanted[];
	readonly purchases: readonly Purchase[];
	readonly otherCosts: readonly OtherCost[];
	readonly alterations: readonly Alteration[];
	readonly decisions: readonly Decision[];
	readonly bags: readonly Bag[];
	readonly tests: readonly MachineTest[];
	readonly digitalItems: readonly DigitalItem[];
	readonly loans: readonly Loan[];
	readonly disposals: readonly Disposal[];
	readonly remarks: readonly { readonly at: Instant; readonly by: PersonKey; readonly words: string }[];
};
