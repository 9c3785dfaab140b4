"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { keepWords, keptWords } from "@/app/keptOnPhone";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { CheckField } from "@/app/ui/checkField";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import type { Counted } from "@/lib/store/changes";
import type { Lying } from "@/lib/store/counting";
import type { Scanned } from "@/lib/store/scanned";
import { countPlaceAction, scannedAction, scannedTagsAction } from "../../actions";
import { notTaken } from "../../scanAnswer";
import { BagLook } from "./bagLook";
import { Missing, type MissingSaid, missingAnswers } from "./missing";

type Props = {
	readonly place: { readonly id: string; readonly name: string; readonly inside: boolean };
	readonly expected: readonly Lying[];
	readonly places: readonly { readonly id: string; readonly path: string }[];
	readonly days: Days;
};
/** Today, as text and in words, and the last day whose ticks are still good. */
type Days = { readonly today: string; readonly words: string; readonly stillGood: string };

/** Scan or tick what is there; then what is missing and what was not expected is put right, and all of it recorded as one count. */
export function CountRun({ place, expected, places, days }: Props) {
	const router = useRouter();
	const [seen, setSeen] = useState<readonly string[]>([]);
	const [strange, setStrange] = useState<readonly Scanned[]>([]);
	/** Of what was not expected: whether it lies right here from now on, where somebody said so or not. */
	const [laid, setLaid] = useState<Readonly<Record<string, boolean>>>({});
	const [said, setSaid] = useState<Readonly<Record<string, MissingSaid>>>({});
	const [mending, setMending] = useState(false);
	const [counted, setCounted] = useState<Counted | null>(null);
	const [problem, setProblem] = useState("");
	const [fields, setFields] = useState<Readonly<Record<string, string>>>({});
	const [deed, setDeed] = useState(clientId);
	const kept = `count-${place.id}${place.inside ? "-inside" : ""}`;
	const asked = useRef<HTMLElement>(null);
	useEffect(() => {
		if (Object.keys(fields).length > 0) asked.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
	}, [fields]);
	const { begunOn, beginAnew } = useKept(kept, { days, seen, strange, setSeen, addStrange, isOver: counted !== null });

	const missing = expected.filter((thing) => !seen.includes(thing.id));
	const here = expected.length - missing.length;

	function addStrange(things: readonly Scanned[]) {
		setStrange((now) => [...now, ...things.filter((thing) => !now.some((one) => one.id === thing.id))]);
	}
	// What lies in a bag that is here, or that was not expected either, stays in it, unless it is said to lie loose.
	const isLaid = ({ id, bags }: Scanned): boolean =>
		laid[id] ?? !bags.some((bag) => expected.some((one) => one.tag === bag) || strange.some((one) => one.tag === bag));
	/** Its bag is laid here, and it comes in it. */
	const comesInBag = ({ bags }: Scanned): boolean => strange.some((one) => one.isLoose && bags.includes(one.tag) && isLaid(one));
	// What was seen here, and by the record was carried elsewhere meanwhile, is no longer expected: it is shown as such.
	const tags = useRef(new Map<string, string>());
	useEffect(() => {
		for (const { id, tag } of expected) if (tag !== null) tags.current.set(id, tag);
		const gone = seen.filter((id) => !expected.some((thing) => thing.id === id)).flatMap((id) => tags.current.get(id) ?? []);
		if (gone.length === 0) return;
		setSeen((now) => now.filter((id) => expected.some((thing) => thing.id === id)));
		void scannedTagsAction(gone).then((things) => setStrange((now) => [...now, ...things]));
	}, [expected, seen]);

	const scan = async (text: string): Promise<ScanAnswer> => {
		const found = await scannedAction(text);
		if (!found.ok) return notTaken(found.error);
		const thing = found.value;
		if (thing.kind === "place") return { ok: false, say: `${thing.tag} is the place ${thing.where}. Scan what lies there.` };
		if (expected.some((one) => one.id === thing.id)) {
			setSeen((now) => [...new Set([...now, thing.id])]);
			return { ok: true, say: `${thing.tag} ${thing.name}: here.` };
		}
		addStrange([thing]);
		return { ok: true, say: `${thing.tag} ${thing.name} was not expected here.` };
	};
	const record = async () => {
		const answer = await countPlaceAction({
			locationId: place.id,
			inside: place.inside,
			expected: expected.map((thing) => thing.id),
			seen: [...seen, ...strange.map((thing) => thing.id)],
			layHere: strange.filter((thing) => thing.isLoose && isLaid(thing) && !comesInBag(thing)).map((thing) => thing.id),
			...missingAnswers(missing, said),
			deed,
		}).catch(() => null);
		if (answer === null) return setProblem("The shop did not answer. Press again when it is back; it is counted once.");
		setDeed(clientId());
		if (answer.ok) {
			setProblem("");
			setCounted(answer.value);
			return;
		}
		setProblem(answer.error.say);
		setFields(answer.error.fields ?? {});
		if (answer.error.code === "moved-meanwhile") {
			setMending(false);
			router.refresh();
		}
	};

	if (counted) return <Result counted={counted} placeId={place.id} />;
	return (
		<>
			{problem ? <Notice means="stop">{problem}</Notice> : null}
			{begunOn ? (
				<p className="af-sub">
					Begun on {begunOn}.{" "}
					<Button
						kind="quiet"
						onClick={() => {
							setStrange([]);
							setLaid({});
							setSaid({});
							setMending(false);
							beginAnew();
						}}
					>
						Begin anew
					</Button>
				</p>
			) : null}
			{mending ? null : (
				<>
					<ScanField label="What is there" hint="12-0147-K" onScan={scan} />
					<section aria-labelledby="should" className="af-count-list">
						<h2 id="should">{expected.length === 0 ? "Nothing should be here" : `${here} of ${expected.length} are here`}</h2>
						{expected.map((thing) => (
							<div key={thing.id}>
								<CheckField
									label={[thing.tag, thing.name].filter(Boolean).join(" ")}
									hint={thing.at}
									name={thing.id}
									checked={seen.includes(thing.id)}
									onChange={(event) => setSeen(event.target.checked ? [...seen, thing.id] : seen.filter((id) => id !== thing.id))}
								/>
								{thing.kind === "bag" ? <BagLook bagId={thing.id} tag={thing.tag} /> : null}
							</div>
						))}
					</section>
				</>
			)}
			{mending && missing.length > 0 ? (
				<section aria-labelledby="missing" ref={asked}>
					<h2 id="missing">{missing.length === 1 ? "1 thing is missing" : `${missing.length} things are missing`}</h2>
					{missing.map((thing) => (
						<Missing
							key={thing.id}
							thing={thing}
							places={places}
							answer={said[thing.id]}
							problems={problemsOf(thing.id, missing, said, fields)}
							onSay={(answer) => setSaid({ ...said, [thing.id]: answer })}
						/>
					))}
				</section>
			) : null}
			{strange.length > 0 ? (
				<section aria-labelledby="strange">
					<h2 id="strange">Not expected here</h2>
					<ul className="af-bench-list">
						{strange.map((thing) => (
							<li key={thing.id}>
								<p>
									<strong>{`${thing.tag} ${thing.name}`}</strong>
									<span className="af-sub block">By the record: {thing.where}</span>
								</p>
								{comesInBag(thing) ? (
									<p className="af-sub">It stays in {thing.bags[0]}.</p>
								) : thing.isLoose ? (
									<CheckField
										label={`It lies right on ${place.name} from now on`}
										name={`here-${thing.id}`}
										checked={isLaid(thing)}
										onChange={(event) => setLaid({ ...laid, [thing.id]: event.target.checked })}
									/>
								) : (
									<p className="af-sub">
										One of the two is wrong: <Link href={`/t/${thing.tag}`}>its page</Link> puts it right.
									</p>
								)}
								<Button kind="quiet" onClick={() => setStrange(strange.filter((one) => one.id !== thing.id))}>
									Leave it out of the count
								</Button>
							</li>
						))}
					</ul>
				</section>
			) : null}
			<ActionBar>
				{missing.length > 0 && !mending ? (
					<Button kind="main" onClick={() => setMending(true)}>
						{`Done: ${missing.length} missing`}
					</Button>
				) : (
					<Button kind="main" onClick={record}>
						Record the count
					</Button>
				)}
				{mending ? <Button onClick={() => setMending(false)}>Count on</Button> : null}
			</ActionBar>
		</>
	);
}

/** What the shop said to the answers about one missing thing: they were sent by their place in two lists. */
function problemsOf(
	id: string,
	missing: readonly Lying[],
	said: Readonly<Record<string, MissingSaid>>,
	fields: Readonly<Record<string, string>>,
): { readonly to: string | undefined; readonly why: string | undefined } {
	const { elsewhere, lost } = missingAnswers(missing, said);
	const problem = (list: string, at: number) =>
		at < 0 ? undefined : Object.entries(fields).find(([field]) => field.startsWith(`${list}.${at}.`))?.[1];
	return {
		to: problem(
			"elsewhere",
			elsewhere.findIndex((one) => one.id === id),
		),
		why: problem(
			"lost",
			lost.findIndex((one) => one.partId === id),
		),
	};
}

/**
 * A count that is broken off goes on where it was: the ticks by their ids, what was not expected by its tag, and the day on
 * which it was begun. What is older than some days says nothing of today, and is begun anew.
 */
function useKept(
	name: string,
	{
		days,
		seen,
		strange,
		setSeen,
		addStrange,
		isOver,
	}: {
		readonly days: Days;
		readonly seen: readonly string[];
		readonly strange: readonly Scanned[];
		readonly setSeen: (ids: readonly string[]) => void;
		readonly addStrange: (things: readonly Scanned[]) => void;
		readonly isOver: boolean;
	},
): { readonly begunOn: string; readonly beginAnew: () => void } {
	const [isRead, setIsRead] = useState(false);
	const [begunOn, setBegunOn] = useState("");
	const begun = useRef(`@${days.today} ${days.words}`);
	// biome-ignore lint/correctness/useExhaustiveDependencies: what was kept is read once, when the page comes.
	useEffect(() => {
		const [day = "", ...words] = keptWords(name) ?? [];
		setIsRead(true);
		if (!day.startsWith("@") || day.slice(1, 11) < days.stillGood) return;
		begun.current = day;
		setBegunOn(day.slice(12));
		setSeen(words.filter((word) => !word.startsWith("+")));
		const tags = words.filter((word) => word.startsWith("+")).map((word) => word.slice(1));
		if (tags.length > 0) void scannedTagsAction(tags).then(addStrange);
	}, []);
	useEffect(() => {
		const words = [...seen, ...strange.map((thing) => `+${thing.tag}`)];
		if (isRead) keepWords(name, isOver || words.length === 0 ? [] : [begun.current, ...words]);
	}, [name, isRead, isOver, seen, strange]);
	const beginAnew = () => {
		begun.current = `@${days.today} ${days.words}`;
		setBegunOn("");
		setSeen([]);
	};
	return { begunOn, beginAnew };
}

function Result({ counted, placeId }: { readonly counted: Counted; readonly placeId: string }) {
	const of = counted.here + counted.missing.length;
	return (
		<>
			<Notice means={counted.missing.length > 0 ? "wait" : "original"} title="Counted">
				<p>
					{of === 0
						? "Nothing should be here."
						: counted.here === of
							? "Everything that should be here is here."
							: `${counted.here} of ${of} are here.`}
					{counted.unexpected.length > 0 ? ` Not expected: ${counted.unexpected.join(", ")}.` : ""}
				</p>
				{counted.missing.length > 0 ? <p>{`Missing: ${counted.missing.join(", ")}.`}</p> : null}
			</Notice>
			<ActionBar>
				<ButtonLink kind="main" href={`/store/${placeId}`}>
					Back to the place
				</ButtonLink>
			</ActionBar>
		</>
	);
}
