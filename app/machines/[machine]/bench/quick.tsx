"use client";

import { ActionBar } from "@/app/ui/layouts";
import { ShotStrip, useShots } from "../take-out/shots";
import type { BenchOf } from "./benchRun";

/** With greasy hands a photo is enough: the words come in the evening. */
export function Quick({ machine, person }: BenchOf) {
	const photos = useShots({ machine, person, positionId: null, words: "words to come" });
	return (
		<ActionBar>
			<ShotStrip photos={photos} deed="Only a photo now, words later" />
		</ActionBar>
	);
}
