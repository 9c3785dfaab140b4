import type { Result } from "@/lib/core/result";
import { ok, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { publicKeyOf } from "@/lib/shop/keys";
import type { DescribeShop, OpenShop } from "@/lib/shop/schema";

const SHOP = { table: "Shop", id: "shop" } as const;

/** Opens the shop's book with its first person, who is the actor of this first entry. Gives the person's id. */
export const openShop = (input: OpenShop, env: Omit<Env, "actor">): Promise<Result<string>> => {
	const person = env.newId();
	const publicKey = publicKeyOf(env.store.folder);
	return record({ ...env, actor: person }, async (read) => {
		if (await read.shop.findUnique({ where: { id: "shop" }, select: { id: true } }))
			return refuse("shop-open", "This shop's book is open already. Go to the first page.");
		return ok(
			deed(
				null,
				"shop.opened",
				SHOP,
				{ say: `${input.personName} opened the shop's book: ${input.name}.` },
				[
					add("Shop", {
						id: "shop",
						name: input.name,
						currency: input.currency,
						timeZone: input.timeZone,
						address: input.address || null,
						publicKey,
					}),
					add("Person", { id: person, name: input.personName, initials: input.initials, skills: input.skills, state: "here" }),
				],
				person,
			),
		);
	});
};

/** Changes the shop's name, time zone or the address that labels point to. */
export const describeShop = (input: DescribeShop, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.shop.findUniqueOrThrow({ where: { id: "shop" } });
		const said = { name: input.name, timeZone: input.timeZone, address: input.address || null };
		const laid = await overMeanwhile(read, "Shop", before, env.seen ?? UNSEEN, said);
		if (!laid.ok) return laid;
		const row = change("Shop", before, laid.value);
		return ok(deed(null, "shop.described", SHOP, { say: `Described the shop: ${laid.value.name}.` }, [row], null));
	});
