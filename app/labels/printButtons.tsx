"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Buttons } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Result } from "@/lib/core/result";
import { useChosen } from "./choices";

type Printed = { readonly printed: readonly { readonly tag: string; readonly times: number }[] };

/**
 * Labels to the printer, where the shop has set one, and always as a PDF. Each showing of the page is one print in the book
 * for each of the two, however often they are pressed. What is chosen otherwise is printed so at once. Key it by `shown`.
 */
export function PrintButtons({
	tags,
	shown,
	deed,
	hasPrinter,
	isAble,
}: {
	readonly tags: readonly string[];
	/** The print that the page shows, as its address has it. */
	readonly shown: string;
	readonly deed: string | null;
	readonly hasPrinter: boolean;
	readonly isAble: boolean;
}) {
	const [printId, setPrintId] = useState(deed ?? "");
	const [pdfId, setPdfId] = useState(hasPrinter ? "" : (deed ?? ""));
	const [answer, setAnswer] = useState<Result<Printed> | null>(null);
	useEffect(() => {
		setPrintId((id) => id || clientId());
		setPdfId((id) => id || clientId());
	}, []);
	const chosen = useChosen();
	if (!isAble || chosen === "unclear") return null;
	const asked = chosen ?? new URLSearchParams(shown);
	const copies = Number(asked.get("copies") ?? 1);
	const count = tags.length * copies;
	const pdf = `/labels/pdf?${asked}`;
	const words = count === 1 ? "the label" : `${count} labels`;
	const print = async () =>
		setAnswer(
			await send({ tags, stock: asked.get("stock") ?? undefined, startAt: Number(asked.get("start") ?? 1), copies, deed: printId }),
		);
	return (
		<div className="flex flex-col gap-2">
			<Buttons>
				{hasPrinter ? (
					<Button
						kind="main"
						onClick={
							answer?.ok
								? () => {
										setPrintId(clientId());
										setAnswer(null);
									}
								: print
						}
					>
						{answer?.ok ? "Print them again" : `Print ${words}`}
					</Button>
				) : null}
				<a
					className="af-button"
					data-kind={hasPrinter ? "plain" : "main"}
					href={pdfId === "" ? pdf : `${pdf}&deed=${pdfId}`}
					target="_blank"
					rel="noopener"
				>
					{hasPrinter ? "As a PDF" : `Print ${words}`}
				</a>
			</Buttons>
			{answer === null ? null : answer.ok ? (
				<Notice means="original" title="Sent to the printer">
					{count === 1 ? "1 label" : `${count} labels`}. Look at it before you stick it on.
				</Notice>
			) : (
				<Notice means="stop" title="The printer did not take them">
					{answer.error.say}
				</Notice>
			)}
		</div>
	);
}

/** Asks the shop's printer; a shop that does not answer is a refusal, too. */
async function send(asked: object): Promise<Result<Printed>> {
	try {
		const response = await fetch("/api/print", {
			method: "POST",
			headers: { "content-type": "application/json" },
			body: JSON.stringify(asked),
		});
		return (await response.json()) as Result<Printed>;
	} catch (error) {
		if (!(error instanceof TypeError || error instanceof SyntaxError)) throw error;
		return {
			ok: false,
			error: { code: "no-answer", say: "The shop did not answer. Look whether something came out, and press again: it is printed once." },
		};
	}
}
