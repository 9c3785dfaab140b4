// Who is asking: a cookie that names a person of this shop. There are no passwords: whoever is on the shop's network is trusted.

import { cookies } from "next/headers";
import { shopStore } from "@/lib/db/shopStore";

export const PERSON_COOKIE = "asfound-person";

/** The person who uses this browser, or null when nobody was chosen yet. Where only one person works, it is that one. */
export async function currentPerson(): Promise<{ id: string; name: string; initials: string } | null> {
	const id = (await cookies()).get(PERSON_COOKIE)?.value;
	const { read } = await shopStore();
	const here = await read.person.findMany({
		where: id ? { id, state: "here" } : { state: "here" },
		select: { id: true, name: true, initials: true },
		take: 2,
	});
	return here.length === 1 ? (here[0] ?? null) : null;
}
