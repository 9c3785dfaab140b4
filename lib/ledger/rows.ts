// What a deed does to the tables, as data. Pure: nothing here touches a database.

import type * as models from "@/lib/generated/prisma/models";

/** The tables that entries describe, and the shape of a row of each. */
export type Tables = {
	Shop: models.ShopModel;
	Person: models.PersonModel;
	Rate: models.RateModel;
	Party: models.PartyModel;
	Location: models.LocationModel;
	Tag: models.TagModel;
	PlaceTag: models.PlaceTagModel;
	LabelPrint: models.LabelPrintModel;
	LabelStock: models.LabelStockModel;
	StockNudge: models.StockNudgeModel;
	Machine: models.MachineModel;
	Position: models.PositionModel;
	Part: models.PartModel;
	Finding: models.FindingModel;
	Fitting: models.FittingModel;
	Fixing: models.FixingModel;
	Hold: models.HoldModel;
	Connection: models.ConnectionModel;
	Setting: models.SettingModel;
	Obstruction: models.ObstructionModel;
	Exclusion: models.ExclusionModel;
	Evidence: models.EvidenceModel;
	Fault: models.FaultModel;
	Note: models.NoteModel;
	Bag: models.BagModel;
	Step: models.StepModel;
	Need: models.NeedModel;
	Crew: models.CrewModel;
	Work: models.WorkModel;
	Alteration: models.AlterationModel;
	Conversion: models.ConversionModel;
	Decision: models.DecisionModel;
	DecisionOption: models.DecisionOptionModel;
	Reversal: models.ReversalModel;
	StoredFile: models.StoredFileModel;
	Capture: models.CaptureModel;
	Pin: models.PinModel;
	DigitalItem: models.DigitalItemModel;
	Purchase: models.PurchaseModel;
	PurchaseLine: models.PurchaseLineModel;
	LineUse: models.LineUseModel;
	CostLine: models.CostLineModel;
	Test: models.TestModel;
	TestRun: models.TestRunModel;
	Hours: models.HoursModel;
	DayOff: models.DayOffModel;
	Equipment: models.EquipmentModel;
	StepEquipment: models.StepEquipmentModel;
	Parcel: models.ParcelModel;
	Delivery: models.DeliveryModel;
	Credit: models.CreditModel;
	Wanted: models.WantedModel;
	OwnerPaper: models.OwnerPaperModel;
	OwnerPaperLine: models.OwnerPaperLineModel;
	Payment: models.PaymentModel;
};
export type TableName = keyof Tables;

/** A row before it has the number of its entry; `record` fills that in. */
export type Draft<T extends TableName> = Omit<Tables[T], "entry">;

/** One row as it will stand after the deed. */
export type RowChange = {
	readonly how: "add" | "change";
	readonly table: TableName;
	readonly id: string;
	/** Column to value, without `entry`. */
	readonly image: Readonly<Record<string, string | number | null>>;
};

/** A new row. Every column is named, so that nothing is left to a default that an entry would not show. */
export function add<T extends TableName>(table: T, row: Draft<T>): RowChange {
	return { how: "add", table, id: row.id, image: { ...row } as RowChange["image"] };
}

/** The row `before` with `patch` laid over it. */
export function change<T extends TableName>(table: T, before: Tables[T], patch: Partial<Omit<Tables[T], "id" | "entry">>): RowChange {
	const { entry: _, ...image } = { ...before, ...patch };
	return { how: "change", table, id: before.id, image: image as unknown as RowChange["image"] };
}

/**
 * What may be said of a deed besides its rows: names as they were, counts, reasons. `say` is the deed as a plain
 * sentence, past tense, for the history; it stays readable for ever, and holds nothing that is withheld (no price, no
 * name of anyone outside the shop).
 */
export type Facts = { readonly say: string } & Readonly<Record<string, string | number | null | readonly (string | number)[]>>;

/** One entry to be. */
export type EntryDraft = {
	/** Machine id, or null for what concerns the shop alone. */
	readonly machine: string | null;
	/** Dotted, past tense: "part.taken-out". facts.say says it in words. */
	readonly action: string;
	readonly subject: { readonly table: TableName; readonly id: string };
	readonly facts: Facts;
	/** Facts that are nobody's outside the shop, such as its mark-up: kept under the seal, and gone when that is erased. */
	readonly sealed?: Readonly<Record<string, string | number>>;
	readonly rows: readonly RowChange[];
};

/** What a deed comes to: one or more entries, written together, and the answer for whoever asked. */
export type Deed<T> = { readonly entries: readonly EntryDraft[]; readonly result: T };

/** A deed of a single entry. */
export const deed = <T>(
	machine: string | null,
	action: string,
	subject: EntryDraft["subject"],
	facts: Facts,
	rows: readonly RowChange[],
	result: T,
): Deed<T> => ({ entries: [{ machine, action, subject, facts, rows }], result });
