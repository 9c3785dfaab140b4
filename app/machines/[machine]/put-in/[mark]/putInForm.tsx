"use client";

import { useRouter } from "next/navigation";
import { useId, useState } from "react";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Empty } from "@/app/ui/empty";
import { FormProblem } from "@/app/ui/formProblem";
import { ActionBar } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { PutInDone } from "@/lib/fittings/changes";
import type { Candidate } from "@/lib/fittings/queries";
import type { PutIn } from "@/lib/fittings/schema";
import { focusNext, useShowDone } from "../../justDone";
import { type SettingLine, SettingLines } from "../../take-out/[mark]/settingLines";
import { ShotStrip, useShots } from "../../take-out/shots";
import { putInAction } from "../actions";
import { lotsTyped, type ShownLot, UsedFixings, type UsedLot } from "./usedFixings";
import { type ShownWire, type UsedWire, UsedWires } from "./usedWires";

export type PutInFormProps = {
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	/** Who uses this browser; null while nobody was chosen. */
	readonly person: string | null;
	readonly position: { readonly id: string; readonly mark: string; readonly name: string };
	/** Part id that the address asks for. */
	readonly wanted: string | null;
	readonly candidates: readonly Candidate[];
	readonly fixings: readonly ShownLot[];
	/** Lots that held a part here and are lost or scrapped. */
	readonly gone: readonly { readonly partId: string; readonly words: string }[];
	readonly wires: readonly ShownWire[];
	readonly settings: readonly { readonly partId: string; readonly kind: string; readonly value: string }[];
	readonly ways: readonly { readonly partId: string; readonly words: string }[];
	readonly safety: readonly { readonly partId: string; readonly conversion: string }[];
	/** What reversal of the other machine misses while its part is here; "" when nothing, or when no part of another is asked for. */
	readonly misses?: string;
	readonly behind: boolean;
	readonly steps: readonly { readonly id: string; readonly number: number; readonly title: string; readonly state: string }[];
	readonly conversions: readonly { readonly id: string; readonly number: number; readonly name: string }[];
	/** The step that it is done for, where the page knows. */
	readonly stepId?: string;
	/** What follows on this very page, where it is one of a list ("Go on with the reversal"). */
	readonly goOn?: string;
	/** Why it goes in, where that was said before. */
	readonly reason?: string;
	/** The lots that are to hold it, where a plan says so; otherwise those that held it last. */
	readonly heldBy?: readonly string[];
};

/** Choose the part, count what holds it, connect what is wired to it. */
export function PutInForm(props: PutInFormProps) {
	const { machine, position, candidates } = props;
	const able = candidates.filter((part) => part.cannot === null);
	const chosenFirst =
		able.find((part) => part.id === props.wanted || part.tag === props.wanted?.toUpperCase()) ?? able.find((part) => part.from === "here");
	const photos = useShots({ machine, person: props.person, positionId: position.id, words: `${position.name} (${position.mark})` });
	const [partId, setPartId] = useState(chosenFirst?.id ?? "");
	const [another, setAnother] = useState("");
	const [fixings, setFixings] = useState<readonly UsedLot[]>(() => lotsFor(props.fixings, chosenFirst?.id ?? "", props.heldBy));
	const [wires, setWires] = useState<readonly UsedWire[]>(() => wiresFor(props.wires, chosenFirst?.id ?? ""));
	const [settings, setSettings] = useState<readonly SettingLine[]>([]);
	const showDone = useShowDone();
	const part = candidates.find((candidate) => candidate.id === partId);
	const isForeign = part !== undefined && part.machineNumber !== machine.number;
	const misses = part?.from === "foreign" ? (props.misses ?? "") : "";
	const needsReason = isForeign && (part.origin === "original" || misses !== "");
	const safety = props.safety.find((row) => row.partId === partId);
	const way = props.ways.find((row) => row.partId === partId)?.words ?? "";

	const form = useActionForm<PutIn & Record<string, unknown>, unknown, PutInDone>({
		defaults: {
			positionId: position.id,
			// What is chosen is handed over below; the schema asks for some part here.
			partId: "chosen",
			wayRound: chosenFirst ? (props.ways.find((row) => row.partId === chosenFirst.id)?.words ?? "") : "",
			stepId: props.stepId ?? props.steps.find((step) => step.state === "doing")?.id ?? "",
			conversionId: "",
			reason: props.reason ?? "",
			anyway: props.behind ? { reason: "", covers: "note" } : null,
		},
		action: async (typed) => {
			const kept = await photos.captureIds();
			if (!kept.ok) return kept;
			const whole: PutIn & { deed: string } = {
				...typed,
				positionId: position.id,
				partId,
				fixings: [...fixings, ...lotsTyped(another)]
					.filter((lot) => lot.used > 0)
					.map(({ key: _, used, most: _most, where: _where, ...lot }) => ({ ...lot, count: used })),
				connections: wires
					.filter((wire) => wire.connect)
					.map(({ key: _, connect: _yes, ...wire }) => ({ ...wire, state: "connected" as const })),
				settings: settings.map(({ kind, value }) => ({ kind, value })),
				captureIds: kept.value,
			};
			return putInAction(whole);
		},
		onDone: (put) => {
			showDone(<In done={put} machine={machine} position={position} partName={part?.name ?? "part"} goOn={props.goOn} />);
			window.scrollTo({ top: 0 });
		},
	});

	if (candidates.length === 0) {
		return (
			<Empty
				title="No loose part of this machine"
				action={<ButtonLink href={`/machines/${machine.number}/build`}>See the build</ButtonLink>}
			>
				A part that is to go in lies in a bag, on a shelf or on the bench. Add it to the machine, or take it over from a purchase.
			</Empty>
		);
	}
	const choose = (id: string) => {
		setPartId(id);
		setFixings(lotsFor(props.fixings, id, id === chosenFirst?.id ? props.heldBy : undefined));
		setWires(wiresFor(props.wires, id));
		form.form.setValue("wayRound", props.ways.find((row) => row.partId === id)?.words ?? "");
	};
	return (
		<>
			<form {...form.formProps} className="flex flex-col gap-4" id="put-in">
				<FormProblem problem={form.problem} />
				<WhichPart candidates={candidates} partId={partId} onChoose={choose} />
				{safety ? (
					<Notice means="stop" live="off" title={`Taken out for safety: ${safety.conversion}`}>
						Say below why it goes in again.
					</Notice>
				) : null}
				{needsReason ? (
					<Notice
						means="stop"
						live="off"
						title={`${part.origin === "original" ? "An original" : "A part"} of machine ${part.machineNumber}`}
					>
						<p>{misses ? `Machine ${part.machineNumber}: ${misses}` : `Machine ${part.machineNumber} loses it by this.`} Say below why.</p>
					</Notice>
				) : null}
				{props.behind ? (
					<TextField
						label="It went in all the same: how?"
						hint="The record says that something is in the way."
						{...form.field("anyway.reason")}
					/>
				) : null}
				{way ? (
					<p>
						It sat <strong>{way}</strong>.
					</p>
				) : null}
				{goneWords(props.gone, partId) === "" ? null : (
					<Notice means="wait" live="off" title="Its own fixing is gone">
						{goneWords(props.gone, partId)}. Say below what holds it now.
					</Notice>
				)}
				<UsedFixings lots={fixings} onChange={setFixings} typed={another} onTyped={setAnother} />
				<UsedWires wires={wires} onChange={setWires} />
				<ShotStrip photos={photos} deed="Take a photo of it in place" />
				<SettingLines lines={settings} onChange={setSettings} onRecord={props.settings.filter((setting) => setting.partId === partId)} />
				<details className="af-details" open={safety !== undefined || needsReason}>
					<summary>Which way round, the reason, step, conversion</summary>
					<div className="flex flex-col gap-2 pt-2">
						<TextField label="Which way round it sits" hint="As seen from the player's place" optional {...form.field("wayRound")} />
						<TextField
							label="Why it goes in"
							hint="Asked for an original of another machine, and for what was taken out for safety"
							optional={safety === undefined && !(needsReason && part.origin === "original")}
							{...form.field("reason")}
						/>
						<SelectField
							label="For which step"
							none="No step"
							options={props.steps.map((step) => ({ value: step.id, label: `${step.number} ${step.title}` }))}
							{...form.field("stepId")}
						/>
						<SelectField
							label="For which conversion"
							none="No conversion"
							options={props.conversions.map((conversion) => ({ value: conversion.id, label: `C${conversion.number} ${conversion.name}` }))}
							{...form.field("conversionId")}
						/>
					</div>
				</details>
			</form>
			<ActionBar>
				<Button type="submit" form="put-in" kind="main" pending={form.pending} disabled={partId === ""}>
					{part ? `Put in the ${part.name}` : "Choose the part first"}
				</Button>
			</ActionBar>
		</>
	);
}

/** What was done, and what comes next. */
function In({
	done,
	machine,
	position,
	partName,
	goOn,
}: {
	done: PutInDone;
	machine: PutInFormProps["machine"];
	position: PutInFormProps["position"];
	partName: string;
	goOn: string | undefined;
}) {
	const showDone = useShowDone();
	return (
		<>
			<Notice means="original" title="In">
				<p>
					The {partName} is in {position.name}.
					{done.closes.length > 0 ? ` It covers ${done.closes.map((seat) => seat.name).join(", ")} now.` : ""}
				</p>
			</Notice>
			<ActionBar>
				{goOn ? (
					<Button
						kind="main"
						onClick={() => {
							showDone(null);
							window.scrollTo({ top: 0 });
							focusNext();
						}}
					>
						{goOn}
					</Button>
				) : (
					<ButtonLink kind="main" href={`/machines/${machine.number}/put-in`}>
						Put in the next one
					</ButtonLink>
				)}
				<ButtonLink href={`/machines/${machine.number}/take-out/${encodeURIComponent(position.mark)}`}>Take it out again</ButtonLink>
				<ButtonLink href={`/machines/${machine.number}/build`}>See the build</ButtonLink>
			</ActionBar>
		</>
	);
}

const GROUPS = [
	["here", "Was here before"],
	["foreign", "Of another machine"],
	["loose", "Loose parts of this machine"],
	["bought", "Bought for this machine"],
] as const;

const MOST_SHOWN = 12;

function WhichPart({ candidates, partId, onChoose }: { candidates: readonly Candidate[]; partId: string; onChoose: (id: string) => void }) {
	const name = useId();
	const [find, setFind] = useState("");
	const words = find.trim().toLowerCase();
	const found = candidates.filter(
		(part) => words === "" || part.id === partId || `${part.name} ${part.tag ?? ""} ${part.where}`.toLowerCase().includes(words),
	);
	const group = ([from, title]: (typeof GROUPS)[number]) => {
		const rows = found.filter((part) => part.from === from);
		const shown = rows.filter((part, at) => at < MOST_SHOWN || part.id === partId);
		if (rows.length === 0) return null;
		return (
			<div key={from} className="flex flex-col gap-2 pb-3">
				<p className="af-sub">{title}</p>
				{shown.map((part) => (
					<label key={part.id} className="af-choice">
						<input
							type="radio"
							name={name}
							value={part.id}
							checked={part.id === partId}
							disabled={part.cannot !== null}
							onChange={() => onChoose(part.id)}
						/>
						<span>
							{part.count > 1 ? `${part.count} x ` : ""}
							{part.name}
							<small>
								{[part.tag, part.origin, part.works === "faulty" ? "faulty" : null, part.cannot ?? part.where].filter(Boolean).join(" · ")}
							</small>
						</span>
					</label>
				))}
				{rows.length > shown.length ? <p className="af-sub">{rows.length - shown.length} more: find by name or tag.</p> : null}
			</div>
		);
	};
	const [here, ...others] = GROUPS;
	const isHere = candidates.some((part) => part.from === "here" && part.cannot === null);
	return (
		<fieldset className="af-field">
			<legend className="af-label">Which part</legend>
			{group(here)}
			<details className="af-details" open={!isHere || candidates.some((part) => part.id === partId && part.from !== "here")}>
				<summary>{isHere ? "Another part" : "The machine's loose parts"}</summary>
				<div className="pt-2">
					{candidates.length > MOST_SHOWN ? (
						<TextField label="Find it by name or tag" value={find} onChange={(event) => setFind(event.target.value)} />
					) : null}
					{others.map(group)}
					<ByTag />
				</div>
			</details>
		</fieldset>
	);
}

/** A part that is not in the list, by the tag that hangs on it. */
function ByTag() {
	const router = useRouter();
	const [typed, setTyped] = useState("");
	const go = () => {
		if (typed.trim() !== "") router.push(`?${new URLSearchParams({ part: typed.trim() })}`);
	};
	return (
		<div className="af-count-line">
			<TextField
				label="Another, by its tag"
				mono
				optional
				value={typed}
				onChange={(event) => setTyped(event.target.value)}
				onKeyDown={(event) => {
					if (event.key !== "Enter") return;
					event.preventDefault();
					go();
				}}
			/>
			<Button onClick={go}>Show it</Button>
		</div>
	);
}

/** The lots that a plan names, or that held this part here last, all used; the others are offered with none used. */
const lotsFor = (lots: readonly ShownLot[], partId: string, heldBy?: readonly string[]): UsedLot[] => {
	const planned = lots.some(({ id }) => heldBy?.includes(id));
	const own = lots.some((lot) => lot.heldPart === partId && lot.heldLast && lot.place !== "home");
	return lots.map(({ id, heldPart, heldLast, place, ...lot }) => {
		const isUsed = planned ? heldBy?.includes(id) : own ? heldPart === partId && heldLast : place !== "home" && heldLast;
		return { ...lot, key: id, fixingId: id, most: lot.count, used: isUsed ? lot.count : 0 };
	});
};

const goneWords = (gone: PutInFormProps["gone"], partId: string): string =>
	gone.flatMap((lot) => (lot.partId === partId ? [lot.words] : [])).join("; ");

const wiresFor = (wires: readonly ShownWire[], partId: string): UsedWire[] =>
	wires.map(({ id, partId: at, state, ...wire }) => ({ ...wire, key: id, connectionId: id, connect: at === partId && state === "parked" }));
