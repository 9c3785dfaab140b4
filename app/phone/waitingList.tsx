"use client";

import { useRouter } from "next/navigation";
import { useMemo } from "react";
import { labelsSeenTo, leaveOut, tryAgain, useOutbox } from "@/app/outbox/outbox";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Empty } from "@/app/ui/empty";
import { Notice } from "@/app/ui/notice";
import { SureButton } from "@/app/ui/sureButton";
import type { Waiting } from "@/lib/outbox/queue";

/** One after the other as they were done; what the shop refused says why and what can be done. */
export function WaitingList() {
	const { waiting, done, held, sending, keeps, isRead } = useOutbox();
	const asked = [...done.values()].filter((one) => one.labels.length > 0);
	const labels = asked.flatMap((one) => one.labels);
	// Each batch is a print of its own, and stays the same one while it is asked for.
	const batch = labels.join(",");
	const now = useMemo(() => (batch === "" ? "" : clientId()), [batch]);
	if (!isRead) return <p role="status">Looking what this phone keeps…</p>;
	return (
		<>
			{keeps ? null : (
				<Notice means="stop" title="This browser keeps nothing">
					<p>It is a private window, or its storage is shut off. Leave this page open until everything is sent.</p>
				</Notice>
			)}
			{labels.length > 0 ? (
				<Notice title={labels.length === 1 ? "1 label asked for" : `${labels.length} labels asked for`} live="off">
					<p>{asked.map((one) => one.words).join("; ")}</p>
					<div className="af-buttons">
						<a
							className="af-button"
							data-kind="main"
							href={`/labels?${new URLSearchParams({ tags: batch, now })}`}
							target="_blank"
							rel="noopener"
							onClick={() => void labelsSeenTo(asked.map((one) => one.deed))}
						>
							{labels.length === 1 ? "Print the label" : `Print ${labels.length} labels`}
						</a>
						<Button onClick={() => void labelsSeenTo(asked.map((one) => one.deed))}>Not wanted any more</Button>
					</div>
				</Notice>
			) : null}
			{waiting.length === 0 ? (
				<Empty title="Nothing waits on this phone">What is done while the shop cannot be reached is kept here, and goes by itself.</Empty>
			) : (
				<>
					{held === null ? null : (
						<Notice means="wait" title="Not going at the moment">
							<p>{held} It is tried again by itself.</p>
						</Notice>
					)}
					<ol className="flex flex-col gap-4">
						{waiting.map((item) => (
							<li key={item.deed}>
								<One item={item} isSending={sending === item.deed} />
							</li>
						))}
					</ol>
				</>
			)}
		</>
	);
}

function One({ item, isSending }: { item: Waiting; isSending: boolean }) {
	const router = useRouter();
	const where = item.machine ? `${item.machine.number} ${item.machine.name}` : "the shop";
	const when = new Date(item.at).toLocaleString("en-GB", { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });
	const { mendAt } = item;
	const isInBook = item.refused?.code === "recorded-otherwise";
	const state = isInBook ? "in the book already" : item.refused ? "not recorded" : isSending ? "being sent" : "waits";
	const head = (
		<p>
			<strong>{item.words}</strong>
			<span className="af-sub block">
				{where} · {when} · {state}
			</span>
		</p>
	);
	const leave = (
		<SureButton question={questionBeforeLeaving(item, isInBook)} yes="Leave it out" onSure={() => void leaveOut(item.deed)}>
			Leave it out
		</SureButton>
	);
	if (!item.refused)
		return (
			<>
				{head}
				{isSending ? null : leave}
			</>
		);
	return (
		<Notice means="stop" live="off">
			{head}
			<p>{item.refused.say}</p>
			<div className="af-buttons">
				<Button onClick={() => void tryAgain(item.deed)}>Try it once more</Button>
				{mendAt === null ? null : (
					<Button onClick={() => void leaveOut(item.deed).then(() => router.push(mendAt))}>Open it, as it was typed</Button>
				)}
				{leave}
			</div>
			{item.photos.length > 0 ? <p className="af-sub">Its photos are kept with the machine in any case.</p> : null}
		</Notice>
	);
}

function questionBeforeLeaving({ file, sent, refused }: Waiting, isInBook: boolean): string {
	if (isInBook) return "It is in the book as it was sent first; only this copy on the phone goes.";
	if (sent !== null && !refused)
		return "The shop may have it already, its answer was lost: look at the machine's changes. It is gone from this phone then.";
	return file ? "The photo is gone from this phone then." : "It is not in the book, and gone from this phone then.";
}
