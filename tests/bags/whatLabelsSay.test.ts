import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { describeBag, makeBag } from "@/lib/bags/changes";
import { ordinal } from "@/lib/core/ordinal";
import type { Result } from "@/lib/core/result";
import { takeOut } from "@/lib/fittings/changes";
import { bagContents } from "@/lib/labels/contentsQueries";
import { bagTagsOf, labelContents, machinesOfTags, sideIn } from "@/lib/labels/queries";
import { printAddressSchema, tagListSchema } from "@/lib/labels/schema";
import { readTag } from "@/lib/tags/readTag";
import { formatTag, type Tag } from "@/lib/tags/tag";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const done = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};
const tag = (text: string | null): Tag => done(readTag(text ?? "")).tag;

describe("what a label says", () => {
	let shop: FreshShop;
	let machine: AMachine;
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { trim: { fixings: 5 }, lamp: { origin: "modern" } });
	});
	afterEach(() => shop.close());

	it("of a part that came out: where from, which way round, what held it, when and by whom, and that an original is kept", async () => {
		done(await takeOut({ machineId: machine.id, positionId: machine.position("trim"), wayRound: "slot upwards" }, shop.env()));
		const [label] = await labelContents(shop.store.read, [tag(machine.tag("trim"))], "Europe/Amsterdam");
		expect(label).toEqual({
			tag: machine.tag("trim"),
			words: "Part trim",
			machine: "Machine 12",
			position: "Place trim",
			wayRound: "slot upwards",
			also: "5 x 4BA x 1/2, cheese slotted",
			fate: "original",
			deed: "out",
			day: "2026-03-02",
			initials: "T",
		});
	});

	it("of a part that is still fitted: no day on which it came out, and nothing to keep when it is not original", async () => {
		const [label] = await labelContents(shop.store.read, [tag(machine.tag("lamp"))], "Europe/Amsterdam");
		expect(label).not.toHaveProperty("day");
		expect(label).not.toHaveProperty("fate");
	});

	it("of a bag: the count that a hand checks, and what must be known before it is opened", async () => {
		const taken = done(
			await takeOut(
				{
					machineId: machine.id,
					positionId: machine.position("trim"),
					into: { kind: "new-bag", bag: { role: "keeping", caution: "this side up, sharp edge" } },
				},
				shop.env(),
			),
		);
		const [label] = await labelContents(shop.store.read, [tag(taken.bagTag)], "Europe/Amsterdam");
		expect(label).toMatchObject({ words: "Part trim", count: 6, fate: "original", hazard: "sharp edge", thisWayUp: true, deed: "bagged" });
	});

	it("of a bag that has the name of its first part: that there are more in it, also on its list, and no more than there are", async () => {
		const first = { kind: "new-bag" as const, bag: {} };
		const { bagId, bagTag } = done(await takeOut({ machineId: machine.id, positionId: machine.position("trim"), into: first }, shop.env()));
		const said = async () => [
			(await labelContents(shop.store.read, [tag(bagTag)], "Europe/Amsterdam"))[0]?.words,
			(await bagContents(shop.store.read, [tag(bagTag)]))[0]?.words,
		];
		expect(await said()).toEqual(["Part trim", "Part trim"]);
		const into = { kind: "bag" as const, bagId: bagId ?? "" };
		done(await takeOut({ machineId: machine.id, positionId: machine.position("lamp"), into }, shop.env()));
		expect(await said()).toEqual(["Part trim and 1 more", "Part trim and 1 more"]);
		done(await describeBag({ bagId: bagId ?? "", kind: "bag", role: "holding", words: "front", caution: "" }, shop.env()));
		expect(await said()).toEqual(["front", "front"]);
	});

	it("of a tag that hangs on nothing yet: a line to write on", async () => {
		const [label] = await labelContents(shop.store.read, [tag("12-0201-3")], "Europe/Amsterdam");
		expect(label?.words).toMatch(/^\.+$/);
		expect(await machinesOfTags(shop.store.read, ["12-0201-3", formatTag(0, 201)])).toEqual(
			new Map([
				["12-0201-3", machine.id],
				[formatTag(0, 201), null],
			]),
		);
	});

	it("the days are those of the shop's own time zone", async () => {
		shop.setClock("2026-03-02T23:30:00.000Z");
		done(await takeOut({ machineId: machine.id, positionId: machine.position("trim") }, shop.env()));
		const [far] = await labelContents(shop.store.read, [tag(machine.tag("trim"))], "Asia/Kathmandu");
		expect(far?.day).toBe("2026-03-03");
	});

	it("bags are listed by their numbers", async () => {
		const first = done(await makeBag({ machineId: machine.id, words: "first", tag: "12-0224-Q" }, shop.env()));
		const second = done(await makeBag({ machineId: machine.id, words: "second" }, shop.env()));
		expect((await bagTagsOf(shop.store.read, machine.id)).map((bag) => bag.tag)).toEqual([second.tag, first.tag]);
	});
});

describe("words on and about labels", () => {
	it.each([
		["corner trim, left", "left"],
		["corner trim, RIGHT", "right"],
		["lamp, rear, top", undefined],
		["left glass", undefined],
		["motor", undefined],
	])("the side of %s", (name, side) => {
		expect(sideIn(name)).toBe(side);
	});

	it("prints are counted as people do", () => {
		expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual(
			"1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 101st 111th".split(" "),
		);
	});

	it("tags in an address are read each once, and a wrong one is refused with its reason", () => {
		expect(tagListSchema.parse("12-0208-q, 12-0210-1 120208Q")).toEqual(["12-0208-Q", "12-0210-1"]);
		const wrong = printAddressSchema.safeParse({ tags: "12-0280-Q" });
		expect(wrong.success).toBe(false);
		expect(printAddressSchema.parse({ tags: "12-0208-Q" })).toMatchObject({ start: 1, copies: 1 });
		expect(printAddressSchema.safeParse({ tags: "12-0208-Q", copies: "99" }).success).toBe(false);
		expect(printAddressSchema.safeParse({ tags: "" }).success).toBe(false);
	});
});
