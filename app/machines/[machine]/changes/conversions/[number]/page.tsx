import type { Metadata } from "next";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { TagChip } from "@/app/ui/tagChip";
import { conversionsOf, type PossibleMembers, possibleMembers } from "@/lib/conversions/queries";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../../thisMachine";
import { numberInAddress } from "../../../work/numberInAddress";
import { UndoBadge } from "../../undoBadge";
import { type Members, MembersForm } from "../conversionForms";
import { MEMBER_KINDS } from "../memberKinds";

type Props = { readonly params: Promise<{ machine: string; number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: `Conversion C${(await params).number}` };
}

export default async function ConversionPage({ params }: Props) {
	const { machine: inAddress, number: named } = await params;
	const machine = await thisMachine(inAddress);
	const { read } = await shopStore();
	const number = numberInAddress(named);
	const [all, possible, { timeZone }] = await Promise.all([
		conversionsOf(read, machine.id),
		possibleMembers(read, machine.id),
		requireShop(read),
	]);
	const conversion = all.find((one) => one.number === number);
	if (!conversion) notFound();
	const base = `/machines/${machine.number}`;
	const numberOf = new Map(all.map((one) => [one.id, one.number]));
	const part = (fitting: (typeof conversion.partsIn)[number]) => (
		<>
			{`${fitting.part.origin === "original" ? "the original " : ""}${fitting.part.name}, ${fitting.position.mark} ${fitting.position.name}`}
			{fitting.part.tag ? (
				<>
					{" "}
					<TagChip tag={fitting.part.tag.id} href={`/t/${fitting.part.tag.id}`} size="small" />
				</>
			) : null}
		</>
	);
	const lists: readonly { readonly title: string; readonly items: readonly { readonly id: string; readonly words: ReactNode }[] }[] = [
		{ title: MEMBER_KINDS.fittingsOut, items: conversion.partsOut.map((fitting) => ({ id: fitting.id, words: part(fitting) })) },
		{ title: MEMBER_KINDS.fittingsIn, items: conversion.partsIn.map((fitting) => ({ id: fitting.id, words: part(fitting) })) },
		{
			title: MEMBER_KINDS.alterations,
			items: conversion.alterations.map(({ id, number, what, undo, state }) => ({
				id,
				words: (
					<>
						<Link href={`${base}/changes/${number}`}>{`a${number} ${what}`}</Link> <UndoBadge undo={undo} state={state} />
					</>
				),
			})),
		},
		{
			title: MEMBER_KINDS.connections,
			items: conversion.connections.map(({ id, from, to, colour, state }) => ({ id, words: `${from} to ${to}, ${colour} (${state})` })),
		},
		{
			title: MEMBER_KINDS.steps,
			items: conversion.steps.map(({ id, number, title, state }) => ({
				id,
				words: (
					<>
						<Link href={`${base}/work/${number}`}>{`${number} ${title}`}</Link>
						{state === "done" ? "" : state === "dropped" ? ", dropped" : ", not done yet"}
					</>
				),
			})),
		},
		{
			title: MEMBER_KINDS.tests,
			items: conversion.tests.map(({ id, number, name }) => ({
				id,
				words: <Link href={`${base}/tests/${number}`}>{`t${number} ${name}`}</Link>,
			})),
		},
	];
	return (
		<Stack>
			<div>
				<p className="text-ink-2">
					<Link href={`${base}/changes`}>Changes</Link> · conversion C{conversion.number}
				</p>
				<h2 className="text-2xl">{conversion.name}</h2>
				<p className="mt-1">
					{conversion.purpose === "safety" ? (
						<Badge means="wait">done for safety: a reversal leaves it unless it is named</Badge>
					) : (
						<Badge>ordinary: a reversal undoes it</Badge>
					)}
				</p>
				{conversion.words ? <p className="mt-2 whitespace-pre-line">{conversion.words}</p> : null}
			</div>
			<Columns even>
				<Card title="What belongs to it">
					{lists.every(({ items }) => items.length === 0) ? (
						<Empty title="Nothing belongs to it yet">Tick what was done for it, and undo it as one later.</Empty>
					) : (
						lists.map(({ title, items }) =>
							items.length === 0 ? null : (
								<div key={title} className="mb-3">
									<h3>{`${title} (${items.length})`}</h3>
									<ul className="flex flex-col gap-1">
										{items.map(({ id, words }) => (
											<li key={id}>{words}</li>
										))}
									</ul>
								</div>
							),
						)
					)}
				</Card>
				<Card title="Tick what belongs to it">
					<MembersForm
						conversionId={conversion.id}
						members={membersToTick(possible, conversion.id, numberOf, (at) => formatDayShort(dayOf(instant(at), timeZone)))}
					/>
				</Card>
			</Columns>
		</Stack>
	);
}

/** Every possible member as a line to tick, with the conversion that it belongs to now. */
function membersToTick(
	possible: PossibleMembers,
	id: string,
	numberOf: ReadonlyMap<string, number>,
	dayOfInstant: (at: string) => string,
): Members {
	const now = (other: string | null) => (other !== null && other !== id ? { hint: `now of C${numberOf.get(other) ?? "?"}` } : {});
	const chosen = (rows: readonly { readonly id: string; readonly conversionId: string | null }[]) =>
		rows.filter((row) => row.conversionId === id).map((row) => row.id);
	const name = (fitting: PossibleMembers["fittings"][number]) =>
		`${fitting.part.name}, ${fitting.position.mark}${fitting.part.tag ? ` (${fitting.part.tag.id})` : ""}`;
	const ended = possible.fittings.filter(({ untilAt }) => untilAt !== null);
	return {
		fittingsOut: {
			options: ended.map((fitting) => ({
				value: fitting.id,
				label: `${name(fitting)}, until ${dayOfInstant(fitting.untilAt ?? fitting.fromAt)}`,
				...now(fitting.outConversionId),
			})),
			chosen: ended.filter(({ outConversionId }) => outConversionId === id).map((fitting) => fitting.id),
		},
		fittingsIn: {
			options: possible.fittings.map((fitting) => ({
				value: fitting.id,
				label: `${name(fitting)}, from ${dayOfInstant(fitting.fromAt)}`,
				...now(fitting.conversionId),
			})),
			chosen: chosen(possible.fittings),
		},
		alterations: {
			options: possible.alterations.map((row) => ({ value: row.id, label: `a${row.number} ${row.what}`, ...now(row.conversionId) })),
			chosen: chosen(possible.alterations),
		},
		connections: {
			options: possible.connections.map((row) => ({
				value: row.id,
				label: `${row.from} to ${row.to}, ${row.colour} (${row.fitting.position.mark})`,
				...now(row.conversionId),
			})),
			chosen: chosen(possible.connections),
		},
		steps: {
			options: possible.steps.map((row) => ({ value: row.id, label: `${row.number} ${row.title}`, ...now(row.conversionId) })),
			chosen: chosen(possible.steps),
		},
		tests: {
			options: possible.tests.map((row) => ({ value: row.id, label: `t${row.number} ${row.name}`, ...now(row.conversionId) })),
			chosen: chosen(possible.tests),
		},
	};
}
