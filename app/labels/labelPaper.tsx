import type { Drawing } from "@/lib/labels/drawing";
import { labelSvg } from "@/lib/labels/labelSvg";

/** A print-out on the screen, drawn from the same marks as the one on paper. */
export const LabelPaper = ({ drawing, size }: { readonly drawing: Drawing; readonly size?: "actual" | "whole-page" }) => (
	<div
		className={size === "whole-page" ? "af-label-paper af-whole-page" : "af-label-paper"}
		data-size={size === "actual" ? "actual" : undefined}
		// biome-ignore lint/security/noDangerouslySetInnerHtml: drawn by labelSvg, which escapes every word on it
		dangerouslySetInnerHTML={{ __html: labelSvg(drawing) }}
	/>
);
