import { Link } from "@/app/ui/link";
import { TagChip } from "@/app/ui/tagChip";

type Target = {
	readonly place: string | null;
	readonly part: { readonly name: string; readonly origin: string; readonly tag: { readonly id: string } | null } | null;
	readonly position: { readonly mark: string; readonly name: string } | null;
};

/** What was changed: a part, wherever it is; a position; or a place. */
export function Where({ of, base }: { readonly of: Target; readonly base: string }) {
	if (of.part)
		return (
			<>
				{of.part.origin === "original" ? "the original " : ""}
				{of.part.name}
				{of.part.tag ? (
					<>
						{" "}
						<TagChip tag={of.part.tag.id} href={`/t/${of.part.tag.id}`} size="small" />
					</>
				) : null}
			</>
		);
	if (of.position) return <Link href={`${base}/build/${of.position.mark}`}>{`${of.position.mark} ${of.position.name}`}</Link>;
	return <>{of.place}</>;
}
