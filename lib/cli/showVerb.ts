// `asfound show --machine N [--as-of DATE] [--known DATE] [--json]`: a machine's build at any past instant, from its entries.

import { BAD_INPUT, refused, type Said, said } from "@/lib/cli/said";
import { shopFolder } from "@/lib/cli/shopFolder";
import { addDays, day, formatDay, formatInstant, isDay, startOfDay } from "@/lib/core/days";
import { type Instant, instantOf, millisOf, parseInstant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import { openStore, type Reader } from "@/lib/db/store";
import { type BuildAsOf, buildAsOf, type LooseAsOf, type PartAsOf, type PositionAsOf } from "@/lib/ledger/asOf";
import { storyOfMachine, timeZoneInLedger } from "@/lib/ledger/asOfQueries";

export type ShowOptions = {
	readonly data?: string;
	readonly machine: number;
	/** A day (its end is meant) or an instant; now when left out. */
	readonly asOf?: string;
	/** Only what was entered by then. */
	readonly known?: string;
	readonly json?: boolean;
};

/** Runs the verb. `now` is the present instant. */
export async function showVerb(options: ShowOptions, now: Instant): Promise<Said> {
	const json = options.json ?? false;
	const folder = shopFolder(options.data);
	if (!folder.ok) return refused(json, BAD_INPUT, folder.error.code, folder.error.say);
	const store = await openStore(folder.value);
	try {
		const shown = await show(store.read, options, now);
		if (!shown.ok) return refused(json, BAD_INPUT, shown.error.code, shown.error.say);
		return said(json ? `${JSON.stringify(shown.value, null, 2)}\n` : inWords(shown.value));
	} finally {
		await store.close();
	}
}

type Shown = {
	readonly format: "asfound.build-as-of/1";
	readonly at: Instant;
	readonly timeZone: string;
	readonly entries: number;
	readonly build: BuildAsOf;
};

async function show(read: Reader, { machine, asOf, known }: ShowOptions, now: Instant): Promise<Result<Shown>> {
	const timeZone = await timeZoneInLedger(read);
	if (timeZone === null) return refuse("no-shop", "This book has not been opened yet: there is no shop in it.");
	const at = asOf === undefined ? ok(now) : readMoment(asOf, timeZone);
	if (!at.ok) return at;
	const knownAt = known === undefined ? ok(null) : readMoment(known, timeZone);
	if (!knownAt.ok) return knownAt;
	const found = await read.machine.findUnique({ where: { number: machine }, select: { id: true } });
	if (!found) return refuse("no-machine", `There is no machine ${machine} in this shop.`);
	const { story, entries } = await storyOfMachine(read, found.id, knownAt.value);
	const build = buildAsOf(story, found.id, at.value);
	if (!build) return refuse("not-known-yet", `Nothing had been entered about machine ${machine} by then.`);
	if (at.value < startOfDay(day(build.receivedDay), timeZone))
		return refuse(
			"not-here-yet",
			`Machine ${machine} came on ${formatDay(day(build.receivedDay))}; its ledger tells nothing of the time before.`,
		);
	return ok({ format: "asfound.build-as-of/1", at: at.value, timeZone, entries, build });
}

/** An instant, or the end of a day in the shop's zone. */
function readMoment(text: string, timeZone: string): Result<Instant> {
	if (isDay(text)) return ok(instantOf(millisOf(startOfDay(addDays(day(text), 1), timeZone)) - 1));
	const at = parseInstant(text);
	if (at.ok) return at;
	return refuse(
		"moment-unreadable",
		`Write a day like 2026-03-20, or a moment like 2026-03-20T14:05:00Z; "${text.slice(0, 40)}" cannot be read.`,
	);
}

function inWords({ at, timeZone, entries, build }: Shown): string {
	const lines = [
		`Machine ${build.number}, ${build.name}, as of ${formatInstant(at, timeZone)} (${timeZone}), from ${entries === 1 ? "one entry" : `${entries} entries`}`,
		"",
		...treeLines(build.positions, 0),
	];
	if (build.loose.length > 0) lines.push("", "Not in the machine:", ...build.loose.flatMap(looseLines));
	return `${lines.join("\n")}\n`;
}

const partInWords = ({ tag, name, count, origin }: PartAsOf): string =>
	[name, ...(count === 1 ? [] : [`x ${count}`]), ...(tag === null ? [] : [tag]), origin].join("  ");

function treeLines(positions: readonly PositionAsOf[], depth: number): string[] {
	const indent = "  ".repeat(depth);
	return positions.flatMap((position) => [
		`${indent}${position.mark}  ${positionInWords(position)}`,
		...treeLines(position.hosts, depth + 1),
	]);
}

function positionInWords({ name, kind, part, empty }: PositionAsOf): string {
	// A part is mostly called what its position is called; said once it reads better.
	if (part) return part.name === name ? partInWords(part) : `${name}: ${partInWords(part)}`;
	if (kind === "place") return `${name} (a place)`;
	return `${name}: ${emptyInWords(empty)}`;
}

function emptyInWords(empty: PositionAsOf["empty"]): string {
	return empty === "unseen" ? "not seen yet" : empty === "missing" ? "missing when it came" : "empty";
}

const looseLines = ({ part, where, hosts }: LooseAsOf): string[] => [`  ${partInWords(part)}: ${where}`, ...treeLines(hosts, 2)];
