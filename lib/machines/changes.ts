// Machines come in, are described, are stamped, and leave.

import { notEmptyAtTheEnd } from "@/lib/bags/leftOver";
import { partsNotHere } from "@/lib/bags/nesting";
import { type Day, dayOf, formatDay } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type RowChange, type Tables } from "@/lib/ledger/rows";
import { counted, mayBecome, mayHandOver, mayStamp, numberFor } from "@/lib/machines/rules";
import type {
	CloseFault,
	DescribeMachine,
	HandOver,
	PromiseDay,
	SayFault,
	SayNote,
	SetMachineState,
	TakeInMachine,
} from "@/lib/machines/schema";
import { requireShop } from "@/lib/shop/queries";

const NO_MACHINE = refuse("no-such-machine", "That machine is not in the book. Load the page again.");

const machineOf = async (read: Reader, id: string): Promise<Result<Tables["Machine"]>> => {
	const machine = await read.machine.findUnique({ where: { id } });
	return machine ? ok(machine) : NO_MACHINE;
};

/** The chosen party, or a new one by name (its row is added to `rows`), or nobody. */
async function partyOf(
	read: Reader,
	env: Env,
	rows: RowChange[],
	given: { readonly id: string | null; readonly name: string; readonly field: string },
): Promise<Result<string | null>> {
	if (given.id !== null) {
		const known = await read.party.findUnique({ where: { id: given.id }, select: { id: true } });
		if (known) return ok(known.id);
		return refuse("no-such-party", "That name is not in the book any more. Choose again.", { fields: { [given.field]: "Choose again." } });
	}
	if (given.name === "") return ok(null);
	const id = env.newId();
	rows.push(add("Party", { id, kind: "owner", name: given.name, contact: null }));
	return ok(id);
}

/** Takes a machine in: its identity and how it came. Its as found record is open from now on. Gives its id and number. */
export const takeInMachine = (input: TakeInMachine, env: Env): Promise<Result<{ id: string; number: number }>> =>
	record(env, async (read) => {
		const taken = await read.machine.findMany({ select: { number: true } });
		const number = numberFor(
			input.number,
			taken.map((machine) => machine.number),
		);
		if (!number.ok) return number;
		const rows: RowChange[] = [];
		const seller = await partyOf(read, env, rows, { id: input.sellerId, name: input.sellerName, field: "sellerId" });
		if (!seller.ok) return seller;
		const owner = await partyOf(read, env, rows, { id: input.ownerId, name: input.ownerName, field: "ownerId" });
		if (!owner.ok) return owner;
		const id = env.newId();
		rows.push(
			add("Machine", {
				id,
				number: number.value,
				name: input.name,
				kind: input.kind,
				maker: input.maker,
				model: input.model,
				serial: input.serial,
				made: input.made,
				ownership: input.ownership,
				state: "intake",
				sellerId: seller.value,
				ownerId: owner.value,
				priceMinor: input.price,
				carriageMinor: input.carriage,
				soldMinor: null,
				carried: input.carried,
				condition: input.condition,
				hazards: input.hazards,
				receivedDay: input.receivedDay,
				asFoundAt: null,
				promisedDay: null,
				leftDay: null,
				portraitSha: null,
			}),
		);
		const say = `Took in machine ${number.value}, ${input.name}.`;
		return ok(deed(id, "machine.taken-in", { table: "Machine", id }, { say }, rows, { id, number: number.value }));
	});

/** Corrects what is said of a machine; the earlier words stay readable in the ledger. */
export const describeMachine = (input: DescribeMachine, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const rows: RowChange[] = [];
		const seller = await partyOf(read, env, rows, { id: input.sellerId, name: input.sellerName, field: "sellerId" });
		if (!seller.ok) return seller;
		const owner = await partyOf(read, env, rows, { id: input.ownerId, name: input.ownerName, field: "ownerId" });
		if (!owner.ok) return owner;
		const before = machine.value;
		const patch = {
			name: input.name,
			kind: input.kind,
			maker: input.maker,
			model: input.model,
			serial: input.serial,
			made: input.made,
			ownership: input.ownership,
			carried: input.carried,
			condition: input.condition,
			hazards: input.hazards,
			receivedDay: input.receivedDay,
			sellerId: seller.value,
			ownerId: owner.value,
			priceMinor: input.price,
			carriageMinor: input.carriage,
		};
		const laid = await overMeanwhile(read, "Machine", before, env.seen ?? UNSEEN, patch, MEANWHILE);
		if (!laid.ok) return laid;
		rows.push(change("Machine", before, laid.value));
		const changed = Object.entries(laid.value).flatMap(([column, value]) =>
			before[column as keyof typeof before] === value ? [] : [WORDS[column] ?? column],
		);
		const say = changed.length === 0 ? "Looked over what is said of the machine." : `Corrected ${listed(changed)}.`;
		return ok(deed(before.id, "machine.described", { table: "Machine", id: before.id }, { say, changed }, rows, null));
	});

/** Says by which day it is promised to be ready, or that nothing is promised any more. The plan keeps promises first. */
export const promiseReady = (input: PromiseDay, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const before = machine.value;
		const { timeZone } = await requireShop(read);
		if (input.promisedDay !== null && input.promisedDay < dayOf(env.clock(), timeZone)) {
			const over = "That day is over. Write one that is still to come, or leave it empty.";
			return refuse("promise-over", over, { fields: { promisedDay: over } });
		}
		const say = input.promisedDay === null ? "No day is promised any more." : `Promised to be ready by ${formatDay(input.promisedDay)}.`;
		return ok(
			deed(
				before.id,
				"machine.promised",
				{ table: "Machine", id: before.id },
				{ say },
				[change("Machine", before, { promisedDay: input.promisedDay })],
				null,
			),
		);
	});

const MEANWHILE = { fields: { priceMinor: "price", carriageMinor: "carriage" }, together: [["ownership", "ownerId"]] };

const WORDS: Readonly<Record<string, string>> = {
	name: "the name",
	kind: "the kind",
	maker: "the maker",
	model: "the model",
	serial: "the serial number",
	made: "when it was made",
	ownership: "whose it is",
	carried: "how it was carried",
	condition: "its condition",
	hazards: "its hazards",
	receivedDay: "the day it came in",
	sellerId: "who it came from",
	ownerId: "the owner",
	priceMinor: "what was paid",
	carriageMinor: "what carriage cost",
};

const listed = (words: readonly string[]): string =>
	words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;

/**
 * Closes the as found record, once: what is learnt later is added after it and never written over it.
 * `at` is when it was closed, if that is entered later than it happened.
 */
export const stampAsFound = (
	input: { readonly machineId: string; readonly at?: Instant },
	env: Env,
): Promise<Result<{ asFoundAt: string }>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const { id } = machine.value;
		const at = input.at ?? env.clock();
		const positions = await read.position.count({ where: { machineId: id } });
		const last = await read.finding.findFirst({ where: { machineId: id }, orderBy: { at: "desc" }, select: { at: true } });
		const ruling = mayStamp(machine.value, { positions, lastFindingAt: last?.at ?? null }, at);
		if (!ruling.ok) return ruling;
		const say = `Stamped as found: ${counted(positions, "position")}.`;
		return ok(
			deed(
				id,
				"machine.stamped-as-found",
				{ table: "Machine", id },
				{ say, positions },
				[change("Machine", machine.value, { asFoundAt: at, state: machine.value.state === "intake" ? "waiting" : machine.value.state })],
				{ asFoundAt: at },
			),
		);
	});

/** The photo that stands for the machine, by its SHA-256; it must be in the book already. */
export const setPortrait = (input: { readonly machineId: string; readonly fileSha: string }, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const file = await read.storedFile.findUnique({ where: { id: input.fileSha }, select: { mediaType: true } });
		if (!file?.mediaType.startsWith("image/"))
			return refuse("no-such-photo", "That photo is not in the book. Take it again, or choose another.");
		const { id } = machine.value;
		return ok(
			deed(
				id,
				"machine.portrait-set",
				{ table: "Machine", id },
				{ say: "Chose the photo that stands for the machine." },
				[change("Machine", machine.value, { portraitSha: input.fileSha })],
				null,
			),
		);
	});

const STATE_WORDS = { waiting: "waits", work: "is in work", ready: "is finished" } as const;

/** Says how far the machine is: waiting, in work or finished. */
export const setMachineState = (input: SetMachineState, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const ruling = mayBecome(machine.value.state, input.state);
		if (!ruling.ok) return ruling;
		const { id } = machine.value;
		const back = machine.value.state === "left";
		return ok(
			deed(
				id,
				"machine.state-set",
				{ table: "Machine", id },
				{
					say: back ? `The machine is back in the shop and ${STATE_WORDS[input.state]}.` : `The machine ${STATE_WORDS[input.state]}.`,
					state: input.state,
				},
				[change("Machine", machine.value, { state: input.state, leftDay: back ? null : machine.value.leftDay })],
				null,
			),
		);
	});

/** The machine leaves the shop. Refused while bags that should be empty are not, or parts are outside, unless it is said why. */
export const handOver = (input: HandOver, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const { id } = machine.value;
		const left = await leftBehind(read, id);
		const ruling = mayHandOver(machine.value, left, input.why);
		if (!ruling.ok) return ruling;
		const rows: RowChange[] = [];
		const buyer = await partyOf(read, env, rows, { id: input.buyerId, name: input.buyerName, field: "buyerId" });
		if (!buyer.ok) return buyer;
		rows.push(
			change("Machine", machine.value, {
				state: "left",
				leftDay: input.leftDay,
				ownerId: buyer.value ?? machine.value.ownerId,
				soldMinor: input.sold ?? machine.value.soldMinor,
			}),
		);
		return ok(
			deed(
				id,
				"machine.handed-over",
				{ table: "Machine", id },
				{ say: "Handed the machine over.", day: input.leftDay as Day, why: input.why, ...left },
				rows,
				null,
			),
		);
	});

/**
 * What a machine would leave behind: holding bags, also the shop's own, that still hold something of it, and its parts that
 * are outside the shop, by themselves or in a bag, or are missing with their bag.
 */
export async function leftBehind(read: Reader, machineId: string): Promise<{ holdingBagsNotEmpty: number; partsOutside: number }> {
	const holdingBagsNotEmpty = await notEmptyAtTheEnd(read, machineId);
	const partsOutside = await read.part.count({ where: { machineId, ...(await partsNotHere(read)) } });
	return { holdingBagsNotEmpty, partsOutside };
}

/** Words about a machine that belong to nothing smaller. Who said them is withheld. */
export const sayNote = (input: SayNote & { readonly at?: Instant }, env: Env): Promise<Result<string>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const id = env.newId();
		return ok(
			deed(
				machine.value.id,
				"note.said",
				{ table: "Note", id },
				{ say: `Wrote a note (${input.kind}).` },
				[
					add("Note", {
						id,
						machineId: machine.value.id,
						kind: input.kind,
						words: input.words,
						whoSaid: input.whoSaid || null,
						at: input.at ?? env.clock(),
					}),
				],
				id,
			),
		);
	});

/** Something that is wrong with the machine, a position or a part, and how it is known. */
export const sayFault = (input: SayFault, env: Env): Promise<Result<string>> =>
	record(env, async (read) => {
		const machine = await machineOf(read, input.machineId);
		if (!machine.ok) return machine;
		const { id: machineId } = machine.value;
		if (input.positionId !== null && (await read.position.count({ where: { id: input.positionId, machineId } })) === 0) {
			return refuse("no-such-position", "That position is not on this machine. Choose again.", { fields: { positionId: "Choose again." } });
		}
		if (input.partId !== null && (await read.part.count({ where: { id: input.partId } })) === 0) {
			return refuse("no-such-part", "That part is not in the book. Choose again.", { fields: { partId: "Choose again." } });
		}
		const id = env.newId();
		return ok(
			deed(
				machineId,
				"fault.said",
				{ table: "Fault", id },
				{ say: `Noted a fault: ${input.words}.`.replace(/\.\.$/, ".") },
				[
					add("Fault", {
						id,
						machineId,
						positionId: input.positionId,
						partId: input.partId,
						words: input.words,
						kind: input.kind,
						how: input.how,
						state: "open",
					}),
				],
				id,
			),
		);
	});

const FAULT_WORDS = { mended: "Mended", stays: "Left as it is", open: "Opened again" } as const;

/** What became of a fault: mended, left as it is on purpose, or open again. */
export const closeFault = (input: CloseFault, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const fault = await read.fault.findUnique({ where: { id: input.faultId } });
		if (!fault) return refuse("no-such-fault", "That fault is not in the book. Load the page again.");
		if (fault.state === input.state) return refuse("same-state", "The fault is there already.");
		return ok(
			deed(
				fault.machineId,
				"fault.closed",
				{ table: "Fault", id: fault.id },
				{ say: `${FAULT_WORDS[input.state]}: ${fault.words}.`.replace(/\.\.$/, "."), state: input.state },
				[change("Fault", fault, { state: input.state })],
				null,
			),
		);
	});
