"use client";

import { useState } from "react";

/** The first free label of a used sheet: tap it on a picture of the sheet. */
export function StartAt({ perSheet, columns, start }: { perSheet: number; columns: number; start: number }) {
	const [first, setFirst] = useState(Math.min(start, perSheet));
	return (
		<fieldset className="af-field">
			<legend className="af-label">First free label: {first}</legend>
			<div className="af-sheet" style={{ "--columns": String(columns) } as Record<string, string>}>
				{Array.from({ length: perSheet }, (_, at) => at + 1).map((place) => (
					<label key={place} data-used={place < first ? "" : undefined}>
						<input
							className="sr-only"
							type="radio"
							name="start"
							value={place}
							checked={place === first}
							onChange={() => setFirst(place)}
							aria-label={`Label ${place}`}
						/>
						<span aria-hidden="true">{place}</span>
					</label>
				))}
			</div>
		</fieldset>
	);
}
