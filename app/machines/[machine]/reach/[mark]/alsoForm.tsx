import { Button } from "@/app/ui/button";
import { Link } from "@/app/ui/link";
import { SelectField } from "@/app/ui/selectField";

type Choice = { readonly mark: string; readonly name: string };

/** Several positions opened at once cost less than one after the other. The question lies in the address; a plain form does. */
export function AlsoForm({
	base,
	also,
	most,
	choices,
}: {
	readonly base: string;
	readonly also: readonly Choice[];
	readonly most: number;
	readonly choices: readonly Choice[];
}) {
	const without = (mark: string): string => {
		const kept = also.filter((each) => each.mark !== mark).map((each) => `and=${encodeURIComponent(each.mark)}`);
		return kept.length === 0 ? base : `${base}?${kept.join("&")}`;
	};
	return (
		<>
			{also.length === 0 ? null : (
				<ul className="mb-3 flex flex-col gap-1">
					{also.map(({ mark, name }) => (
						<li key={mark}>
							{`and ${mark} ${name} · `}
							<Link className="inline-block py-1.5" href={without(mark)}>{`leave ${mark} out`}</Link>
						</li>
					))}
				</ul>
			)}
			{also.length + 1 >= most || choices.length === 0 ? null : (
				<form method="get" action={base}>
					{also.map(({ mark }) => (
						<input key={mark} type="hidden" name="and" value={mark} />
					))}
					<SelectField
						label="Get at this, too"
						name="and"
						options={choices.map(({ mark, name }) => ({ value: mark, label: `${mark} ${name}` }))}
					/>
					<Button type="submit">Show the way to all of them</Button>
				</form>
			)}
		</>
	);
}
