"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { PhotoField } from "@/app/ui/photoField";
import { Picture } from "@/app/ui/photoGrid";
import { type Result, refuse } from "@/lib/core/result";

type Shot = {
	/** Made once for each picture, so that sending it again keeps it once. */
	readonly deed: string;
	readonly file: File;
	readonly url: string;
	readonly state: "sending" | "here" | "waits" | "refused";
	/** Why the shop does not keep it; sending it again would not help. */
	readonly why: string;
	readonly captureId: string | null;
};

/** Photos taken at the bench: shown at once, sent while the words are typed, kept on the phone until they have arrived. */
export type Shots = {
	readonly shots: readonly Shot[];
	readonly take: (files: readonly File[]) => void;
	readonly again: (deed: string) => void;
	readonly leaveOut: (deed: string) => void;
	/** Waits for what is under way; refuses when a photo could not be sent. */
	readonly captureIds: () => Promise<Result<string[]>>;
};

export function useShots(machineId: string): Shots {
	const [shots, setShots] = useState<readonly Shot[]>([]);
	const kept = useRef(new Map<string, Shot>());
	const sending = useRef(new Map<string, Promise<void>>());

	const put = (shot: Shot) => {
		kept.current.set(shot.deed, shot);
		setShots([...kept.current.values()]);
	};
	const send = (shot: Shot) => {
		put({ ...shot, state: "sending" });
		const going = upload(machineId, shot).then((answer) => {
			if (kept.current.has(shot.deed)) put({ ...shot, ...answer });
		});
		sending.current.set(shot.deed, going);
	};

	useEffect(() => {
		const all = kept.current;
		return () => {
			for (const shot of all.values()) URL.revokeObjectURL(shot.url);
		};
	}, []);
	useEffect(() => {
		const onLine = () => {
			for (const shot of kept.current.values()) if (shot.state === "waits") send(shot);
		};
		window.addEventListener("online", onLine);
		return () => window.removeEventListener("online", onLine);
	});

	return {
		shots,
		take: (files) => {
			for (const file of files)
				send({ deed: clientId(), file, url: URL.createObjectURL(file), state: "sending", captureId: null, why: "" });
		},
		again: (deed) => {
			const shot = kept.current.get(deed);
			if (shot) send(shot);
		},
		leaveOut: (deed) => {
			const shot = kept.current.get(deed);
			if (shot) URL.revokeObjectURL(shot.url);
			kept.current.delete(deed);
			setShots([...kept.current.values()]);
		},
		captureIds: async () => {
			await Promise.all(sending.current.values());
			const all = [...kept.current.values()];
			const refused = all.find((shot) => shot.state === "refused");
			if (refused) return refuse("photo-refused", `A photo is not kept: ${refused.why} Leave it out, then press once more.`);
			if (all.some((shot) => shot.captureId === null)) {
				return refuse(
					"photo-waits",
					"A photo has not reached the shop yet. It is kept on this phone: send it again, or leave it out, then press once more.",
				);
			}
			return { ok: true, value: all.flatMap((shot) => shot.captureId ?? []) };
		},
	};
}

/** Sends the bytes as they are: kept, refused for what it is, or waiting while the shop cannot be reached. */
async function upload(machineId: string, shot: Shot): Promise<Pick<Shot, "captureId" | "state" | "why">> {
	const query = new URLSearchParams({
		machine: machineId,
		deed: shot.deed,
		name: shot.file.name,
		taken: new Date(shot.file.lastModified).toISOString(),
	});
	try {
		const answer = await fetch(`/api/upload?${query}`, {
			method: "POST",
			body: shot.file,
			headers: { "content-type": shot.file.type || "application/octet-stream" },
		});
		const said: unknown = await answer.json();
		const captureId = captureIn(said);
		if (captureId !== null) return { captureId, state: "here", why: "" };
		return FOR_GOOD.includes(answer.status) ? { captureId, state: "refused", why: whyIn(said) } : WAITS;
	} catch (error) {
		// No network, or no JSON: either way the photo stays here and says so.
		console.info("photo not sent", error);
		return WAITS;
	}
}

const WAITS = { captureId: null, state: "waits", why: "" } as const;
/** Too large, of a kind that is not kept, or broken: the same bytes are refused again. */
const FOR_GOOD = [413, 415, 422];

function whyIn(said: unknown): string {
	const error = typeof said === "object" && said !== null && "error" in said ? said.error : null;
	return typeof error === "object" && error !== null && "say" in error && typeof error.say === "string"
		? error.say
		: "The shop does not keep it.";
}

function captureIn(said: unknown): string | null {
	if (typeof said !== "object" || said === null || !("ok" in said) || said.ok !== true || !("value" in said)) return null;
	const { value } = said;
	if (typeof value !== "object" || value === null || !("captureId" in value)) return null;
	return typeof value.captureId === "string" ? value.captureId : null;
}

/** The camera button and what was shot, each with its state in words. */
export function ShotStrip({ photos, deed }: { photos: Shots; deed: string }) {
	return (
		<div className="flex flex-col gap-3">
			<PhotoField deed={photos.shots.length === 0 ? deed : "Take another photo"} several onPick={photos.take} />
			{photos.shots.length > 0 ? (
				<ul className="af-photos" aria-label="Photos taken">
					{photos.shots.map((shot, at) => (
						<li key={shot.deed}>
							<figure>
								<Picture src={shot.url} alt={`Photo ${at + 1}, just taken`} />
								<figcaption aria-live="polite">
									{shot.state === "here"
										? `Photo ${at + 1}: kept`
										: shot.state === "sending"
											? `Photo ${at + 1}: being sent`
											: shot.state === "refused"
												? shot.why
												: "Waits on this phone"}
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
