/** The id of the step that an address names by its number, or "". */
export const stepNamed = (
	steps: readonly { readonly id: string; readonly number: number }[],
	named: string | string[] | undefined,
): string => steps.find(({ number }) => String(number) === named)?.id ?? "";
