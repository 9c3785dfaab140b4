"use client";

import { standardSchemaResolver } from "@hookform/resolvers/standard-schema";
import { unstable_rethrow } from "next/navigation";
import { type FormEvent, type RefObject, useEffect, useRef, useState, useTransition } from "react";
import { type DefaultValues, type FieldValues, get, type Path, type RegisterOptions, type UseFormReturn, useForm } from "react-hook-form";
import type { z } from "zod";
import type { Refusal, Result } from "@/lib/core/result";
import { clientId } from "./clientId";

/** Why nothing was recorded: the sentence, those of fields that this form does not show, and which try it was. */
export type Problem = { readonly say: string; readonly also: readonly string[]; readonly attempt: number };

export type ActionForm<Input extends FieldValues> = {
	/** Spread on `<form>`. */
	readonly formProps: {
		readonly ref: RefObject<HTMLFormElement | null>;
		readonly onSubmit: (event: FormEvent) => void;
		readonly noValidate: true;
		readonly method: "dialog";
	};
	/** Spread on a field: its name, its wiring, what it holds at first, and its error. */
	readonly field: <Name extends Path<Input>>(
		name: Name,
		options?: RegisterOptions<Input, Name>,
	) => ReturnType<UseFormReturn<Input>["register"]> & FirstValue & { readonly error: string | undefined };
	/** The sentence to a field that is shown by other means. */
	readonly errorOf: (name: Path<Input>) => string | undefined;
	/** Hand to `FormProblem`. */
	readonly problem: Problem | null;
	/** True until the answer is here and shown; hand to the button. */
	readonly pending: boolean;
	/** Sends the form without its button (after a scan, say). */
	readonly send: () => void;
	/** The form itself, for `watch`, `setValue`, `reset` and lists of fields. */
	readonly form: UseFormReturn<Input>;
};

/** A schema's types without the schema: hand it to a form whose page must stay light. */
export const typesOf = <Schema>(): Schema | undefined => undefined;

/**
 * A form that sends what was typed to a server action and shows what came back.
 *
 * What was typed stays when the action refuses or the shop cannot be reached. `error.fields` go to their fields, the first
 * wrong one gets the focus, and the sentence is announced by `FormProblem`. Under the key `deed` it sends a client-made id
 * that stays the same from try to try until one succeeds: a double press, a retry or a lost answer does the deed once.
 * Under `seen` it sends what the page was made from, if that was handed in; what a refusal's facts say under `told` goes
 * with the next try, so that the person who was told may write over what they were told of.
 * The action gets the values as typed (the schema's input), and reads them with the same schema.
 *
 * @example
 * const form = useActionForm({ schema: sellPartSchema, defaults: { why: "" }, action: sellPartAction, onDone: () => router.push("..") });
 * <form {...form.formProps}><FormProblem problem={form.problem} /><TextField label="Why" {...form.field("why")} />
 *   <Button type="submit" kind="main" pending={form.pending}>Sell it</Button></form>
 */
export function useActionForm<Input extends FieldValues, Output, Value>({
	schema,
	defaults,
	action,
	seen,
	onDone,
}: {
	/**
	 * On the pages of the bench only its types (`typesOf`): the action reads with the same schema and says the same at the same
	 * fields, and the phone need not load it.
	 */
	readonly schema?: z.ZodType<Output, Input> | undefined;
	/** What the fields hold at first. `deed` need not be among them. */
	readonly defaults: DefaultValues<NoInfer<Input>>;
	readonly action: (raw: NoInfer<Input> & { deed: string }) => Promise<Result<Value, Refusal>>;
	/** The version of what is corrected, as the page shows it. */
	readonly seen?: number;
	/** After success: go on to another page, or say so. The form keeps its values; `form.reset()` empties it. */
	readonly onDone?: (value: Value, form: UseFormReturn<NoInfer<Input>>) => void;
}): ActionForm<Input> {
	const ref = useRef<HTMLFormElement>(null);
	const deed = useRef("");
	const resolve = schema && standardSchemaResolver<Input, unknown, Output>(schema, undefined, { raw: true });
	const form = useForm<Input>({
		// A schema may ask for the deed, which no field shows.
		...(resolve && { resolver: (values, context, options) => resolve({ ...values, deed: deed.current }, context, options) }),
		defaultValues: defaults,
		shouldFocusError: false,
	});
	const standing = useRef(seen);
	const told = useRef<unknown>(null);
	/** What the page showed when this form's own deed was done, until it shows what came of it. */
	const doneOn = useRef<number | null>(null);
	const locked = useRef(false);
	const attempt = useRef(0);
	const [problem, setProblem] = useState<Problem | null>(null);
	const [wrong, setWrong] = useState<readonly string[]>([]);
	const [pending, start] = useTransition();

	// The lock lasts until the page that follows is there, so that a late second press cannot start a second deed.
	useEffect(() => {
		if (!pending) locked.current = false;
	}, [pending]);

	// After its own deed the page is made anew, and with it what this form holds. What others change meanwhile is not taken
	// over: the fields would still be those of the older page.
	useEffect(() => {
		if (doneOn.current === null || doneOn.current === seen) return;
		doneOn.current = null;
		standing.current = seen;
		form.reset(defaults);
	}, [seen, defaults, form]);

	useEffect(() => {
		if (wrong.length) firstOf(ref.current, wrong, (control) => control.getAttribute("type") !== "hidden")?.focus();
	}, [wrong]);

	const refused = (say: string, fields: Readonly<Record<string, string>>) => {
		const shown = Object.keys(fields).filter((name) => firstOf(ref.current, [name]));
		setWrong(shown);
		setProblem({
			say,
			also: Object.entries(fields).flatMap(([name, words]) => (shown.includes(name) ? [] : [words])),
			attempt: attempt.current,
		});
	};

	const send = () => {
		if (locked.current) return;
		attempt.current += 1;
		// A day that is not in the calendar is handed over as no day at all: it must not pass for an empty field.
		const unread = unreadableOf(ref.current);
		if (Object.keys(unread).length > 0) {
			for (const [name, message] of Object.entries(unread)) form.setError(name as Path<Input>, { type: "unreadable", message });
			refused(NOT_YET, unread);
			return;
		}
		locked.current = true;
		deed.current ||= clientId();
		start(async () => {
			await form.handleSubmit(
				async (values) => {
					const answer = await ask(action, {
						...values,
						deed: deed.current,
						...(seen === undefined ? {} : { seen: standing.current, told: told.current }),
					});
					if (answer.ok) {
						deed.current = "";
						doneOn.current = seen ?? null;
						told.current = null;
						start(() => {
							setProblem(null);
							onDone?.(answer.value, form);
						});
						return;
					}
					const fields = answer.error.fields ?? {};
					told.current = answer.error.facts?.told ?? told.current;
					for (const [name, message] of Object.entries(fields)) form.setError(name as Path<Input>, { type: answer.error.code, message });
					start(() => refused(answer.error.say, fields));
				},
				(errors) => start(() => refused(NOT_YET, sentencesOf(errors))),
			)();
		});
	};

	return {
		formProps: {
			ref,
			noValidate: true,
			// Pressed before the script has taken over, a form outside a dialog does nothing (HTML, form submission, method
			// dialog): as a plain form it would load the page anew, and what was typed would be gone.
			method: "dialog",
			onSubmit: (event) => {
				event.preventDefault();
				send();
			},
		},
		field: (name, options) => ({
			...firstValue(get(defaults, name)),
			...form.register(name, options),
			error: form.getFieldState(name, form.formState).error?.message,
		}),
		errorOf: (name) => form.getFieldState(name, form.formState).error?.message,
		problem,
		pending,
		send,
		form,
	};
}

/** In the page as the server sends it, so that nothing jumps when the script takes over. */
type FirstValue = { readonly defaultValue?: string | number; readonly defaultChecked?: boolean };
function firstValue(value: unknown): FirstValue {
	if (typeof value === "boolean") return { defaultChecked: value };
	return typeof value === "string" || typeof value === "number" ? { defaultValue: value } : {};
}

/** Fields in which something is typed that the browser cannot read, by name. */
function unreadableOf(form: HTMLFormElement | null): Record<string, string> {
	const inputs = [...(form?.querySelectorAll("input") ?? [])].filter(({ name, validity }) => name !== "" && validity?.badInput === true);
	return Object.fromEntries(
		inputs.map(({ name, type }) => [
			name,
			type === "number" ? "Write it in figures." : "That is not in the calendar, or not whole: write it again.",
		]),
	);
}

const NOT_YET = "Nothing is recorded yet. Please look at the answers marked below.";

/** The action's answer; a shop that cannot be reached is a refusal that keeps everything. */
async function ask<Raw, Value>(action: (raw: Raw) => Promise<Result<Value, Refusal>>, raw: Raw): Promise<Result<Value, Refusal>> {
	try {
		return await action(raw);
	} catch (error) {
		unstable_rethrow(error); // a redirect is thrown, too
		console.error(error);
		// A digest stands on what the shop's own program threw; without one nothing came back at all.
		if (error instanceof Error && "digest" in error)
			return {
				ok: false,
				error: {
					code: "failed",
					say: "The shop's program failed over this; its own log says how. What you typed is still here. Look in another tab whether it was recorded before you press again.",
				},
			};
		return {
			ok: false,
			error: {
				code: "no-answer",
				say: "The shop did not answer. What you typed is still here: press again when it is back. It will be recorded once.",
			},
		};
	}
}

/** The first control that will do, in the order of the page, of those that carry one of the names or something inside one ("minutes.low"). */
function firstOf(
	form: HTMLFormElement | null,
	names: readonly string[],
	willDo: (control: HTMLElement) => boolean = () => true,
): HTMLElement | undefined {
	return [...(form?.elements ?? [])].find((control): control is HTMLElement => {
		const name = control.getAttribute("name");
		return (
			control instanceof HTMLElement && willDo(control) && !!name && names.some((wrong) => name === wrong || name.startsWith(`${wrong}.`))
		);
	});
}

/** Field paths to sentences, from the form's nested errors. */
function sentencesOf(errors: object, path = ""): Record<string, string> {
	return Object.fromEntries(
		Object.entries(errors).flatMap(([key, error]: [string, unknown]) => {
			if (typeof error !== "object" || error === null || key === "ref") return [];
			const here = path ? `${path}.${key}` : key;
			if ("message" in error && typeof error.message === "string") return [[here, error.message] as const];
			return Object.entries(sentencesOf(error, here));
		}),
	);
}
