// Papers for the owner of a customer's machine: proposed by the book as the form proposes them, given, answered, paid.

import { day, dayOf } from "@/lib/core/days";
import type { Env } from "@/lib/ledger/env";
import { coveredBy, type PaperKind } from "@/lib/owner/account";
import { addPayment, answerPaper, givePaper } from "@/lib/owner/changes";
import { type BasisLine, moreBasis, proposedLines, quoteBasis } from "@/lib/owner/proposal";
import { ownerBook } from "@/lib/owner/queries";
import { addPaymentSchema, answerPaperFormSchema, givePaperSchema } from "@/lib/owner/schema";
import { shop as theShop } from "@/seed/data/shop";
import type { OwnerAsked } from "@/seed/data/types";
import { type Diary, done } from "@/seed/load/diary";
import type { Books } from "@/seed/load/moves";
import { currency } from "@/seed/load/shop";

export function dealings(diary: Diary, { book }: Books): void {
	const dealt = book.data.dealings;
	if (dealt === undefined) return;
	const { quote, answer, deposit, more } = dealt;
	const papers = { quote: "" };
	diary.note(quote.at, quote.by, "the quote", async (env) => {
		papers.quote = await give("quote", quote, book.machineId, env);
	});
	diary.note(answer.at, quote.by, "the owner's answer", async (env) => {
		const { answered: _, ...input } = answerPaperFormSchema.parse({
			paperId: papers.quote,
			answer: "agreed",
			by: answer.by,
			how: answer.how,
		});
		done(await answerPaper({ ...input, at: answer.at }, env));
	});
	diary.note(deposit.at, quote.by, "the deposit", async (env) => {
		const { day, words, minor } = deposit;
		done(
			await addPayment(addPaymentSchema(currency).parse({ machineId: book.machineId, kind: "deposit", day, amount: minor, words }), env),
		);
	});
	diary.note(more.at, more.by, "more work found", (env) => give("more", more, book.machineId, env));
}

async function give(kind: PaperKind, asked: OwnerAsked, machineId: string, env: Env): Promise<string> {
	const today = dayOf(env.clock(), theShop.timeZone);
	const { of, papers } = await ownerBook(env.store.read, machineId, today);
	const basis =
		kind === "quote"
			? quoteBasis(of, { today, covered: coveredBy(papers, ["agreed"]) })
			: moreBasis(of, { today, covered: coveredBy(papers) });
	const lines = proposedLines(basis, { by: "kind", handling: asked.handling, contingency: asked.contingency ?? "" });
	const byHand = (asked.lines ?? []).map(({ what, minor }) => ({ words: what, net: minor, about: null }));
	// The shop is not registered for tax, and charges none.
	const typed = [...lines, ...byHand].map(({ words, net, about }: Omit<BasisLine, "net"> & { net: number | null }) => ({
		words,
		net: net ?? "",
		tax: "",
		about,
	}));
	const input = givePaperSchema(currency).parse({
		machineId,
		kind,
		day: today,
		untilDay: day(asked.until),
		why: asked.why ?? "",
		terms: asked.terms.join("\n\n"),
		limit: asked.limitMinor,
		handling: asked.handling,
		lines: typed,
	});
	return done(await givePaper(input, env)).paperId;
}
