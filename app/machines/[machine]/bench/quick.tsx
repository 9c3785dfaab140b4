"use client";

import { useState } from "react";
import { queue } from "@/app/outbox/outbox";
import { shopTime } from "@/app/outbox/shopTime";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import { readTag } from "@/lib/tags/readTag";
import { ShotStrip, useShots } from "../take-out/shots";
import type { BenchOf } from "./benchRun";

/** With greasy hands a photo or a scanned tag is enough: the words come in the evening, from the list of what has none. */
export function Quick({ machine, person }: BenchOf) {
	const photos = useShots({ machine, person, positionId: null, words: "words to come" });
	const [kept, setKept] = useState<readonly string[]>([]);
	const scan = async (text: string): Promise<ScanAnswer> => {
		const read = readTag(text);
		if (!read.ok) return { ok: false, say: read.error.say };
		const { tag } = read.value;
		const at = shopTime();
		await queue({
			deed: clientId(),
			kind: "tag",
			at,
			words: `Scanned ${tag}: words to come`,
			machine,
			person,
			input: { machineId: machine.id, kind: "tag", tag, takenAt: at },
		});
		setKept((before) => [...before, tag]);
		return { ok: true };
	};
	return (
		<>
			<details className="af-details">
				<summary>Only a tag now, words later</summary>
				<div className="pt-2">
					<ScanField label="Tag" hint="12-0147-K" onScan={scan} />
					{kept.length > 0 ? <p role="status">Kept for the evening: {kept.join(", ")}</p> : null}
				</div>
			</details>
			<p className="af-sub">
				What has no words yet is on <Link href="/later">the list for the evening</Link>.
			</p>
			<ActionBar>
				<ShotStrip photos={photos} deed="Only a photo now, words later" />
			</ActionBar>
		</>
	);
}
