import type { Reader } from "@/lib/db/store";

/** A program, sound, picture or settings file with the device that needs it. */
export type DigitalRow = {
	readonly id: string;
	readonly name: string;
	readonly version: string;
	readonly pins: string;
	readonly loading: string;
	readonly file: { readonly id: string; readonly bytes: number; readonly mediaType: string; readonly name: string };
	readonly part: { readonly id: string; readonly name: string; readonly tag: { readonly id: string } | null };
};

/** The digital items of a machine, by device and name; at most `take`. */
export const digitalItemsOf = (read: Reader, machineId: string, take: number): Promise<DigitalRow[]> =>
	read.digitalItem.findMany({
		where: { machineId },
		orderBy: [{ part: { name: "asc" } }, { name: "asc" }, { entry: "desc" }],
		take,
		select: {
			id: true,
			name: true,
			version: true,
			pins: true,
			loading: true,
			file: { select: { id: true, bytes: true, mediaType: true, name: true } },
			part: { select: { id: true, name: true, tag: { select: { id: true } } } },
		},
	});

/** How many digital items a machine has. */
export const digitalItemsCounted = (read: Reader, machineId: string): Promise<number> => read.digitalItem.count({ where: { machineId } });
