// The plan, the clocks, and what was done in each step.

import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { describeBag, makeBag, moveBag, movePart } from "@/lib/bags/changes";
import { addCapture } from "@/lib/captures/changes";
import { addDigitalItem } from "@/lib/digital/changes";
import { registerFile } from "@/lib/files/changes";
import { recordPrint } from "@/lib/labels/changes";
import type { Env } from "@/lib/ledger/env";
import { closeFault, setMachineState } from "@/lib/machines/changes";
import { closeFaultSchema, setMachineStateSchema } from "@/lib/machines/schema";
import { addPart, scrapPart, sendOut } from "@/lib/parts/changes";
import { addPartSchema, leaveSchema, sendOutSchema } from "@/lib/parts/schema";
import { changeStep, finishStep, planSteps, startClock, stopClock } from "@/lib/steps/changes";
import { changeStepSchema, finishStepSchema, planStepsSchema, startClockSchema, stopClockSchema } from "@/lib/steps/schema";
import type { Alteration, Bag, Instant, PersonKey, Step } from "@/seed/data/types";
import { at } from "@/seed/data/write";
import { type MachineBook, of } from "@/seed/load/book";
import { type Diary, done, later } from "@/seed/load/diary";
import { cautionOf } from "@/seed/load/fixings";
import { asFoundRecord, asFoundStep, makePlaces, stamp, wiresOf } from "@/seed/load/intake";
import { type Books, carryOutPutIn, carryOutTakeOut, carryOutWiring, positionOf } from "@/seed/load/moves";
import { keep, paperText } from "@/seed/load/pictures";
import { drawFor, makePart } from "@/seed/load/purchases";

/** One thing done in a step; `next` gives each further deed of it its own id. */
type Act = (env: Env, next: () => Env) => Promise<void>;

const KINDS = {
	"take-out": "takeout",
	"put-in": "putin",
	alter: "alter",
	clean: "clean",
	repair: "repair",
	make: "make",
	test: "test",
	document: "document",
	move: "move",
} as const;

const titleOf = ({ what }: Step): string => {
	const plain = what
		.replace(/^added: /, "")
		.replace(/ \((?:wait|machine time): [^()]*\)$/, "")
		.replace(/; wait: [^()]*\)$/, ")")
		// The book numbers alterations in the order in which they were made; the restorer's own numbers would mislead.
		.replace(/ \((?:alteration )?a\d(?:, a\d)*\)/, "")
		.replace(/; a\d\)/, ")");
	return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}`;
};

const asPlanned = (book: MachineBook, shop: Books["shop"], step: Step, after: readonly string[], addedWhy: string) => ({
	kind: KINDS[step.kind],
	title: titleOf(step),
	minutes: step.minutes,
	wait: step.wait?.minutes ?? 0,
	waitWhy: step.wait?.why ?? "",
	addedWhy,
	equipment: (step.holds?.equipment ?? []).map((key) => of(shop.equipment, key)),
	keepsThroughWait: step.holds?.untilDry ? "yes" : "no",
	conversionId: step.conversion === undefined ? null : (book.conversions.get(step.conversion) ?? null),
	needs: after.map((need) => book.steps.get(need) ?? need),
	crew: step.who.map((person) => of(shop.persons, person)),
});

/** Plans the steps of the first plan together, then those that were added later, and what waits for them from then on. */
export function planWork(
	diary: Diary,
	{ book, shop }: Books,
	plannedAfter: ReadonlyMap<string, string>,
	added: { readonly at: Instant; readonly why: string } | null,
): void {
	const { data } = book;
	const first = data.steps.filter((step) => step.added !== true);
	const plan = (steps: readonly Step[], why: string) => async (env: Env) => {
		const input = planStepsSchema.parse({
			machineId: book.machineId,
			steps: steps.map((step) => {
				const instead = why === "" ? plannedAfter.get(step.id) : undefined;
				return { key: step.id, ...asPlanned(book, shop, step, instead === undefined ? step.after : [instead], why) };
			}),
		});
		for (const { key, id } of done(await planSteps(input, env))) book.steps.set(key, id);
	};
	diary.note(data.received, "A", "the plan", plan(first, ""), "plan");
	if (added === null) return;
	diary.note(
		added.at,
		"A",
		"steps added",
		plan(
			data.steps.filter((step) => step.added === true),
			added.why,
		),
	);
	for (const step of first.filter(({ id }) => plannedAfter.has(id)))
		diary.note(added.at, "A", `${step.id} waits for what was added`, async (env) => {
			const stepId = of(book.steps, step.id);
			done(await changeStep(changeStepSchema.parse({ stepId, ...asPlanned(book, shop, step, step.after, "") }), env));
		});
}

/** The clocks of a step, its end, and what was done meanwhile, spread evenly over the time. */
export function doStep(diary: Diary, books: Books, step: Step): void {
	const { book, shop } = books;
	for (const { person, start, minutes } of step.sessions) {
		const clock = { id: "" };
		diary.note(
			start,
			person,
			`${step.id} starts`,
			async (env) => {
				const input = startClockSchema.parse({ stepId: of(book.steps, step.id), personId: of(shop.persons, person) });
				clock.id = done(await startClock(input, env)).workId;
			},
			"start",
		);
		diary.note(
			later(start, minutes),
			person,
			`${step.id} stops`,
			async (env) => {
				done(await stopClock(stopClockSchema.parse({ workId: clock.id }), env));
			},
			"stop",
		);
	}
	const [first] = step.sessions;
	if (first === undefined) return;
	const last =
		step.sessions
			.map(({ start, minutes }) => later(start, minutes))
			.sort()
			.at(-1) ?? first.start;
	if (step.state === "done")
		diary.note(
			last,
			first.person,
			`${step.id} ends`,
			async (env) => {
				done(await finishStep(finishStepSchema.parse({ stepId: of(book.steps, step.id), words: step.words ?? "" }), env));
			},
			"finish",
		);
	spread(diary, step, first.person, actsOf(books, step));
	if (step === asFoundStep(book.data)) diary.note(last, first.person, "the stamp", stamp(book), "after");
}

function spread(diary: Diary, step: Step, person: PersonKey, acts: readonly Act[]): void {
	const own = step.sessions.filter((session) => session.person === person);
	const whole = own.reduce((sum, { minutes }) => sum + minutes, 0);
	for (const [place, act] of acts.entries()) {
		let into = (whole * (place + 1)) / (acts.length + 1);
		const session = own.find(({ minutes }) => {
			if (into < minutes) return true;
			into -= minutes;
			return false;
		});
		if (session === undefined) throw new Error(`${step.id} has no time for what was done in it`);
		const moment = later(session.start, into);
		diary.note(moment, person, `${step.id}, deed ${place + 1}`, (env) => act(env, () => diary.envAt(moment, env.actor)));
	}
}

/** New parts that were made in a step of their own, before they were put in. */
const MADE_IN: Readonly<Record<string, string>> = { "k25-adapter": "S23", "n1-board": "S31" };

function actsOf(books: Books, step: Step): Act[] {
	const { book, shop, pictures } = books;
	const { data } = book;
	const acts: Act[] = [];
	const single = (does: (env: Env) => Promise<unknown>) => acts.push(async (env) => void (await does(env)));

	if (step === asFoundStep(data)) for (const does of asFoundRecord(book)) single(does);
	// Wires are tagged in a step of their own, or else written down with the rest.
	const tagging = data.steps.find(({ what, state }) => /^tag all/.test(what) && state === "done") ?? asFoundStep(data);
	if (step === tagging) for (const does of wiresOf(book)) single(does);
	if (step === asFoundStep(data))
		for (const position of data.positions) {
			const file = pictures.found(data.number, position.id);
			if (file === null) continue;
			single(async (env) => {
				const words = position.asFound?.evidence[0]?.words ?? `${position.name}, as found`;
				const positionId = of(book.positions, position.id);
				done(
					await addCapture(
						{ machineId: book.machineId, kind: "drawing", file, words, positionId, partId: book.parts.get(position.id) ?? null },
						env,
					),
				);
			});
		}

	const firstWork = data.steps.find(({ moves, state }) => moves.length > 0 && state !== "planned");
	if (step === firstWork)
		single(async (env) => done(await setMachineState(setMachineStateSchema.parse({ machineId: book.machineId, state: "work" }), env)));

	for (const part of data.newParts) {
		const putInHere = step.moves.some((move) => move.kind === "put-in" && move.part === part.key);
		const madeHere = MADE_IN[part.key] === undefined ? putInHere && made(part.evidence) : MADE_IN[part.key] === step.id;
		if (madeHere) acts.push((env, next) => makePart(books, part, env, next));
	}
	for (const bag of data.bags.filter(({ packedIn }) => packedIn === step.id)) single((env) => makeTheBag(books, bag, env));
	for (const move of step.moves) {
		if (move.kind === "take-out") acts.push((env, next) => carryOutTakeOut(books, env, next, step, move));
		else {
			acts.push((env, next) => makePlacesFor(book, move.position, env, next));
			single((env) => carryOutPutIn(books, env, step, move));
		}
	}
	for (const alteration of data.alterations.filter((each) => each.step === step.id)) single((env) => alter(book, alteration, env));
	acts.push((_env, next) => carryOutWiring(books, next, step));
	acts.push((env, next) => packAway(books, step, env, next));
	acts.push((_env, next) => drawFor(books, step, next));
	for (const item of data.digitalItems)
		if (step.what.startsWith("load controller program"))
			acts.push(async (env, next) => {
				const file = await keep(env.store.folder, `${item.name}.txt`, Buffer.from(item.text), true);
				done(await registerFile({ file, machineId: book.machineId }, env));
				const input = {
					machineId: book.machineId,
					partId: of(book.parts, item.part),
					name: item.name,
					version: item.version,
					fileSha: file.sha,
					pins: item.pins.map(({ pin, what }) => `${pin} ${what}`).join("\n"),
					loading: item.howToLoad,
				};
				done(await addDigitalItem(input, next()));
			});
	for (const loan of data.loans)
		if (later(step.sessions[0]?.start ?? "", 0).startsWith(loan.since) && step.kind === "move")
			single(async (env) => {
				const input = sendOutSchema.parse({
					partId: of(book.parts, loan.part),
					partyId: of(shop.parties, loan.to),
					dueDay: loan.due,
					why: `${loan.why}; ${loan.answers}`,
				});
				done(await sendOut(input, env));
			});
	const lastTests = data.steps.findLast(({ id }) =>
		data.tests.some(({ runs }) => runs.some((run) => run.when === "after" && run.step === id)),
	);
	if (step === lastTests)
		for (const [position] of data.positions.filter(({ asFound }) => asFound?.works === false).map(({ id }) => [id] as const))
			single(async (env) => done(await closeFault(closeFaultSchema.parse({ faultId: of(book.faults, position), state: "mended" }), env)));
	if (step === data.steps.at(-1) && step.state === "done" && (data.state === "sold" || data.state === "finished")) {
		single(async (env) => {
			const kept = data.bags.filter(({ keeping }) => keeping);
			const file = await keep(
				env.store.folder,
				`${data.number} hand-over sheet.txt`,
				paperText(
					`Hand-over sheet, machine ${data.number}, ${data.name}`,
					kept.map((bag) => `${bag.tag}  ${bag.label}`),
				),
			);
			done(
				await addCapture(
					{
						machineId: book.machineId,
						kind: "paper",
						file,
						words: `Hand-over sheet: ${kept.length} containers`,
						stepId: of(book.steps, step.id),
					},
					env,
				),
			);
		});
		single(async (env) => done(await setMachineState(setMachineStateSchema.parse({ machineId: book.machineId, state: "ready" }), env)));
	}
	return acts;
}

const made = (evidence: readonly { readonly how: string }[]): boolean => evidence.some(({ how }) => how === "made by us");

/** The places that a part is about to go into, with the places that carry them, as far as they are not in the book yet. */
async function makePlacesFor(book: MachineBook, id: string, env: Env, next: () => Env): Promise<void> {
	const position = positionOf(book, id);
	if (book.positions.has(id)) return;
	const carrier = book.data.newParts.find(({ key }) => key === position.hostPart);
	const outer = carrier === undefined ? undefined : positionOf(book, carrier.position);
	const siblings =
		outer === undefined || outer.asFound !== undefined
			? [position]
			: [outer, ...book.data.positions.filter(({ hostPart }) => hostPart === carrier?.key)];
	let first = true;
	for (const does of makePlaces(
		book,
		siblings.filter((each) => !book.positions.has(each.id)),
	)) {
		await does(first ? env : next());
		first = false;
	}
}

const BAG_KINDS = { "open-bag": "bag" } as const;
const bagKind = (kind: Bag["kind"]) => (kind === "open-bag" ? BAG_KINDS[kind] : kind);

async function makeTheBag({ book }: Books, bag: Bag, env: Env): Promise<void> {
	const made = await makeBag(
		{
			machineId: book.machineId,
			kind: bagKind(bag.kind),
			role: bag.keeping ? "keeping" : "holding",
			words: bag.label,
			caution: cautionOf(bag, bag.emptiedOn === undefined),
			tag: bag.tag,
			lies: bag.parent === undefined ? { kind: "bench" } : { kind: "bag", bagId: of(book.bags, bag.parent) },
		},
		env,
	);
	book.bags.set(bag.number, done(made).bagId);
}

/** Parts that were laid elsewhere go into their bag, finds too; each bag gets its label and picture, and its place. */
async function packAway({ book, shop, pictures }: Books, step: Step, _env: Env, next: () => Env): Promise<void> {
	const { data } = book;
	const packed = data.bags.filter(({ packedIn }) => packedIn === step.id);
	for (const bag of packed) {
		const bagId = of(book.bags, bag.number);
		for (const content of bag.contents) {
			if (content.part !== undefined && !step.moves.some((move) => move.kind === "take-out" && move.part === content.part))
				done(await movePart({ partId: of(book.parts, content.part), to: { kind: "bag", bagId } }, next()));
			if (content.part === undefined && content.fixingOf === undefined)
				done(await addPart(addPartSchema.parse({ machineId: book.machineId, name: content.words, count: content.count, bagId }), next()));
		}
		const file = pictures.bag(data.number, bag.number);
		if (file !== null)
			done(
				await addCapture(
					{
						machineId: book.machineId,
						kind: "drawing",
						file,
						words: `${bag.tag}, packed: ${bag.label}`,
						bagId,
						stepId: of(book.steps, step.id),
					},
					next(),
				),
			);
	}
	if (packed.length > 0) done(await recordPrint({ tags: packed.map(({ tag }) => tag), stock: "roll-62x29" }, next()));
	const shelving = data.steps.find(({ what }) => what.startsWith("recount every bag"));
	const before = (id: string) => data.steps.findIndex((each) => each.id === id);
	const toShelve =
		shelving === undefined || before(step.id) > before(shelving.id)
			? packed
			: step === shelving
				? data.bags.filter(({ packedIn }) => before(packedIn) <= before(step.id))
				: [];
	for (const bag of toShelve.filter(({ parent }) => parent === undefined))
		done(
			await moveBag({ bagId: of(book.bags, bag.number), to: { kind: "location", locationId: of(shop.locations, bag.location) } }, next()),
		);
}

async function alter(book: MachineBook, alteration: Alteration, env: Env): Promise<void> {
	const where = alteration.at;
	const placeName = "place" in where ? (book.data.places.find(({ id }) => id === where.place)?.name ?? where.place) : "";
	const { undo } = alteration;
	const input = recordAlterationSchema.parse({
		machineId: book.machineId,
		what: alteration.what,
		partId: "part" in where ? of(book.parts, where.part) : null,
		positionId: "position" in where ? of(book.positions, where.position) : null,
		place: placeName,
		undo: undo.grade,
		undoHow: undo.grade === "never" ? "" : undo.how,
		undoMinutes: undo.grade === "never" ? null : undo.minutes,
		undoWait: undo.grade === "never" ? 0 : (undo.waitMinutes ?? 0),
		reason: undo.grade === "never" ? undo.why : "",
		agreedBy: alteration.agreedBy ?? "",
		stepId: of(book.steps, alteration.step),
		conversionId: alteration.conversion === undefined ? null : of(book.conversions, alteration.conversion),
	});
	book.alterations.set(alteration.id, done(await recordAlteration(input, env)).id);
}

/** What had to go by law: its label photographed first, then scrapped with a reason and the certificate. */
export function disposals(diary: Diary, books: Books): void {
	const { book } = books;
	for (const disposal of book.data.disposals) {
		const moment = at(disposal.day, "10:00");
		const bag = book.data.bags.find(({ number }) => number === disposal.bag);
		diary.note(moment, "B", "the certificate of a disposal", async (env) => {
			const lines = [
				`Certificate ${disposal.certificate}`,
				`Received: ${positionOf(book, disposal.part).name}, in ${bag?.tag ?? "a tub"}`,
				disposal.day,
				disposal.reason,
			];
			const file = await keep(env.store.folder, `${disposal.certificate}.txt`, paperText("Licensed disposal", lines));
			const words = `Certificate ${disposal.certificate}. Photographed first: ${disposal.photographedFirst.join(", ")}.`;
			done(
				await addCapture(
					{
						machineId: book.machineId,
						kind: "paper",
						file,
						words,
						partId: of(book.parts, disposal.part),
						bagId: of(book.bags, disposal.bag),
					},
					env,
				),
			);
		});
		diary.note(moment, "B", "a disposal", async (env) => {
			const why = `${disposal.reason} Licensed disposal, certificate ${disposal.certificate}.`;
			done(await scrapPart(leaveSchema.parse({ partId: of(book.parts, disposal.part), why }), env));
		});
		if (bag !== undefined)
			diary.note(moment, "B", "an emptied tub", async (env) => {
				const said = {
					bagId: of(book.bags, bag.number),
					kind: bagKind(bag.kind),
					role: "keeping",
					words: `${bag.label}: emptied ${disposal.day}`,
				} as const;
				done(await describeBag({ ...said, caution: cautionOf(bag, true) }, env));
			});
	}
}
