"use client";

import { Button } from "@/app/ui/button";
import { TextField } from "@/app/ui/textField";
import { readEdtf } from "@/lib/core/edtf";

type Props = Omit<Parameters<typeof TextField>[0], "label" | "hint"> & {
	/** What is typed now. */
	readonly typed: string;
	/** Takes the suggestion in place of what is typed. */
	readonly onTake: (edtf: string) => void;
	readonly label?: string;
};

/** A date of manufacture: what is typed is read back in plain words at once, and what was probably meant is one press away. */
export function MadeField({ typed, onTake, label = "Made", ...field }: Props) {
	const read = typed.trim() === "" ? null : readEdtf(typed);
	const suggestion = read !== null && !read.ok ? read.error.facts?.suggestion : undefined;
	return (
		<div>
			<TextField
				{...field}
				label={label}
				optional
				hint={
					<span aria-live="polite">
						{read === null ? "A year is enough: 1957. Not sure? 1957~ is about 1957, 195X some year of the fifties." : null}
						{read?.ok ? (
							<>
								Read as: <b>{read.value.words}</b>
							</>
						) : null}
						{read !== null && !read.ok ? (typeof suggestion === "string" ? "Not a date as it stands." : read.error.say) : null}
					</span>
				}
			/>
			{typeof suggestion === "string" ? (
				<Button
					onClick={() => {
						onTake(suggestion);
					}}
				>
					Take {suggestion}
					<MeantWords edtf={suggestion} />
				</Button>
			) : null}
		</div>
	);
}

function MeantWords({ edtf }: { readonly edtf: string }) {
	const read = readEdtf(edtf);
	return read.ok && read.value.words !== edtf ? <span>({read.value.words})</span> : null;
}
