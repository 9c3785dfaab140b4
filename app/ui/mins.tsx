/** A duration already written out ("2 h 35"), kept on one line. `from` and `to` add the range: "2 h 35 (2 h to 3 h 10)". */
export function Mins({ text, from, to }: { readonly text: string; readonly from?: string; readonly to?: string }) {
	return (
		<>
			<span className="af-amount">{text}</span>
			{from && to ? (
				<span>
					{" "}
					({from} to {to})
				</span>
			) : null}
		</>
	);
}
