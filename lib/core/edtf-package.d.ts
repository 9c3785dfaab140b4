// The package carries no types. Only what this program calls is declared.
declare module "edtf" {
	/** Reads one EDTF string; throws when it is not one. */
	export function parse(text: string): { readonly type: string; readonly level: number };
}
