export default function Loading() {
	return (
		<div className="af-loading" role="status">
			<span className="af-spinner" />
			Fetching the page
		</div>
	);
}
