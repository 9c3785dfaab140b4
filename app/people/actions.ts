"use server";

import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { hereAndNow } from "@/app/hereAndNow";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { addPerson, describePerson, setRate } from "@/lib/people/changes";
import { PERSON_COOKIE } from "@/lib/people/current";
import { describePersonSchema, personSchema, rateSchema } from "@/lib/people/schema";
import { describeShop } from "@/lib/shop/changes";
import { requireShop } from "@/lib/shop/queries";
import { describeShopSchema } from "@/lib/shop/schema";

/** A phone keeps its owner's name for a year. */
const YEAR_SECONDS = 365 * 24 * 60 * 60;

export async function addPersonAction(raw: unknown): Promise<Result<string>> {
	const input = personSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await addPerson(input.data, env.value);
	if (done.ok) revalidatePath("/people");
	return done;
}

export async function describePersonAction(raw: unknown): Promise<Result<null>> {
	const input = describePersonSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await describePerson(input.data, env.value);
	if (done.ok) revalidatePath("/people");
	return done;
}

export async function setRateAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = rateSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await setRate(input.data, env.value);
	if (done.ok) revalidatePath("/people");
	return done;
}

export async function describeShopAction(raw: unknown): Promise<Result<null>> {
	const input = describeShopSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await describeShop(input.data, env.value);
	if (done.ok) revalidatePath("/people");
	return done;
}

/** Says who uses this browser. No deed of the shop: it is kept in the browser alone. */
export async function choosePersonAction(id: string): Promise<Result<null>> {
	const { read } = await shopStore();
	const person = await read.person.findFirst({ where: { id: String(id), state: "here" }, select: { id: true } });
	if (!person) return refuse("no-such-person", "That person is not in the book. Load the page again.");
	(await cookies()).set(PERSON_COOKIE, person.id, { maxAge: YEAR_SECONDS, httpOnly: true, sameSite: "lax", path: "/" });
	revalidatePath("/", "layout");
	return ok(null);
}
