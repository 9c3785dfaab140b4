"use client";

import { useCallback, useEffect, useState } from "react";
import { phone } from "@/app/outbox/outbox";
import { hearShopTime } from "@/app/outbox/shopTime";
import type { BenchSheet } from "@/lib/fittings/benchSheet";

export type SheetRead = {
	readonly sheet: BenchSheet | null;
	/** When the sheet is an older one, kept on the phone: since when; null when it is the shop's own of now. */
	readonly since: string | null;
	/** The shop did not answer, and the phone has no older one. */
	readonly failed: boolean;
	readonly readAgain: () => void;
};

/** The machine's sheet: from the shop, and while it cannot be reached the last one that this phone saw. */
export function useSheet(machineNumber: number): SheetRead {
	const [state, setState] = useState<Omit<SheetRead, "readAgain">>({ sheet: null, since: null, failed: false });
	const key = `sheet ${machineNumber}`;
	const readAgain = useCallback(() => {
		void fetchSheet(machineNumber).then(async (fresh) => {
			const store = await phone();
			if (fresh) {
				setState({ sheet: fresh, since: null, failed: false });
				await store.keepDraft({ key, at: new Date().toISOString(), value: fresh });
				return;
			}
			const old = await store.draft(key);
			// What is on the screen is never older than what the phone kept.
			setState((now) =>
				now.sheet ? now : { sheet: (old?.value as BenchSheet | undefined) ?? null, since: old?.at ?? null, failed: !old },
			);
		});
	}, [machineNumber, key]);
	useEffect(readAgain, [readAgain]);
	return { ...state, readAgain };
}

async function fetchSheet(machineNumber: number): Promise<BenchSheet | null> {
	try {
		const answer = await fetch(`/machines/${machineNumber}/bench/sheet`, { signal: AbortSignal.timeout(20_000) });
		if (!answer.ok) return null;
		// The shop's own answer, in the shape that its own program gives it.
		const { now, sheet } = (await answer.json()) as { now: string; sheet: BenchSheet };
		hearShopTime(now);
		return sheet;
	} catch (error) {
		console.info("the shop did not answer", error);
		return null;
	}
}
