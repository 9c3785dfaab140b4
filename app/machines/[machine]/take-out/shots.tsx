"use client";

import { useEffect, useMemo, useRef, useState } from "react";
import { leaveOut, type Outbox, outcomeOf, phone, queue, tryAgain, useOutbox } from "@/app/outbox/outbox";
import { shopTime } from "@/app/outbox/shopTime";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Notice } from "@/app/ui/notice";
import { PhotoField } from "@/app/ui/photoField";
import { Picture } from "@/app/ui/photoGrid";
import { type Result, refuse } from "@/lib/core/result";
import { textIn } from "@/lib/outbox/queue";

type Shot = {
	/** Made once for each picture, so that sending it again keeps it once. */
	readonly deed: string;
	/** Where it can be looked at: on the phone, or in the shop once it is there. */
	readonly url: string;
	readonly state: "sending" | "here" | "waits" | "refused";
	/** Why the shop does not keep it; sending it again would not help. */
	readonly why: string;
	readonly captureId: string | null;
};

/** Photos taken at the bench: shown at once, sent while the words are typed, kept on the phone until they have arrived. */
export type Shots = {
	readonly shots: readonly Shot[];
	readonly deeds: readonly string[];
	/** Why the phone could not keep the last one; empty while it did. */
	readonly lost: string;
	readonly take: (files: readonly File[]) => void;
	readonly again: (deed: string) => void;
	readonly leaveOut: (deed: string) => void;
	/** Photos that were taken for this before the page was loaded anew. */
	readonly takeUp: (deeds: readonly string[]) => void;
	/** Waits until every photo is kept on the phone: what is queued after it then goes after it. False, once, when one could not be. */
	readonly kept: () => Promise<boolean>;
	/** Waits for what is under way; refuses when a photo could not be sent. */
	readonly captureIds: () => Promise<Result<string[]>>;
};

/** Whose photos they are: kept with the machine at once, and with the position where it is known. */
export type ShotsOf = {
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	readonly person: string | null;
	readonly positionId: string | null;
	/** What they show, for the list of what waits on the phone. */
	readonly words: string;
};

export function useShots({ machine, person, positionId, words }: ShotsOf): Shots {
	const outbox = useOutbox();
	const [deeds, setDeeds] = useState<readonly string[]>([]);
	const pending = useRef<Promise<void>[]>([]);
	const missed = useRef(false);
	const [lost, setLost] = useState("");
	const urls = usePictures(outbox, deeds);
	const shots = deeds.flatMap((deed) => shotOf(outbox, deed, urls.get(deed)) ?? []);

	return {
		shots,
		deeds,
		lost,
		take: (files) => {
			setLost("");
			for (const file of files) {
				const deed = clientId();
				setDeeds((before) => [...before, deed]);
				urls.set(deed, URL.createObjectURL(file));
				const keep = async () => {
					const bytes = await file.arrayBuffer();
					await queue(
						{
							deed,
							kind: "photo",
							at: shopTime(file.lastModified),
							words: `Photo: ${words}`,
							machine,
							person,
							input: { position: positionId },
							file: { type: file.type, name: file.name },
						},
						bytes,
					);
				};
				pending.current.push(
					keep().catch((error: unknown) => {
						// The phone's storage is full, or the picture cannot be read: it is said, and the rest goes on without it.
						console.error("a photo was not kept", error);
						missed.current = true;
						setDeeds((before) => before.filter((one) => one !== deed));
						setLost("A photo could not be kept on this phone: its storage may be full. Make room, and take it again.");
					}),
				);
			}
		},
		kept: async () => {
			await Promise.all(pending.current);
			pending.current = [];
			const all = !missed.current;
			missed.current = false;
			return all;
		},
		again: (deed) => void tryAgain(deed),
		leaveOut: (deed) => {
			setDeeds((before) => before.filter((one) => one !== deed));
			void leaveOut(deed);
		},
		takeUp: (before) => setDeeds((now) => [...new Set([...before, ...now])]),
		captureIds: async () => {
			await Promise.all(pending.current);
			const ids: string[] = [];
			for (const deed of deeds) {
				const outcome = await outcomeOf(deed, PATIENCE_MS);
				if (outcome.kind === "done") ids.push(textIn(outcome.done.value, "captureId") ?? "");
				else if (outcome.kind === "refused")
					return refuse(
						"photo-refused",
						`A photo is not kept: ${outcome.refused.say} It is left out: press once more to go on without it.`,
					);
				else
					return refuse(
						"photo-waits",
						"A photo has not reached the shop yet. It is kept on this phone: send it again, or leave it out, then press once more.",
					);
			}
			return { ok: true, value: ids };
		},
	};
}
const PATIENCE_MS = 60_000;

function shotOf(outbox: Outbox, deed: string, url: string | undefined): Shot | null {
	const done = outbox.done.get(deed);
	if (done) {
		const sha = textIn(done.value, "sha");
		return { deed, url: url ?? `/files/${sha}/small`, state: "here", why: "", captureId: textIn(done.value, "captureId") };
	}
	const item = outbox.waiting.find((one) => one.deed === deed);
	if (!item) return null;
	const state = item.refused ? "refused" : outbox.held === null ? "sending" : "waits";
	return { deed, url: url ?? "", state, why: item.refused?.say ?? "", captureId: null };
}

/** Addresses at which the browser shows pictures that only the phone has; kept while the page is there, so that none flickers when it has arrived. */
function usePictures(outbox: Outbox, deeds: readonly string[]): Map<string, string> {
	const urls = useMemo(() => new Map<string, string>(), []);
	const [, setRead] = useState(0);
	// Taken before the page was loaded anew: the phone still has their bytes.
	const unread = outbox.waiting
		.filter((item) => item.file && deeds.includes(item.deed) && !urls.has(item.deed))
		.map((item) => item.deed)
		.join(" ");
	useEffect(() => {
		for (const deed of unread.split(" ").filter(Boolean)) {
			void phone()
				.then((store) => store.bytesOf(deed))
				.then((bytes) => {
					if (!bytes || urls.has(deed)) return;
					urls.set(deed, URL.createObjectURL(new Blob([bytes])));
					setRead((count) => count + 1);
				});
		}
	}, [unread, urls]);
	useEffect(
		() => () => {
			for (const url of urls.values()) URL.revokeObjectURL(url);
			urls.clear();
		},
		[urls],
	);
	return urls;
}

/** The camera button and what was shot, each with its state in words. */
export function ShotStrip({ photos, deed }: { photos: Shots; deed: string }) {
	return (
		<div className="flex flex-col gap-3">
			<PhotoField deed={photos.shots.length === 0 ? deed : "Take another photo"} several onPick={photos.take} />
			{photos.lost === "" ? null : <Notice means="stop">{photos.lost}</Notice>}
			{photos.shots.length > 0 ? (
				<ul className="af-photos" aria-label="Photos taken">
					{photos.shots.map((shot, at) => (
						<li key={shot.deed}>
							<figure>
								<Picture src={shot.url} alt={`Photo ${at + 1}, just taken`} />
								<figcaption aria-live="polite">
									{wordsOf(shot, at + 1)}
									{shot.state === "waits" ? (
										<Button kind="quiet" onClick={() => photos.again(shot.deed)}>
											Send again
										</Button>
									) : null}
									{shot.state === "here" ? null : (
										<Button kind="quiet" onClick={() => photos.leaveOut(shot.deed)}>
											Leave out
										</Button>
									)}
								</figcaption>
							</figure>
						</li>
					))}
				</ul>
			) : null}
		</div>
	);
}

function wordsOf({ state, why }: Shot, at: number): string {
	switch (state) {
		case "here":
			return `Photo ${at}: kept`;
		case "sending":
			return `Photo ${at}: being sent`;
		case "refused":
			return why;
		case "waits":
			return "Waits on this phone";
	}
}
