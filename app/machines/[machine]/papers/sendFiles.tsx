"use client";

import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Buttons } from "@/app/ui/layouts";
import { PhotoField } from "@/app/ui/photoField";
import type { Refusal } from "@/lib/core/result";
import { PAPER_CHOOSER, PICTURE_CHOOSER } from "@/lib/files/mediaTypes";
import { FileChooser } from "./fileChooser";
import { sendFile } from "./sendFile";

type Sending = {
	readonly deed: string;
	readonly file: File;
	readonly state:
		| { readonly is: "waits" }
		| { readonly is: "goes"; readonly part: number }
		| { readonly is: "kept" }
		| { readonly is: "refused"; readonly why: Refusal };
};

/** Sends photos or papers one after the other, each with how far it is; what is refused keeps its name and says why. */
export function SendFiles({ machine, kind }: { readonly machine: number; readonly kind: "photo" | "paper" }) {
	const router = useRouter();
	const [list, setList] = useState<readonly Sending[]>([]);
	const queue = useRef<Sending[]>([]);
	const busy = useRef(false);

	const put = (deed: string, state: Sending["state"]) =>
		setList((now) => now.map((each) => (each.deed === deed ? { ...each, state } : each)));

	const work = async () => {
		if (busy.current) return;
		busy.current = true;
		for (let next = queue.current.shift(); next; next = queue.current.shift()) {
			const { deed, file } = next;
			put(deed, { is: "goes", part: 0 });
			const answer = await sendFile(file, { machine, kind, deed }, (part) => put(deed, { is: "goes", part }));
			put(deed, answer.ok ? { is: "kept" } : { is: "refused", why: answer.error });
		}
		busy.current = false;
		router.refresh();
	};
	const take = (files: readonly File[]) => {
		const fresh = files.map((file): Sending => ({ deed: clientId(), file, state: { is: "waits" } }));
		// What was kept before has done its turn; what was refused stays until it is sent or left out.
		setList((now) => [...now.filter((each) => each.state.is !== "kept"), ...fresh]);
		queue.current.push(...fresh);
		void work();
	};
	const again = (sending: Sending) => {
		put(sending.deed, { is: "waits" });
		queue.current.push(sending);
		void work();
	};
	const leaveOut = (deed: string) => setList((now) => now.filter((each) => each.deed !== deed));

	const underWay = list.some(({ state }) => state.is === "waits" || state.is === "goes");
	useEffect(() => {
		if (!underWay) return;
		const stay = (event: BeforeUnloadEvent) => event.preventDefault();
		window.addEventListener("beforeunload", stay);
		return () => window.removeEventListener("beforeunload", stay);
	}, [underWay]);

	return (
		<div className="flex flex-col gap-3">
			<div className="flex flex-wrap gap-3">
				{kind === "photo" ? <PhotoField deed="Take a photo" kind="main" several onPick={take} /> : null}
				<FileChooser
					deed={kind === "photo" ? "Choose photos" : "Choose papers"}
					accept={kind === "photo" ? PICTURE_CHOOSER : PAPER_CHOOSER}
					several
					onPick={take}
				/>
			</div>
			<p className="sr-only" role="status">
				{list.length === 0 ? "" : inWords(list)}
			</p>
			{list.length > 0 ? (
				<ul className="flex flex-col gap-2">
					{list.map((sending) => (
						<li key={sending.deed} className="flex flex-wrap items-center gap-x-3 gap-y-1">
							<span className="min-w-0 break-words font-semibold">{sending.file.name}</span>
							<State sending={sending} />
							{sending.state.is === "refused" ? (
								<Buttons>
									{sending.state.why.code === "no-answer" || sending.state.why.code === "file-cut" || sending.state.why.code === "busy" ? (
										<Button onClick={() => again(sending)}>Send again</Button>
									) : null}
									<Button kind="quiet" onClick={() => leaveOut(sending.deed)}>
										Leave it out
									</Button>
								</Buttons>
							) : null}
						</li>
					))}
				</ul>
			) : null}
		</div>
	);
}

function State({ sending: { state, file } }: { readonly sending: Sending }) {
	switch (state.is) {
		case "waits":
			return <span>waits its turn</span>;
		case "goes":
			return (
				<span className="flex items-center gap-2">
					<progress className="accent-(--verdigris)" value={state.part} max={1} aria-label={`${file.name}, sent`} />
					<span className="tabular-nums">{Math.floor(state.part * 100)} %</span>
				</span>
			);
		case "kept":
			return <span>kept</span>;
		case "refused":
			return (
				<span className="w-full" role="alert">
					{state.why.say}
				</span>
			);
	}
}

function inWords(list: readonly Sending[]): string {
	const kept = list.filter(({ state }) => state.is === "kept").length;
	const refused = list.filter(({ state }) => state.is === "refused").length;
	return `${kept} of ${list.length} kept${refused === 0 ? "" : `, ${refused} not`}.`;
}
