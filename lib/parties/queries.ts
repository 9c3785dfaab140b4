import type { Reader } from "@/lib/db/store";
import type { PartyKind } from "@/lib/generated/prisma/enums";

/** Those outside the shop, of some kinds or of all, by name. */
export const parties = (read: Reader, kinds: readonly PartyKind[] = ["supplier", "owner", "specialist"]) =>
	read.party.findMany({
		where: { kind: { in: [...kinds] } },
		orderBy: [{ name: "asc" }, { id: "asc" }],
		take: 500,
		select: { id: true, kind: true, name: true },
	});
