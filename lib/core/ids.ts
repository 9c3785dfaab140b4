// Ids are made where the deed happens, on a phone or at the desk, so that a retry is known for what it is.
// UUID version 7 (RFC 9562): they sort by the time they were made.
import type { Clock } from "@/lib/core/clock";
import { millisOf } from "@/lib/core/instants";
import type { RandomBytes } from "@/lib/core/random";

declare const idMark: unique symbol;

/** The id of one kind of thing: an `Id<"part">` cannot be given where an `Id<"position">` belongs. */
export type Id<Kind extends string> = string & { readonly [idMark]: Kind };

export type MachineId = Id<"machine">;
export type PositionId = Id<"position">;
export type PartId = Id<"part">;
export type BagId = Id<"bag">;
export type StepId = Id<"step">;
export type PersonId = Id<"person">;
/** The client-made id of one write: the same deed sent twice is done once. */
export type DeedId = Id<"deed">;

const SHAPE = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** Whether the text is an id: a UUID of any version, in lower case. */
export const isId = (text: string): boolean => SHAPE.test(text);

/** The text as an id of one kind. Text that is no id is a bug and throws. */
export function id<Kind extends string>(text: string): Id<Kind> {
	if (!isId(text)) throw new Error(`not an id: ${JSON.stringify(text)}`);
	return text as Id<Kind>;
}

/** One UUID version 7 from a time in milliseconds and 10 random bytes (RFC 9562, section 5.7). */
export function uuidv7(millis: number, random: Uint8Array): string {
	if (!Number.isSafeInteger(millis) || millis < 0 || millis > 0xffffffffffff) throw new Error(`no time for an id: ${millis}`);
	if (random.length !== 10) throw new Error(`an id takes 10 random bytes, not ${random.length}`);
	const time = millis.toString(16).padStart(12, "0");
	const rest = Array.from(random, (byte, place) => {
		const marked = place === 0 ? (byte & 0x0f) | 0x70 : place === 2 ? (byte & 0x3f) | 0x80 : byte;
		return marked.toString(16).padStart(2, "0");
	}).join("");
	return `${time.slice(0, 8)}-${time.slice(8)}-${rest.slice(0, 4)}-${rest.slice(4, 8)}-${rest.slice(8)}`;
}

/**
 * Makes ids that sort in the order in which they were made, also within one millisecond and when the clock is set back:
 * the first random bits are then counted up instead of drawn (RFC 9562, section 6.2, method 2).
 */
export function idMaker(clock: Clock, randomBytes: RandomBytes): <Kind extends string>() => Id<Kind> {
	let lastMillis = -1;
	let last = new Uint8Array(10);
	return <Kind extends string>() => {
		const now = millisOf(clock());
		if (now > lastMillis) {
			lastMillis = now;
			// Copied into bytes of our own, in case the source hands out one buffer again and again.
			last = Uint8Array.from(randomBytes(10));
			// The top bit starts at 0, which leaves room to count.
			last[0] = (last[0] ?? 0) & 0x07;
		} else {
			const counted = countedUp(last);
			if (counted === null) {
				lastMillis += 1;
				last = Uint8Array.from(randomBytes(10));
				last[0] = (last[0] ?? 0) & 0x07;
			} else last = counted;
		}
		return id<Kind>(uuidv7(lastMillis, last));
	};
}

/** One more, in the bits that `uuidv7` keeps, or null when they are all ones. */
function countedUp(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
	const next = Uint8Array.from(bytes);
	for (let place = next.length - 1; place >= 0; place--) {
		const kept = place === 0 ? 0x0f : place === 2 ? 0x3f : 0xff;
		const value = (next[place] ?? 0) & kept;
		if (value < kept) {
			next[place] = value + 1;
			return next;
		}
		next[place] = 0;
	}
	return null;
}
