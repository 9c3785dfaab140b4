import type { ComponentProps } from "react";
import type { FieldWords } from "@/app/ui/field";
import { TextField } from "@/app/ui/textField";

/** A day and a time in the shop's own zone. Left empty, it is now. */
export function MomentField({ hint = "Left empty, it is now.", ...field }: FieldWords & Omit<ComponentProps<"input">, "type">) {
	return <TextField {...field} hint={hint} optional type="datetime-local" className="af-short" />;
}
