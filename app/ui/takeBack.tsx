"use client";

import { type ComponentProps, useState } from "react";
import { Button } from "./button";
import { FormProblem } from "./formProblem";
import { Buttons } from "./layouts";
import { TextField } from "./textField";

/** Takes something back that was entered in error: a quiet button that asks why before it does. */
export function TakeBack({
	says,
	formProps,
	problem,
	pending,
	why,
}: {
	/** What the button says to who cannot see what it stands beside: "Take back the delivery of motor". */
	readonly says: string;
	readonly formProps: ComponentProps<"form">;
	readonly problem: ComponentProps<typeof FormProblem>["problem"];
	readonly pending: boolean;
	/** The field's own props: `form.field("why")`. */
	readonly why: Omit<ComponentProps<typeof TextField>, "label">;
}) {
	const [asking, setAsking] = useState(false);
	if (!asking)
		return (
			<Button kind="quiet" onClick={() => setAsking(true)} aria-label={says}>
				Take back
			</Button>
		);
	return (
		<form {...formProps}>
			<FormProblem problem={problem} />
			<TextField label="Why it was entered in error" {...why} />
			<Buttons>
				<Button type="submit" pending={pending}>
					Take it back
				</Button>
				<Button kind="quiet" onClick={() => setAsking(false)}>
					Leave it
				</Button>
			</Buttons>
		</form>
	);
}
