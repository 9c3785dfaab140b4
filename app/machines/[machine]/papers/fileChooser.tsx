"use client";

import { useId } from "react";

/** Chooses files that are there already: from the phone's pictures, from a folder. Hands them over at once and forgets them. */
export function FileChooser({
	deed,
	accept,
	several = false,
	onPick,
}: {
	/** The button's words: "Choose photos". */
	readonly deed: string;
	/** Media types; left out, any file. */
	readonly accept?: string;
	readonly several?: boolean;
	readonly onPick: (files: readonly File[]) => void;
}) {
	const id = useId();
	return (
		<div className="af-photo-field">
			<label className="af-button" data-kind="plain" data-wide="" htmlFor={id}>
				{deed}
			</label>
			<input
				id={id}
				type="file"
				accept={accept}
				multiple={several}
				onChange={(event) => {
					const files = [...(event.currentTarget.files ?? [])];
					event.currentTarget.value = "";
					if (files.length) onPick(files);
				}}
			/>
		</div>
	);
}
