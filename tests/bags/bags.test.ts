import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { bagSheet } from "@/lib/bags/bagSheet";
import { describeBag, makeBag, moveBag, movePart, voidBag } from "@/lib/bags/changes";
import { FIRST_BAG, freeBagNumber } from "@/lib/bags/number";
import { bagsToUse, leftInBag, shouldBeEmpty, whatIsIn, whereBagIs, whereIs } from "@/lib/bags/queries";
import { lower, mayGoInto, mayGoOutWith, mayHold, mayMove, mayVoid } from "@/lib/bags/rules";
import { day } from "@/lib/core/days";
import { ok, type Result } from "@/lib/core/result";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { putInSheet } from "@/lib/fittings/queries";
import { recordPrint } from "@/lib/labels/changes";
import { readyTags } from "@/lib/labels/queries";
import { record } from "@/lib/ledger/record";
import { add, deed, type RowChange } from "@/lib/ledger/rows";
import { leftBehind, setMachineState } from "@/lib/machines/changes";
import { losePart, sendOut } from "@/lib/parts/changes";
import { addLocation } from "@/lib/store/changes";
import { formatTag } from "@/lib/tags/tag";
import { type AMachine, aLoosePart, aMachine, partRow } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const done = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};
const refused = <T>(result: Result<T>) => {
	if (result.ok) throw new Error("it was not refused");
	return result.error;
};

describe("bags, by rule", () => {
	const bag = (id: string, more: object = {}) => ({
		id,
		tag: `tag ${id}`,
		machineId: "m12",
		machineNumber: 12,
		place: "bench" as const,
		role: "holding" as const,
		outIn: null,
		...more,
	});

	it("a bag is never inside itself, and the way is named", () => {
		expect(refused(mayGoInto(bag("a"), bag("a"), [])).say).toBe("tag a cannot go into itself. Choose another bag.");
		const loop = refused(mayGoInto(bag("a"), bag("c"), [bag("b"), bag("a")]));
		expect(loop.facts?.way).toEqual(["tag c", "tag b", "tag a"]);
		expect(loop.say).toBe("tag a would be inside itself: tag c is in tag b is in tag a. Take tag b out of it first.");
		expect(mayGoInto(bag("a"), bag("c"), [bag("b")]).ok).toBe(true);
	});

	it("things of one machine stay together: another machine's bag holds none of them, the shop's own may", () => {
		expect(refused(mayHold(bag("a"), "m13")).code).toBe("bag-of-another-machine");
		expect(mayHold(bag("s", { machineId: null, machineNumber: null }), "m13").ok).toBe(true);
		expect(refused(mayHold(bag("a"), null)).code).toBe("bag-of-another-machine");
	});

	it("nothing goes into a bag that is out of use or out of the shop", () => {
		expect(refused(mayHold(bag("a", { place: "void" }), "m12")).code).toBe("bag-void");
		expect(refused(mayHold(bag("a", { place: "out", outIn: "tag a" }), "m12")).say).toBe(
			"tag a is not here. Say where that bag lies now, or choose another.",
		);
		expect(refused(mayHold(bag("a", { place: "bag", outIn: "tag b" }), "m12")).say).toBe(
			"tag a is in tag b, which is not here. Say where that bag lies now, or choose another.",
		);
	});

	it("a bag leaves the shop only as each part in it could: an original needs a day on which it is due back", () => {
		const part = (tag: string, origin: "original" | "modern") => ({ name: "Lamp", tag, origin, place: "bag" as const });
		expect(mayGoOutWith(bag("a"), [part("12-0002-G", "modern")]).ok).toBe(true);
		expect(refused(mayGoOutWith(bag("a"), [part("12-0002-G", "modern"), part("12-0003-E", "original")])).say).toBe(
			"In tag a, 12-0003-E lamp is original: it goes out only with a day on which it is due back. Send it out on its own page with that day, or take it out of the bag, first.",
		);
		const many = Array.from({ length: 7 }, (_, index) => part(`t${index}`, "original"));
		expect(refused(mayGoOutWith(bag("a"), many)).say).toContain("t4 lamp and 2 more are original: they go out");
		expect(mayGoOutWith(bag("a", { place: "out", outIn: "tag a" }), many).ok).toBe(true);
	});

	it("only an empty bag is taken out of use, and what is in it is said", () => {
		expect(mayVoid(bag("a"), { parts: 0, fixings: 0, bags: 0 }).ok).toBe(true);
		expect(refused(mayVoid(bag("a"), { parts: 2, fixings: 1, bags: 0 })).say).toContain("2 parts and 1 lot of fixings");
		expect(refused(mayVoid(bag("a", { place: "void" }), { parts: 0, fixings: 0, bags: 0 })).code).toBe("bag-void");
	});

	it.each([
		["bag", true],
		["location", true],
		["bench", true],
		["lost", true],
		["fitted", false],
		["out", false],
		["sold", false],
		["scrapped", false],
		["void", false],
	] as const)("a part that is %s can be put away: %s", (place, may) => {
		expect(mayMove({ name: "Lamp", place, fittedIn: "lantern" }).ok).toBe(may);
	});

	it("a name inside a sentence begins small, unless it is written in capitals", () => {
		expect(["Drive motor", "AC gearmotor", "X1 plug", "lamp"].map(lower)).toEqual(["drive motor", "AC gearmotor", "X1 plug", "lamp"]);
	});

	it("bags of machine 12 are numbered as on its bags, without the numbers that are never printed", () => {
		const taken = new Set<number>();
		const tags = Array.from({ length: 20 }, () => {
			const next = done(freeBagNumber(12, taken));
			taken.add(next);
			return formatTag(12, next);
		});
		// The tags of the acceptance machine, worked out by hand.
		expect(tags).toEqual(
			"12-0201-3 12-0202-1 12-0204-Y 12-0205-W 12-0206-U 12-0207-S 12-0208-Q 12-0210-1 12-0212-Y 12-0213-W 12-0214-U 12-0215-S 12-0216-Q 12-0218-M 12-0219-K 12-0220-Y 12-0221-W 12-0222-U 12-0223-S 12-0224-Q".split(
				" ",
			),
		);
		expect(FIRST_BAG).toBe(201);
	});
});

describe("bags, in a shop", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const bag = async (words: string, more: object = {}) => done(await makeBag({ machineId: machine.id, words, ...more }, shop.env()));
	const row = (bagId: string) => shop.store.read.bag.findUniqueOrThrow({ where: { id: bagId } });

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { panel: { fixings: 6 }, motor: { behind: ["panel"], fixings: 3 }, free: { empty: true } });
	});
	afterEach(() => shop.close());

	it("a bag in a bag in a rack is found from the inside out", async () => {
		const room = done(await addLocation({ parentId: null, kind: "room", name: "Back room" }, shop.env()));
		const shelf = done(await addLocation({ parentId: room.locationId, kind: "shelf", name: "shelf 2" }, shop.env()));
		const tote = await bag("motor", { lies: { kind: "location", locationId: shelf.locationId } });
		const inner = await bag("screws", { lies: { kind: "bag", bagId: tote.bagId } });
		const spare = await aLoosePart(shop, machine, "Spare");
		done(await movePart({ partId: spare.id, to: { kind: "bag", bagId: inner.bagId } }, shop.env()));
		const where = await whereIs(shop.store.read, { bagId: inner.bagId, locationId: null });
		expect(where).toMatchObject({
			words: "in 12-0202-1 in 12-0201-3 · Back room · shelf 2",
			bags: [inner.tag, tote.tag],
			locationId: shelf.locationId,
			path: "Back room · shelf 2",
			outIn: null,
		});
		expect((await whereBagIs(shop.store.read, tote.bagId)).words).toBe("Back room · shelf 2");
		expect((await whatIsIn(shop.store.read, tote.bagId)).bags).toMatchObject([{ tag: inner.tag, things: 1 }]);
	});

	it("a bag never gets into itself, however deep", async () => {
		const [a, b, c] = [await bag("a"), await bag("b"), await bag("c")];
		done(await moveBag({ bagId: b.bagId, to: { kind: "bag", bagId: a.bagId } }, shop.env()));
		done(await moveBag({ bagId: c.bagId, to: { kind: "bag", bagId: b.bagId } }, shop.env()));
		const loop = refused(await moveBag({ bagId: a.bagId, to: { kind: "bag", bagId: c.bagId } }, shop.env()));
		expect(loop.code).toBe("bag-inside-itself");
		expect(loop.facts?.way).toEqual([c.tag, b.tag, a.tag]);
		expect((await row(a.bagId)).place).toBe("bench");
	});

	it("a bag never gets into itself, and is found, in forty bags around it", async () => {
		const bags = [await bag("outermost")];
		for (let depth = 1; depth <= 40; depth++) {
			const around = bags.at(-1)?.bagId ?? "";
			bags.push(await bag(`${depth} deep`, { lies: { kind: "bag", bagId: around } }));
		}
		const [outermost, innermost] = [bags[0], bags.at(-1)];
		if (!outermost || !innermost) throw new Error("no bags");
		const where = await whereBagIs(shop.store.read, innermost.bagId);
		expect(where.bags).toEqual(
			bags
				.slice(0, -1)
				.map(({ tag }) => tag)
				.reverse(),
		);
		expect(where.words).toMatch(/ · on the bench$/);
		const ring = refused(await moveBag({ bagId: outermost.bagId, to: { kind: "bag", bagId: innermost.bagId } }, shop.env()));
		expect(ring.code).toBe("bag-inside-itself");
		expect((await row(outermost.bagId)).place).toBe("bench");
	});

	describe("out of the shop", () => {
		/** A loose part in a bag in a tote that is out. */
		const awayInATote = async (more: object = {}) => {
			const tote = await bag("loan");
			const inner = await bag("springs", { lies: { kind: "bag", bagId: tote.bagId } });
			const spare = await aLoosePart(shop, machine, "Spring", more);
			done(await movePart({ partId: spare.id, to: { kind: "bag", bagId: inner.bagId } }, shop.env()));
			const out = await moveBag({ bagId: tote.bagId, to: { kind: "out", why: "at the museum" } }, shop.env());
			return { tote, inner, spare, out };
		};

		it("a part in a bag in a bag that is out is out: it is not put in, and counts as outside at hand-over", async () => {
			const { tote, spare, out } = await awayInATote();
			done(out);
			const into = { partId: spare.id, positionId: machine.position("free") };
			expect(refused(await putIn(into, shop.env()))).toMatchObject({
				code: "part-out",
				say: `The spring is in ${tote.tag}, which is not here. Say where that bag lies now, or where the part itself does, first.`,
			});
			const offered = (await putInSheet(shop.store.read, machine.id, "free"))?.candidates.find(({ id }) => id === spare.id);
			expect([offered?.cannot, offered?.where]).toEqual([
				expect.stringContaining("not here"),
				expect.stringContaining("out: at the museum"),
			]);
			expect((await leftBehind(shop.store.read, machine.id)).partsOutside).toBe(1);

			done(await moveBag({ bagId: tote.bagId, to: { kind: "bench" } }, shop.env()));
			expect((await leftBehind(shop.store.read, machine.id)).partsOutside).toBe(0);
			done(await putIn(into, shop.env()));
		});

		it("a part can come back without its bag, and its history says so", async () => {
			const { inner, tote, spare, out } = await awayInATote();
			done(out);
			done(await movePart({ partId: spare.id, to: { kind: "bench" } }, shop.env()));
			expect((await leftBehind(shop.store.read, machine.id)).partsOutside).toBe(0);
			const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "part.moved" }, orderBy: { seq: "desc" } });
			expect(entry.open).toContain(`Back in the shop without ${tote.tag}: laid the spring on the bench`);
			// Nothing goes into what is not here, nor is it offered.
			expect(refused(await movePart({ partId: spare.id, to: { kind: "bag", bagId: inner.bagId } }, shop.env())).code).toBe("bag-out");
			expect(await bagsToUse(shop.store.read, machine.id)).toEqual([]);
		});

		it("an original does not slip out of the shop in a bag in a bag, without a day on which it is due back", async () => {
			const { tote, spare, out } = await awayInATote({ origin: "original" });
			expect(refused(out)).toMatchObject({ code: "original-needs-due-day", facts: { bag: tote.tag, parts: [spare.tag] } });
			expect((await row(tote.bagId)).place).toBe("bench");
			const input = { partId: spare.id, partyId: null, partyName: "The museum", dueDay: day("2026-05-01"), why: "" };
			done(await sendOut(input, shop.env()));
			done(await moveBag({ bagId: tote.bagId, to: { kind: "out", why: "at the museum" } }, shop.env()));
		});
	});

	it("a ready-made tag hangs on the bag that it is given to, and on no other", async () => {
		const made = await bag("ready", { tag: formatTag(12, 302) });
		expect(made.tag).toBe(formatTag(12, 302));
		const again = refused(await makeBag({ machineId: machine.id, words: "again", tag: made.tag }, shop.env()));
		expect(again.code).toBe("tag-taken");
		const foreign = refused(await makeBag({ machineId: machine.id, words: "foreign", tag: formatTag(13, 301) }, shop.env()));
		expect(foreign.code).toBe("tag-of-another-machine");
		expect((await bag("next")).tag).toBe(formatTag(12, 201));
	});

	it("numbers printed beforehand are not given out otherwise", async () => {
		const tags = await readyTags(shop.store.read, 12, 3);
		expect(tags).toEqual([formatTag(12, 201), formatTag(12, 202), formatTag(12, 204)]);
		done(await recordPrint({ tags, stock: "a4-21" }, shop.env()));
		expect((await bag("made now")).tag).toBe(formatTag(12, 205));
		expect((await bag("at the bench", { tag: formatTag(12, 202) })).tag).toBe(formatTag(12, 202));
	});

	it("the shop's own bags bear machine number 0", async () => {
		expect(done(await makeBag({ machineId: null, words: "odd screws" }, shop.env())).tag).toBe(formatTag(0, 201));
	});

	it("a holding bag whose parts are fitted again should be empty, and what is left in it is named", async () => {
		const taken = done(
			await takeOut(
				{ machineId: machine.id, positionId: machine.position("panel"), into: { kind: "new-bag", bag: { words: "rear panel screws" } } },
				shop.env(),
			),
		);
		expect(await shouldBeEmpty(shop.store.read, machine.id)).toEqual([]);
		// Put in again with two of the six screws forgotten in the bag.
		done(
			await putIn(
				{
					partId: machine.part("panel"),
					positionId: machine.position("panel"),
					fixings: [{ fixingId: machine.fixing("panel"), count: 4, thread: "4BA" }],
				},
				shop.env(),
			),
		);
		const left = await shouldBeEmpty(shop.store.read);
		expect(left).toMatchObject([{ tag: taken.bagTag, words: "rear panel screws" }]);
		expect(left[0]?.things).toEqual(["2 x 4BA x 1/2, cheese slotted, of Place panel (panel)"]);
		expect(await shouldBeEmpty(shop.store.read, "another machine")).toEqual([]);
	});

	it("a holding bag of a finished machine should be empty, whatever is in it", async () => {
		const taken = done(
			await takeOut({ machineId: machine.id, positionId: machine.position("panel"), into: { kind: "new-bag", bag: {} } }, shop.env()),
		);
		expect(await shouldBeEmpty(shop.store.read)).toEqual([]);
		done(await setMachineState({ machineId: machine.id, state: "ready" }, shop.env()));
		expect(await shouldBeEmpty(shop.store.read)).toMatchObject([
			{ tag: taken.bagTag, things: ["Part panel, of Place panel (panel)", "6 x 4BA x 1/2, cheese slotted, of Place panel (panel)"] },
		]);
	});

	describe("of the shop itself", () => {
		const shopBag = async (words: string, more: object = {}) => done(await makeBag({ machineId: null, words, ...more }, shop.env()));
		/** Takes the panel out, its part to the bench and its screws into a bag. */
		const screwsInto = async (bagId: string) => {
			const went = [{ fixingId: machine.fixing("panel"), went: { kind: "bag", bagId } as const, count: 6, thread: "4BA" }];
			done(
				await takeOut({ machineId: machine.id, positionId: machine.position("panel"), into: { kind: "bench" }, fixings: went }, shop.env()),
			);
		};

		it("a bag with screws of a machine is not forgotten: not when their place is filled, nor at hand-over, nor on its page", async () => {
			const made = await shopBag("odd screws");
			await screwsInto(made.bagId);
			expect(await shouldBeEmpty(shop.store.read)).toEqual([]);
			expect(await leftInBag(shop.store.read, made.bagId)).toBeNull();
			// At the end all counts, also what still waits for its place.
			expect((await leftBehind(shop.store.read, machine.id)).holdingBagsNotEmpty).toBe(1);

			done(await putIn({ partId: machine.part("panel"), positionId: machine.position("panel") }, shop.env()));
			const left = await shouldBeEmpty(shop.store.read, machine.id);
			expect(left).toEqual([
				{
					bagId: made.bagId,
					tag: made.tag,
					words: "odd screws",
					machine: { number: 12, name: "Machine 12" },
					things: ["6 x 4BA, of Place panel (panel)"],
				},
			]);
			expect(await shouldBeEmpty(shop.store.read)).toEqual(left);
			expect(await leftInBag(shop.store.read, made.bagId)).toEqual(left[0]);
		});

		it("a bag is asked by each machine for its own things alone, and finished ones leave nothing in it", async () => {
			const other = await aMachine(shop, { lamp: {} }, 13);
			const made = await shopBag("both");
			for (const { id, tag, of } of [
				{ ...(await aLoosePart(shop, machine, "Spring")), of: machine },
				{ ...(await aLoosePart(shop, other, "Bulb")), of: other },
			]) {
				done(await movePart({ partId: id, to: { kind: "bag", bagId: made.bagId } }, shop.env()));
				expect((await leftBehind(shop.store.read, of.id)).holdingBagsNotEmpty, tag).toBe(1);
			}
			done(await setMachineState({ machineId: other.id, state: "ready" }, shop.env()));
			expect(await shouldBeEmpty(shop.store.read)).toMatchObject([{ tag: made.tag, machine: { number: 13 }, things: ["Bulb"] }]);
			expect(await shouldBeEmpty(shop.store.read, machine.id)).toEqual([]);
		});

		it("a tote with a bag in it is not empty as long as that bag is not", async () => {
			const tote = await shopBag("a tote");
			const inner = await bag("springs", { role: "keeping", lies: { kind: "bag", bagId: tote.bagId } });
			expect((await leftBehind(shop.store.read, machine.id)).holdingBagsNotEmpty).toBe(0);
			const spare = await aLoosePart(shop, machine, "Spring");
			done(await movePart({ partId: spare.id, to: { kind: "bag", bagId: inner.bagId } }, shop.env()));
			expect((await leftBehind(shop.store.read, machine.id)).holdingBagsNotEmpty).toBe(1);
			expect(await shouldBeEmpty(shop.store.read)).toEqual([]);
			done(await setMachineState({ machineId: machine.id, state: "ready" }, shop.env()));
			expect(await shouldBeEmpty(shop.store.read, machine.id)).toMatchObject([
				{ tag: tote.tag, machine: { number: 12 }, things: [`${inner.tag} springs`] },
			]);
		});
	});

	describe("by the hundred", () => {
		/** Bags, each with a part, in one entry; `home` says where the part was fitted last. */
		const many = async (count: number, inBag: (index: number) => { bagId: string; rows: RowChange[] }, home: string | null) => {
			const rows = Array.from({ length: count }, (_, index): RowChange[] => {
				const { bagId, rows: bagRows } = inBag(index);
				const partId = shop.newId();
				const fitting = (from: string, until: string, mark: string) =>
					add("Fitting", {
						id: shop.newId(),
						machineId: machine.id,
						partId,
						positionId: machine.position(mark),
						fromAt: from,
						untilAt: until,
						fromStepId: null,
						untilStepId: null,
						conversionId: null,
						outConversionId: null,
						wayRound: "",
					});
				return [
					...bagRows,
					add("Part", partRow(partId, machine.id, `Part ${String(index).padStart(3, "0")}`, { place: "bag", bagId, count: 2 })),
					// Was in a place that is filled now, but last in one that is empty; unless `home` is the filled one.
					fitting("2026-01-01T08:00:00.000Z", "2026-01-01T09:00:00.000Z", "motor"),
					...(home === null ? [] : [fitting("2026-01-02T08:00:00.000Z", "2026-01-02T09:00:00.000Z", home)]),
				];
			}).flat();
			done(
				await record(shop.env(), async () =>
					ok(deed(machine.id, "part.added", { table: "Machine", id: machine.id }, { say: "Many." }, rows, null)),
				),
			);
		};
		const aNewBag = () => {
			const bagId = shop.newId();
			const columns = { machineId: machine.id, kind: "bag", role: "holding", words: "one of many", caution: "" } as const;
			const lies = { place: "bench", parentId: null, locationId: null, sinceAt: "2026-03-02T08:00:00.000Z", placeWhy: "" } as const;
			return { bagId, rows: [add("Bag", { id: bagId, ...columns, ...lies })] };
		};

		it("a bag in which something was left is found behind two hundred that only look like it", async () => {
			await many(210, aNewBag, "free");
			await many(1, aNewBag, null);
			expect(await shouldBeEmpty(shop.store.read, machine.id)).toMatchObject([{ things: ["2 x Part 000, of Place motor (motor)"] }]);
			expect((await leftBehind(shop.store.read, machine.id)).holdingBagsNotEmpty).toBe(211);
		});

		it("a bag with more in it than its page shows counts all pieces, and says how many it leaves off", async () => {
			const { bagId, rows } = aNewBag();
			await many(203, (index) => ({ bagId, rows: index === 0 ? rows : [] }), "free");
			const sheet = await bagSheet(shop.store.read, bagId);
			expect([sheet?.pieces, sheet?.inIt.parts.length, sheet?.inIt.more]).toEqual([406, 200, 3]);
			// The last of them, behind all that are shown, is left out.
			await many(1, () => ({ bagId, rows: [] }), null);
			expect(await leftInBag(shop.store.read, bagId)).toMatchObject({ things: ["2 x Part 000, of Place motor (motor)"] });
		});
	});

	it("a keeping bag may stay full for ever", async () => {
		done(
			await takeOut(
				{ machineId: machine.id, positionId: machine.position("panel"), into: { kind: "new-bag", bag: { role: "keeping" } } },
				shop.env(),
			),
		);
		const spare = await aLoosePart(shop, machine, "New panel");
		done(await putIn({ partId: spare.id, positionId: machine.position("panel") }, shop.env()));
		expect(await shouldBeEmpty(shop.store.read)).toEqual([]);
	});

	it("a bag that turns from holding to keeping says so in its history", async () => {
		const made = await bag("motor");
		done(await describeBag({ bagId: made.bagId, kind: "tote", role: "keeping", words: "motor", caution: "this side up" }, shop.env()));
		expect(await row(made.bagId)).toMatchObject({ kind: "tote", role: "keeping", caution: "this side up" });
		const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "bag.described" } });
		expect(entry.open).toContain("it stays with the machine for ever; it is a tote; caution: this side up");
	});

	it("a bag with a screw in it is not taken out of use", async () => {
		const taken = done(
			await takeOut({ machineId: machine.id, positionId: machine.position("panel"), into: { kind: "new-bag", bag: {} } }, shop.env()),
		);
		const bagId = taken.bagId ?? "";
		done(await movePart({ partId: machine.part("panel"), to: { kind: "bench" } }, shop.env()));
		expect(refused(await voidBag({ bagId, why: "torn" }, shop.env())).say).toContain("1 lot of fixings");
		expect((await row(bagId)).place).toBe("bench");
	});

	it("a tag of a bag out of use is never given out again", async () => {
		const first = await bag("first");
		done(await voidBag({ bagId: first.bagId, why: "torn" }, shop.env()));
		expect((await bag("second")).tag).toBe(formatTag(12, 202));
		expect(refused(await moveBag({ bagId: first.bagId, to: { kind: "bench" } }, shop.env())).code).toBe("bag-void");
	});

	it("a lost part that turns up is put where it lies", async () => {
		const spare = await aLoosePart(shop, machine, "Spring");
		done(await losePart({ partId: spare.id, why: "flew off" }, shop.env()));
		const made = await bag("springs");
		expect(done(await movePart({ partId: spare.id, to: { kind: "bag", bagId: made.bagId } }, shop.env())).words).toBe(`in ${made.tag}`);
		expect(await shop.store.read.part.findUniqueOrThrow({ where: { id: spare.id } })).toMatchObject({ place: "bag", placeWhy: "" });
	});

	it("a fitted part is not put away without being taken out", async () => {
		expect(refused(await movePart({ partId: machine.part("motor"), to: { kind: "bench" } }, shop.env())).code).toBe("part-fitted");
	});

	it("words that are too long are refused with the field named", async () => {
		const refusal = refused(await makeBag({ machineId: machine.id, words: "x".repeat(300) }, shop.env()));
		expect(refusal.fields).toHaveProperty("words");
	});
});
