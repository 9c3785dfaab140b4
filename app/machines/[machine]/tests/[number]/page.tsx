import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { currentPerson } from "@/lib/people/current";
import { peopleHere } from "@/lib/people/queries";
import { requireShop } from "@/lib/shop/queries";
import { judgeText } from "@/lib/tests/limits";
import { instrumentsUsed, testOf } from "@/lib/tests/queries";
import { readingHint } from "@/lib/tests/setTest";
import { thisMachine } from "../../thisMachine";
import { numberInAddress } from "../../work/numberInAddress";
import { RunForm } from "../runForm";
import { withUnit } from "../runs";
import { Source } from "../sourceFlag";
import { TestCaution } from "../testCaution";
import { VerdictMark } from "../verdictMark";

type Props = { readonly params: Promise<{ machine: string; number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: `Test t${(await params).number}` };
}

export default async function TestPage({ params }: Props) {
	const { machine: inAddress, number } = await params;
	const machine = await thisMachine(inAddress);
	const { read } = await shopStore();
	const test = await testOf(read, machine.id, numberInAddress(number));
	if (!test) notFound();
	const [{ timeZone }, me, people, instruments] = await Promise.all([
		requireShop(read),
		currentPerson(),
		peopleHere(read),
		instrumentsUsed(read),
	]);
	const base = `/machines/${machine.number}`;
	return (
		<Stack>
			<TestCaution />
			<div>
				<p className="text-ink-2">
					<Link href={`${base}/tests`}>Tests</Link> · t{test.number}
				</p>
				<h2 className="text-2xl">{test.name}</h2>
			</div>
			<Columns>
				<Stack>
					<Card title="Limit">
						<p className="text-lg font-semibold">{test.limitWords ?? "None: values are only recorded"}</p>
						{test.limitSource ? (
							<p className="text-ink-2">
								<Source source={test.limitSource} />
							</p>
						) : null}
						<Facts
							facts={[
								{
									label: "Position",
									value: test.position ? (
										<Link href={`${base}/build/${test.position.mark}`}>{`${test.position.mark} ${test.position.name}`}</Link>
									) : null,
								},
								{ label: "Part", value: test.part?.name },
								{
									label: "Step",
									value: test.step ? (
										<Link href={`${base}/work/${test.step.number}`}>{`${test.step.number} ${test.step.title}`}</Link>
									) : null,
								},
								{
									label: "Conversion",
									value: test.conversion ? (
										<Link
											href={`${base}/changes/conversions/${test.conversion.number}`}
										>{`C${test.conversion.number} ${test.conversion.name}`}</Link>
									) : null,
								},
							]}
						/>
					</Card>
					<Card title="Readings" flush>
						<Table
							caption="Readings, earliest first"
							rows={test.runs}
							rowKey={(run) => run.id}
							empty={
								<div className="p-4">
									<Empty title="Nothing measured yet">Readings stay, also those that do not keep the limit.</Empty>
								</div>
							}
							columns={[
								{
									key: "value",
									head: "Measured",
									main: true,
									cell: (run) => withUnit(run.value, test.unit),
									sub: (run) => (run.verdict === "pass" ? "" : judgeText(run.value, test.unit, test.limit).say),
								},
								{ key: "verdict", head: "Verdict", cell: (run) => <VerdictMark verdict={run.verdict} /> },
								{ key: "phase", head: "Work", cell: (run) => run.phase },
								{ key: "who", head: "By", cell: (run) => run.person.name, sub: (run) => run.instrument },
								{ key: "when", head: "When", cell: (run) => formatInstant(instant(run.at), timeZone), sub: (run) => run.words },
							]}
						/>
					</Card>
				</Stack>
				<Card title="Record a reading">
					<RunForm
						testId={test.id}
						hint={readingHint(test.limit, test.unit)}
						unit={test.unit}
						me={me?.id ?? people[0]?.id ?? ""}
						people={people.map(({ id, name }) => ({ value: id, label: name }))}
						instruments={instruments}
						phase={machine.state === "intake" || machine.state === "waiting" ? "before" : "after"}
					/>
				</Card>
			</Columns>
		</Stack>
	);
}
