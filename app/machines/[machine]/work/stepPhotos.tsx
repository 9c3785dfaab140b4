"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { PhotoField } from "@/app/ui/photoField";

/** A photo on its way to the shop. Its deed stays the same from try to try, so that it is kept once. */
type Shot = { readonly deed: string; readonly file: File; readonly why: string | null };

const NOT_REACHED = "The shop could not be reached. The photo is still on this phone.";

/** Photos of a step: taken now, sent at once; the words may come later. What has not arrived stays here and says so. */
export function StepPhotos({ machine, stepId }: { readonly machine: number; readonly stepId: string }) {
	const router = useRouter();
	const [shots, setShots] = useState<readonly Shot[]>([]);
	const waiting = useRef<readonly Shot[]>([]);

	const send = async (shot: Shot) => {
		setShots((now) => [...now.filter(({ deed }) => deed !== shot.deed), { ...shot, why: null }]);
		const why = await upload(machine, stepId, shot);
		setShots((now) => now.flatMap((each) => (each.deed !== shot.deed ? [each] : why === null ? [] : [{ ...each, why }])));
		if (why === null) router.refresh();
	};
	waiting.current = shots.filter(({ why }) => why === NOT_REACHED);

	useEffect(() => {
		const onLine = () => {
			for (const shot of waiting.current) void send(shot);
		};
		window.addEventListener("online", onLine);
		return () => window.removeEventListener("online", onLine);
	});
	useEffect(() => {
		if (shots.length === 0) return;
		const stay = (event: BeforeUnloadEvent) => event.preventDefault();
		window.addEventListener("beforeunload", stay);
		return () => window.removeEventListener("beforeunload", stay);
	}, [shots.length]);

	return (
		<div className="no-print mb-3">
			<PhotoField
				deed="Photograph it"
				several
				onPick={(files) => {
					for (const file of files) void send({ deed: clientId(), file, why: null });
				}}
			/>
			<ul className="flex flex-col gap-2" aria-live="polite">
				{shots.map((shot) => (
					<li key={shot.deed} className="flex flex-wrap items-center gap-x-3 gap-y-1">
						<span className="min-w-0 break-words">{`${shot.file.name}: ${shot.why ?? "being sent"}`}</span>
						{shot.why === null ? null : (
							<>
								<Button onClick={() => send(shot)}>Send again</Button>
								<Button kind="quiet" onClick={() => setShots((now) => now.filter(({ deed }) => deed !== shot.deed))}>
									Leave it out
								</Button>
							</>
						)}
					</li>
				))}
			</ul>
		</div>
	);
}

/** Null once the shop has it, or why it does not. */
async function upload(machine: number, stepId: string, { deed, file }: Shot): Promise<string | null> {
	const query = new URLSearchParams({
		machine: String(machine),
		kind: "photo",
		deed,
		name: file.name,
		takenAt: new Date(file.lastModified).toISOString(),
		step: stepId,
	});
	try {
		const answer = await fetch(`/api/upload?${query}`, {
			method: "POST",
			body: file,
			headers: { "content-type": file.type || "application/octet-stream" },
		});
		return refusalIn(await answer.json());
	} catch (error) {
		console.info("photo not sent", error);
		return NOT_REACHED;
	}
}

function refusalIn(said: unknown): string | null {
	if (typeof said !== "object" || said === null || !("ok" in said)) return NOT_REACHED;
	if (said.ok === true) return null;
	const error = "error" in said ? said.error : null;
	return typeof error === "object" && error !== null && "say" in error && typeof error.say === "string" ? error.say : NOT_REACHED;
}
