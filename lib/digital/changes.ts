import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { type AddDigitalItem, addDigitalItemSchema } from "@/lib/digital/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";

/** Keeps a program, sound, picture or settings file that a device of the machine needs. The file was registered before (lib/files). */
export async function addDigitalItem(input: AddDigitalItem, env: Env): Promise<Result<{ digitalItemId: string }>> {
	const form = addDigitalItemSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { machineId, partId, name, version, fileSha, pins, loading } = form.data;
	return record(env, async (read) => {
		const part = await read.part.findUnique({
			where: { id: partId },
			select: { name: true, machineId: true, place: true, tag: { select: { id: true } }, position: { select: { machineId: true } } },
		});
		if (!part || (part.machineId !== machineId && part.position?.machineId !== machineId)) {
			return refuse("no-part", "The device is not a part of this machine. Choose one from the list.", {
				fields: { partId: "Choose another." },
			});
		}
		if (part.place === "void")
			return refuse("part-void", `${part.name} was entered in error. Choose another device.`, { fields: { partId: "Choose another." } });
		if ((await read.storedFile.count({ where: { id: fileSha } })) === 0) {
			return refuse("file-not-here", "The file has not arrived. Send it again.", { fields: { fileSha: "Send it again." } });
		}
		const id = env.newId();
		return ok(
			deed(
				machineId,
				"digital-item.added",
				{ table: "DigitalItem", id },
				{ say: `Kept ${name}, version ${version}, for the ${part.name}${part.tag ? ` (${part.tag.id})` : ""}.`, sha256: fileSha },
				[add("DigitalItem", { id, machineId, partId, name, version, fileSha, pins, loading })],
				{ digitalItemId: id },
			),
		);
	});
}
