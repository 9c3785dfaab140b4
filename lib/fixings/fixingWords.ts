// Fixings as they are written on a job card: `6 x No.8 x 1 wood, round slotted`, `4BA x 1/2 cheese slotted`.
// Reading is generous and loses nothing: what is not understood becomes the note. Sizes are kept as written, since
// 4BA, 6-32 and M3.5 only look alike.

/** What a fixing is. Every text may be empty: unknown is allowed. */
export type FixingWords = {
	readonly count: number;
	/** "4BA", "No.8 wood", "M4", "10-32 UNF", "1/4 BSW". */
	readonly thread: string;
	/** Under the head, as written: "1/2", "8 mm". */
	readonly length: string;
	readonly head: string;
	readonly drive: string;
	readonly note: string;
};

const HEADS = [
	"countersunk",
	"fillister",
	"shoulder",
	"carriage",
	"clevis",
	"knurled",
	"castle",
	"cheese",
	"button",
	"raised",
	"round",
	"wing",
	"oval",
	"grub",
	"flat",
	"dome",
	"pan",
	"cap",
	"hex",
];
const DRIVES = ["slotted", "slot", "phillips", "pozidriv", "cross", "socket", "square", "torx", "spanner", "hex key"];

// What a size looks like: BA, BSW, metric, numbered and inch threads, wood screw numbers, plain fractions.
const SIZE =
	/^(?:No\.? ?\d{1,2}|\d{1,2} ?BA|M\d{1,2}(?:\.\d+)?|\d{1,2}-\d{2}|\d+(?:[ -]\d+)?\/\d+(?:-\d{2})?|\d{1,2} ?g)(?: (?:UNC|UNF|UNEF|UN|BSW|BSF|BSC|BSB|NC|NF|LH|left hand))?$/i;
const LENGTH = /^(?:\d+(?:[ -]\d+)?\/\d+|\d+(?:\.\d+)?)(?: ?(?:mm|in|inch|"))?$/i;
const KIND = /^(?:wood|machine|self-tapping|sheet metal|coach)$/i;

/**
 * Reads one fixing. Requires one line of text; a count in front is optional and 1 when left out.
 *
 * @example readFixing("6 x No.8 x 1 wood, round slotted")
 * // { count: 6, thread: "No.8 wood", length: "1", head: "round", drive: "slotted", note: "" }
 */
export function readFixing(text: string): FixingWords {
	const plain = text.normalize("NFC").replace(/[×✕]/g, "x").replace(/\s+/g, " ").trim();
	const [main = "", ...others] = plain.split(/\s*[,;]\s*/);
	const pieces = main.split(/ x /i).map((piece) => piece.trim());
	let count = 1;
	const first = pieces[0] ?? "";
	if (/^\d{1,4}$/.test(first) && pieces.length > 1) {
		count = Math.max(1, Number(first));
		pieces.shift();
	} else {
		// "1 split pin", "2 springs": a count before words and not before a size.
		const counted = /^(\d{1,4}) (.+)$/.exec(first);
		if (counted?.[1] && counted[2] && !startsWithSize(first)) {
			count = Math.max(1, Number(counted[1]));
			pieces[0] = counted[2];
		}
	}
	let thread = "";
	let length = "";
	let kind = "";
	let head = "";
	let drive = "";
	const rest: string[] = [];
	const sort = (word: string): boolean => {
		const lower = word.toLowerCase();
		if (head === "" && HEADS.includes(lower)) head = lower;
		else if (drive === "" && DRIVES.includes(lower)) drive = lower === "slot" ? "slotted" : lower;
		else if (kind === "" && KIND.test(word)) kind = lower;
		else return false;
		return true;
	};
	const sortWords = (words: string): void => {
		const left = words
			.split(" ")
			.filter((word) => word !== "" && !sort(word))
			.join(" ");
		// The first words that are no head, drive or kind name the fixing: "split pin 1/16".
		if (left !== "" && thread === "" && rest.length === 0) thread = left;
		else if (left !== "") rest.push(left);
	};
	for (const piece of pieces) {
		const [size, after] = leadingSize(piece, thread === "" ? SIZE : LENGTH);
		if (size === "") sortWords(piece);
		else {
			if (thread === "") thread = size;
			else if (length === "") length = size;
			else rest.push(size);
			sortWords(after);
		}
	}
	for (const other of others) {
		if (other.split(" ").every((word) => HEADS.includes(word.toLowerCase()) || DRIVES.includes(word.toLowerCase()) || KIND.test(word)))
			sortWords(other);
		else if (other !== "") rest.push(other);
	}
	// Nothing that looks like a size: the words are the fixing ("cam lock", "split pin").
	if (thread === "" && rest.length > 0) thread = rest.shift() ?? "";
	return { count, thread: [thread, kind].filter(Boolean).join(" "), length, head, drive, note: rest.join(", ") };
}

const startsWithSize = (text: string): boolean => leadingSize(text, SIZE)[0] !== "";

/** The longest run of words at the start that is a size, and what follows it. */
function leadingSize(text: string, shape: RegExp): [size: string, after: string] {
	const words = text.split(" ");
	for (let taken = words.length; taken > 0; taken--) {
		const size = words.slice(0, taken).join(" ");
		if (shape.test(size)) return [size, words.slice(taken).join(" ")];
	}
	return ["", text];
}

/**
 * Reads what holds a part: several fixings, one a line or joined by semicolons or " + ".
 * "-", "none" and nothing give an empty list.
 */
export function readFixings(text: string): FixingWords[] {
	return text
		.split(/\r?\n|;| \+ /)
		.map((line) => line.trim())
		.filter((line) => line !== "" && line !== "-" && line.toLowerCase() !== "none")
		.map(readFixing);
}

/** One fixing in the trade's writing, without its count: `4BA x 1/2, cheese slotted`; "fixing" when nothing is known. */
export function fixingSize(fixing: Pick<FixingWords, "thread" | "length" | "head" | "drive">): string {
	const size = [fixing.thread, fixing.length].filter(Boolean).join(" x ");
	const shape = [fixing.head, fixing.drive].filter(Boolean).join(" ");
	return [size, shape].filter(Boolean).join(", ") || "fixing, size unknown";
}

/** One fixing with its count: `6 x No.8 wood x 1, round slotted`. The count is the first thing a hand checks. */
export const formatFixing = (fixing: Pick<FixingWords, "count" | "thread" | "length" | "head" | "drive">): string =>
	`${fixing.count} x ${fixingSize(fixing)}`;

/** Several fixings on one line. */
export const formatFixings = (fixings: readonly Pick<FixingWords, "count" | "thread" | "length" | "head" | "drive">[]): string =>
	fixings.map(formatFixing).join("; ");
