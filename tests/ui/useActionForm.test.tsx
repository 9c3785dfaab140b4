// @vitest-environment happy-dom
import { act } from "react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { mount, one, press, type } from "./mount";

const schema = z.object({ deed: z.uuid(), name: z.string().min(2, "Give it a name of two letters or more."), bag: z.string() });
type Sent = { deed: string; name: string; bag: string };
type Action = (raw: Sent) => Promise<Result<string, Refusal>>;

function BagForm({ action, onDone = () => undefined }: { action: Action; onDone?: (value: string) => void }) {
	const form = useActionForm({ schema, defaults: { name: "Lamp", bag: "" }, action, onDone });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Name" {...form.field("name")} />
			<TextField label="Bag" {...form.field("bag")} />
			<Button type="submit" pending={form.pending}>
				Put it in the bag
			</Button>
		</form>
	);
}

function Correct({ seen, action }: { seen: number; action: (raw: object) => Promise<Result<string, Refusal>> }) {
	const form = useActionForm({ schema, defaults: { name: `Lamp ${seen}`, bag: "" }, seen, action });
	return (
		<form {...form.formProps}>
			<TextField label="Name" {...form.field("name")} />
			<Button type="submit">Correct it</Button>
		</form>
	);
}

let leave = async () => {};
afterEach(async () => {
	await leave();
	vi.restoreAllMocks();
});

async function open(action: Action, onDone?: (value: string) => void) {
	const page = await mount(<BagForm action={action} onDone={onDone} />);
	leave = page.leave;
	return {
		name: one<HTMLInputElement>(page.root, "[name=name]"),
		bag: one<HTMLInputElement>(page.root, "[name=bag]"),
		button: one(page.root, "button"),
		form: one<HTMLFormElement>(page.root, "form"),
		problem: one(page.root, "[role=alert]"),
	};
}

describe("a form that sends a deed", () => {
	it("keeps the deed's id from try to try, and takes a new one after success", async () => {
		const sent: Sent[] = [];
		const answers = [refuse("taken", "Another part has that name."), refuse("taken", "Another part has that name."), ok("in"), ok("in")];
		const page = await open(async (raw) => {
			sent.push(raw);
			return answers[sent.length - 1] ?? ok("in");
		});
		for (let times = 0; times < 4; times++) await press(page.button);
		const [first, second, third, fourth] = sent.map((raw) => raw.deed);
		expect(first).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
		expect([second, third]).toEqual([first, first]);
		expect(fourth).not.toBe(first);
	});

	it("keeps the id and what was typed when the shop does not answer", async () => {
		vi.spyOn(console, "error").mockImplementation(() => undefined);
		const sent: Sent[] = [];
		const page = await open(async (raw) => {
			sent.push(raw);
			if (sent.length === 1) throw new TypeError("Failed to fetch");
			return ok("in");
		});
		await type(page.name, "Reflector");
		await press(page.button);
		expect(page.problem.textContent).toContain("The shop did not answer. What you typed is still here");
		expect(page.name.value).toBe("Reflector");
		await press(page.button);
		expect(sent.map((raw) => raw.deed)).toEqual([sent[0]?.deed, sent[0]?.deed]);
		expect(page.problem.textContent).toBe("");
	});

	it("does not call it an answer that never came when the shop's program failed", async () => {
		vi.spyOn(console, "error").mockImplementation(() => undefined);
		const page = await open(async () => {
			throw Object.assign(new Error("An error occurred."), { digest: "1234" });
		});
		await type(page.name, "Reflector");
		await press(page.button);
		expect(page.problem.textContent).toContain("The shop's program failed over this");
		expect(page.name.value).toBe("Reflector");
	});

	it("sends a double press once", async () => {
		let finish = (_: Result<string, Refusal>) => {};
		const action = vi.fn<Action>(() => new Promise((resolve) => (finish = resolve)));
		const page = await open(action);
		await press(page.button);
		await press(page.button);
		await act(async () => page.form.requestSubmit());
		expect(action).toHaveBeenCalledTimes(1);
		expect(page.button.getAttribute("aria-disabled")).toBe("true");
		await act(async () => finish(ok("in")));
		expect(page.button.getAttribute("aria-disabled")).toBe(null);
	});

	it("puts a refusal at its field, goes there, and announces the sentence with those of fields it does not show", async () => {
		const page = await open(async () =>
			refuse("full", "The bag is full. Take another one.", {
				fields: { bag: "This bag holds 12 parts already.", shelf: "The shelf is gone." },
			}),
		);
		await type(page.bag, "12-0208-Q");
		await press(page.button);
		expect(page.problem.textContent).toBe("The bag is full. Take another one.The shelf is gone.");
		expect(page.bag.getAttribute("aria-invalid")).toBe("true");
		expect(document.activeElement).toBe(page.bag);
		expect(page.bag.value).toBe("12-0208-Q");
	});

	it("is refused before it is sent when an answer cannot be right, and goes to the first wrong field", async () => {
		const action = vi.fn<Action>(async () => ok("in"));
		const page = await open(action);
		await type(page.name, "L");
		await press(page.button);
		expect(action).not.toHaveBeenCalled();
		expect(document.activeElement).toBe(page.name);
		expect(one(page.form, `#${page.name.id}-error`).textContent).toBe("Give it a name of two letters or more.");
		expect(page.problem.textContent).toContain("Nothing is recorded yet");
	});

	it("announces the same refusal anew after another try", async () => {
		const page = await open(async () => refuse("taken", "Another part has that name."));
		await press(page.button);
		const before = page.problem.firstElementChild;
		await press(page.button);
		expect(page.problem.firstElementChild?.textContent).toBe(before?.textContent);
		expect(page.problem.firstElementChild).not.toBe(before);
	});

	it("says which version it corrects, what it was told of when it was refused, and its own deed's version after success", async () => {
		const sent: unknown[] = [];
		const answers = [
			refuse("changed-meanwhile", "Somebody changed it.", { facts: { told: { entry: 9, fields: ["name"] } } }),
			ok("in"),
			ok("in"),
		];
		const action = async (raw: object) => {
			sent.push("seen" in raw && "told" in raw ? [raw.seen, raw.told] : undefined);
			return answers[sent.length - 1] ?? ok("in");
		};
		const page = await mount(<Correct seen={4} action={action} />);
		leave = page.leave;
		const [name, button] = [one<HTMLInputElement>(page.root, "[name=name]"), one(page.root, "button")];
		await type(name, "Reflector");
		// Somebody else's deed made the page anew: the fields are still those of the older one.
		await page.show(<Correct seen={9} action={action} />);
		expect(name.value).toBe("Reflector");
		await press(button);
		await press(button);
		await page.show(<Correct seen={12} action={action} />);
		expect(name.value).toBe("Lamp 12");
		await press(button);
		expect(sent).toEqual([
			[4, null],
			[4, { entry: 9, fields: ["name"] }],
			[12, null],
		]);
	});

	it("hands the answer on", async () => {
		const onDone = vi.fn();
		const page = await open(async () => ok("12-0208-Q"), onDone);
		await press(page.button);
		expect(onDone.mock.calls.map(([value]) => value)).toEqual(["12-0208-Q"]);
	});

	it("works where the shop is reached over plain HTTP, without crypto.randomUUID", async () => {
		vi.spyOn(crypto, "randomUUID").mockImplementation(() => {
			throw new TypeError("crypto.randomUUID is not a function");
		});
		const action = vi.fn<Action>(async () => ok("in"));
		const page = await open(action);
		await press(page.button);
		expect(action).toHaveBeenCalledTimes(1);
	});
});
