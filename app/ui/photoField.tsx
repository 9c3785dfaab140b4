"use client";

import { useId } from "react";

/**
 * The camera on a phone, a file elsewhere; works on plain HTTP. Hands over the pictures at once and forgets them,
 * so that the same one can be chosen again. `deed` is the button's words: "Take the photo".
 */
export function PhotoField({
	deed,
	several = false,
	kind = "plain",
	onPick,
}: {
	readonly deed: string;
	readonly several?: boolean;
	readonly kind?: "main" | "plain";
	readonly onPick: (files: readonly File[]) => void;
}) {
	const id = useId();
	return (
		<div className="af-photo-field">
			<label className="af-button" data-kind={kind} data-wide="" htmlFor={id}>
				{deed}
			</label>
			<input
				id={id}
				type="file"
				accept="image/jpeg,image/png,image/webp"
				capture="environment"
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
