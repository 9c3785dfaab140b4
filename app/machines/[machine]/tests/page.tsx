import type { Metadata } from "next";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Buttons, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { type TestRow, testsOf } from "@/lib/tests/queries";
import { thisMachine } from "../thisMachine";
import { Runs } from "./runs";
import { Source } from "./sourceFlag";
import { TestCaution } from "./testCaution";

export const metadata: Metadata = { title: "Tests" };

export default async function TestsPage({ params }: { params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [{ timeZone }, tests] = await Promise.all([requireShop(read), testsOf(read, machine.id)]);
	const base = `/machines/${machine.number}/tests`;
	const set = (
		<ButtonLink href={`${base}/new`} kind="main">
			Set a test
		</ButtonLink>
	);
	const runsIn = (test: TestRow, when: "before" | "after") => {
		const runs = test.runs.filter(({ phase }) => phase === when);
		return runs.length === 0 ? null : <Runs runs={runs} unit={test.unit} timeZone={timeZone} />;
	};
	const of = (test: TestRow) =>
		[
			test.position ? `${test.position.mark} ${test.position.name}` : "",
			test.part?.name ?? "",
			test.conversion ? `C${test.conversion.number}` : "",
			test.step ? `step ${test.step.number}` : "",
		]
			.filter(Boolean)
			.join(" · ");
	return (
		<Stack>
			<TestCaution />
			{tests.length === 0 ? (
				<Empty title="No tests set" action={set}>
					A test is set with its limit before anything is measured: protective earth, insulation, the fuse, two hundred plays in a row.
				</Empty>
			) : (
				<Card title="Tests" aside={inWords(tests)}>
					<div className="no-print mb-3">
						<Buttons>
							{set}
							<PrintButton>Print the tests</PrintButton>
						</Buttons>
					</div>
					<Table
						caption={`Tests of ${machine.name}`}
						rows={tests}
						rowKey={(test) => test.id}
						columns={[
							{
								key: "test",
								head: "Test",
								main: true,
								cell: (test) => <Link href={`${base}/${test.number}`}>{`t${test.number} ${test.name}`}</Link>,
								sub: of,
							},
							{
								key: "limit",
								head: "Limit",
								cell: (test) => test.limitWords ?? <span className="text-ink-2">none: only recorded</span>,
								sub: (test) => <Source source={test.limitSource} />,
							},
							{
								key: "before",
								head: "Before",
								cell: (test) => runsIn(test, "before"),
							},
							{
								key: "after",
								head: "After",
								cell: (test) => runsIn(test, "after"),
							},
						]}
					/>
				</Card>
			)}
		</Stack>
	);
}

/** How many tests were measured after the work, and what the last of those readings came to. */
function inWords(tests: readonly TestRow[]): string {
	const last = tests.map(({ runs }) => runs.filter(({ phase }) => phase === "after").at(-1)?.verdict ?? null);
	const count = (verdict: string | null) => last.filter((one) => one === verdict).length;
	const words = [
		[count("pass"), "kept"],
		[count("fail"), "not kept"],
		[count("unjudged"), "not judged"],
		[count(null), "not measured yet"],
	] as const;
	return `last readings after the work: ${words.flatMap(([many, what]) => (many > 0 ? [`${many} ${what}`] : [])).join(", ")}`;
}
