// Decides on pins: numbered marks on a photo, each at a position, a wire, a fixing, or at what its words say. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import { isPicture } from "@/lib/files/mediaTypes";

/** What a pin marks: at most one of them. */
export type PinThing = { readonly positionId: string | null; readonly connectionId: string | null; readonly fixingId: string | null };

/** More on one photo and none can be told from the next. */
export const MOST_PINS = 99;

const COLUMNS = { position: "positionId", wire: "connectionId", fixing: "fixingId" } as const;
const NOTHING: PinThing = { positionId: null, connectionId: null, fixingId: null };

/** "wire:ID" as the column that holds it; nothing from "", and null from anything else. */
export function readThing(text: string): PinThing | null {
	if (text === "") return NOTHING;
	const [kind = "", id = "", ...more] = text.split(":");
	if (id === "" || more.length > 0) return null;
	const column = kind === "position" || kind === "wire" || kind === "fixing" ? COLUMNS[kind] : null;
	return column === null ? null : { ...NOTHING, [column]: id };
}

/** The same the other way about. */
export function writeThing({ positionId, connectionId, fixingId }: PinThing): string {
	if (positionId !== null) return `position:${positionId}`;
	if (connectionId !== null) return `wire:${connectionId}`;
	return fixingId === null ? "" : `fixing:${fixingId}`;
}

/** Pins go onto a picture that stands and is filed under a machine. */
export function mayPin(capture: { stands: "yes" | "no"; machineId: string | null; mediaType: string | null }): Result<string> {
	if (capture.stands === "no") return refuse("capture-withdrawn", "The photo was withdrawn. Pin another one.");
	if (capture.mediaType === null || !isPicture(capture.mediaType))
		return refuse("no-picture", "There is no picture to pin anything on. Take a photo of it.");
	if (capture.machineId === null) return refuse("no-machine", "Say first which machine the photo is of.");
	return ok(capture.machineId);
}

/** The number of the next pin. A number that was given once is never given again, since a print-out may bear it. */
export function nextNumber(given: readonly number[], standing: number): Result<number> {
	if (standing >= MOST_PINS) return refuse("too-many-pins", `There are ${MOST_PINS} pins on this photo. Take a closer photo for more.`);
	return ok(Math.max(0, ...given) + 1);
}

/** A pin says something: a thing of the machine that the photo is of, or words. `thing` is null where none was named. */
export function mayMark(machineId: string, thing: { machineId: string } | null | "unknown", words: string): Result<null> {
	const say = (code: string, sentence: string) => refuse(code, sentence, { fields: { thing: sentence } });
	if (thing === "unknown") return say("no-thing", "That is not known. Choose it from the list once more.");
	if (thing !== null && thing.machineId !== machineId)
		return say("of-another-machine", "That is of another machine. Choose one of this machine.");
	if (thing === null && words === "") return say("says-nothing", "Choose what is there, or write it in words.");
	return ok(null);
}

/** "12.5 % from the left, 40 % from the top". */
export const placeInWords = ({ x, y }: { x: number; y: number }): string => `${x / 100} % from the left, ${y / 100} % from the top`;
