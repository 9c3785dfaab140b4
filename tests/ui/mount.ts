import { act, type ReactNode } from "react";
import { createRoot } from "react-dom/client";

/** Puts a page into the document as a browser would, shows it anew with other answers from the shop, and takes it away again. */
export async function mount(
	page: ReactNode,
): Promise<{ root: HTMLElement; show: (again: ReactNode) => Promise<void>; leave: () => Promise<void> }> {
	Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
	const root = document.createElement("div");
	document.body.append(root);
	const react = createRoot(root);
	await act(async () => react.render(page));
	return {
		root,
		show: (again) => act(async () => react.render(again)),
		leave: async () => {
			await act(async () => react.unmount());
			root.remove();
		},
	};
}

/** The one element that the selector finds; a missing one fails the test with its selector. */
export function one<E extends Element = HTMLElement>(root: ParentNode, selector: string): E {
	const found = root.querySelector<E>(selector);
	if (!found) throw new Error(`nothing on the page matches ${selector}`);
	return found;
}

export const press = (element: HTMLElement) => act(async () => element.click());

/** Types into an input as a person does: React and the form both hear of it. */
export async function type(input: HTMLInputElement, text: string): Promise<void> {
	await act(async () => {
		Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(input, text);
		input.dispatchEvent(new Event("input", { bubbles: true }));
	});
}
