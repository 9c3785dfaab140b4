"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { CheckField } from "@/app/ui/checkField";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import type { Scanned } from "@/lib/store/scanned";
import { countPlaceAction, scannedAction } from "../../actions";
import { notTaken } from "../../scanAnswer";

type Expected = { readonly id: string; readonly tag: string | null; readonly name: string };
type Counted = { readonly here: number; readonly missing: readonly string[]; readonly unexpected: readonly string[] };

/** Here, missing, not expected: shown as it is scanned, recorded as one count. */
export function CountRun({ place, expected }: { place: { readonly id: string; readonly path: string }; expected: readonly Expected[] }) {
	const router = useRouter();
	const [seen, setSeen] = useState<readonly string[]>([]);
	const [strange, setStrange] = useState<readonly Scanned[]>([]);
	const [stays, setStays] = useState<readonly string[]>([]);
	const [counted, setCounted] = useState<Counted | null>(null);
	const [problem, setProblem] = useState("");
	const [deed, setDeed] = useState(clientId);
	const [busy, setBusy] = useState(false);

	const scan = async (text: string): Promise<ScanAnswer> => {
		const found = await scannedAction(text);
		if (!found.ok) return notTaken(found.error);
		const thing = found.value;
		if (thing.kind === "place") return { ok: false, say: `${thing.tag} is the place ${thing.where} itself. Scan what lies on it.` };
		if (thing.kind === "part" && !thing.isLoose)
			return { ok: false, say: `${thing.tag} ${thing.name} is ${thing.where} by the record. Look at its page: one of the two is wrong.` };
		if (expected.some((one) => one.id === thing.id)) setSeen((now) => [...new Set([...now, thing.id])]);
		else setStrange((now) => (now.some((one) => one.id === thing.id) ? now : [...now, thing]));
		return { ok: true };
	};
	const record = async () => {
		setBusy(true);
		const answer = await countPlaceAction({
			locationId: place.id,
			expected: expected.map((thing) => thing.id),
			seen: [...seen, ...strange.map((thing) => thing.id)],
			layHere: strange.map((thing) => thing.id).filter((id) => !stays.includes(id)),
			deed,
		}).catch(() => null);
		setBusy(false);
		if (answer === null) return setProblem("The shop did not answer. Press again when it is back; it is counted once.");
		setDeed(clientId());
		if (answer.ok) {
			setProblem("");
			setCounted(answer.value);
			return;
		}
		setProblem(answer.error.say);
		if (answer.error.code === "moved-meanwhile") router.refresh();
	};

	if (counted) {
		return (
			<>
				<Notice means={counted.missing.length > 0 ? "stop" : "original"} title="Counted">
					<p>
						{counted.here === expected.length
							? "Everything that should be here is here."
							: `${counted.here} of ${expected.length} are here.`}
						{counted.unexpected.length > 0 ? ` Not expected: ${counted.unexpected.join(", ")}.` : ""}
					</p>
				</Notice>
				{counted.missing.length > 0 ? (
					<section aria-labelledby="missing">
						<h2 id="missing">Missing: say where each is, or that it is lost</h2>
						<ul className="af-bench-list">
							{expected
								.filter((thing) => !seen.includes(thing.id))
								.map((thing) => (
									<li key={thing.id}>{thing.tag ? <Link href={`/t/${thing.tag}`}>{`${thing.tag} ${thing.name}`}</Link> : thing.name}</li>
								))}
						</ul>
					</section>
				) : null}
				<ActionBar>
					<ButtonLink kind="main" href={`/store/${place.id}`}>
						Back to the place
					</ButtonLink>
				</ActionBar>
			</>
		);
	}
	return (
		<>
			<div role="alert">{problem ? <Notice means="stop">{problem}</Notice> : null}</div>
			<ScanField label="What is there" hint="12-0147-K" onScan={scan} />
			<section aria-labelledby="should">
				<h2 id="should">{`Should be here: ${seen.length} of ${expected.length} seen`}</h2>
				{expected.length === 0 ? <p className="af-sub">By the record nothing lies here.</p> : null}
				{expected.map((thing) => (
					<CheckField
						key={thing.id}
						label={[thing.tag, thing.name].filter(Boolean).join(" ")}
						name={thing.id}
						checked={seen.includes(thing.id)}
						onChange={(event) => setSeen(event.target.checked ? [...seen, thing.id] : seen.filter((id) => id !== thing.id))}
					/>
				))}
			</section>
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
								<CheckField
									label="It lies here from now on"
									name={`here-${thing.id}`}
									checked={!stays.includes(thing.id)}
									onChange={(event) => setStays(event.target.checked ? stays.filter((id) => id !== thing.id) : [...stays, thing.id])}
								/>
								<Button kind="quiet" onClick={() => setStrange(strange.filter((one) => one.id !== thing.id))}>
									Leave it out of the count
								</Button>
							</li>
						))}
					</ul>
				</section>
			) : null}
			<ActionBar>
				<Button kind="main" pending={busy} onClick={() => void record()}>
					{seen.length === expected.length ? "Record the count" : `Record it with ${expected.length - seen.length} missing`}
				</Button>
			</ActionBar>
		</>
	);
}
