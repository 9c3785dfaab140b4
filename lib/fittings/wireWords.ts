// A wire on one line. Pure.

/** `BK from motor 1 to block 7`; cloth wires by base and tracer. */
export const wireInWords = (wire: { colour: string; base: string; tracer: string; from: string; to: string }): string =>
	[
		wire.colour || [wire.base, wire.tracer].filter(Boolean).join("/"),
		wire.from === "" ? "" : `from ${wire.from}`,
		wire.to === "" ? "" : `to ${wire.to}`,
	]
		.filter(Boolean)
		.join(" ") || "unnamed wire";
