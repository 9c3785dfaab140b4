-- What a plan in the calendar and a machine's money need: hours, days off, equipment, parcels, deliveries, credits, what is
-- wanted, and the owner's papers. Columns that old rows do not have are NULL there: nobody was asked.

ALTER TABLE "Machine" ADD COLUMN "promisedDay" TEXT CHECK ("promisedDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]');

ALTER TABLE "Step" ADD COLUMN "waitLowMinutes" INTEGER CHECK ("waitLowMinutes" IS NULL OR ("waitLowMinutes" >= 0 AND "waitLowMinutes" <= "waitMinutes"));

-- What is known of one is known of both.
ALTER TABLE "Step" ADD COLUMN "waitHighMinutes" INTEGER CHECK (("waitHighMinutes" IS NULL) = ("waitLowMinutes" IS NULL) AND ("waitHighMinutes" IS NULL OR "waitHighMinutes" >= "waitMinutes"));

ALTER TABLE "Step" ADD COLUMN "skill" TEXT CHECK ("skill" IS NULL OR "skill" <> '');

ALTER TABLE "Purchase" ADD COLUMN "leadLowDays" INTEGER CHECK ("leadLowDays" IS NULL OR "leadLowDays" >= 0);

ALTER TABLE "Purchase" ADD COLUMN "leadLikelyDays" INTEGER CHECK (("leadLikelyDays" IS NULL) = ("leadLowDays" IS NULL) AND ("leadLikelyDays" IS NULL OR "leadLikelyDays" >= "leadLowDays"));

ALTER TABLE "Purchase" ADD COLUMN "leadHighDays" INTEGER CHECK (("leadHighDays" IS NULL) = ("leadLikelyDays" IS NULL) AND ("leadHighDays" IS NULL OR "leadHighDays" >= "leadLikelyDays"));

CREATE TABLE "Hours" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "personId" TEXT NOT NULL,
    "fromDay" TEXT NOT NULL,
    "week" TEXT NOT NULL,
    CONSTRAINT "Hours_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("fromDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK (json_valid("week") AND json_array_length("week") = 7)
) STRICT;

CREATE UNIQUE INDEX "Hours_personId_fromDay_key" ON "Hours"("personId", "fromDay");

CREATE TRIGGER "hours_no_delete" BEFORE DELETE ON "Hours"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "hours_entry_insert" BEFORE INSERT ON "Hours"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "hours_entry_update" BEFORE UPDATE ON "Hours"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "DayOff" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "personId" TEXT,
    "fromDay" TEXT NOT NULL,
    "untilDay" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "DayOff_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("fromDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("untilDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("untilDay" >= "fromDay"),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE INDEX "DayOff_personId_idx" ON "DayOff"("personId");

CREATE TRIGGER "dayOff_no_delete" BEFORE DELETE ON "DayOff"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "dayOff_entry_insert" BEFORE INSERT ON "DayOff"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "dayOff_entry_update" BEFORE UPDATE ON "DayOff"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Equipment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    CHECK ("count" >= 1),
    CHECK ("state" IN ('here', 'gone'))
) STRICT;

CREATE UNIQUE INDEX "Equipment_name_key" ON "Equipment"("name");

CREATE TRIGGER "equipment_no_delete" BEFORE DELETE ON "Equipment"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "equipment_entry_insert" BEFORE INSERT ON "Equipment"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "equipment_entry_update" BEFORE UPDATE ON "Equipment"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "StepEquipment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "equipmentId" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "until" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "StepEquipment_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "StepEquipment_equipmentId_fkey" FOREIGN KEY ("equipmentId") REFERENCES "Equipment" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("count" >= 1),
    CHECK ("until" IN ('finish', 'wait')),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE UNIQUE INDEX "StepEquipment_stepId_equipmentId_key" ON "StepEquipment"("stepId", "equipmentId");

CREATE TRIGGER "stepEquipment_no_delete" BEFORE DELETE ON "StepEquipment"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "stepEquipment_entry_insert" BEFORE INSERT ON "StepEquipment"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "stepEquipment_entry_update" BEFORE UPDATE ON "StepEquipment"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Parcel" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "purchaseId" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Parcel_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Parcel_purchaseId_fkey" FOREIGN KEY ("purchaseId") REFERENCES "Purchase" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE UNIQUE INDEX "Parcel_stepId_purchaseId_key" ON "Parcel"("stepId", "purchaseId");

CREATE TRIGGER "parcel_no_delete" BEFORE DELETE ON "Parcel"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "parcel_entry_insert" BEFORE INSERT ON "Parcel"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "parcel_entry_update" BEFORE UPDATE ON "Parcel"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Delivery" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "lineId" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "locationId" TEXT,
    "words" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Delivery_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "PurchaseLine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Delivery_locationId_fkey" FOREIGN KEY ("locationId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("count" >= 1),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE INDEX "Delivery_lineId_idx" ON "Delivery"("lineId");

CREATE TRIGGER "delivery_no_delete" BEFORE DELETE ON "Delivery"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "delivery_entry_insert" BEFORE INSERT ON "Delivery"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "delivery_entry_update" BEFORE UPDATE ON "Delivery"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Credit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "purchaseId" TEXT NOT NULL,
    "useId" TEXT,
    "machineId" TEXT,
    "day" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Credit_purchaseId_fkey" FOREIGN KEY ("purchaseId") REFERENCES "Purchase" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Credit_useId_fkey" FOREIGN KEY ("useId") REFERENCES "LineUse" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Credit_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("amountMinor" >= 0),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE INDEX "Credit_purchaseId_idx" ON "Credit"("purchaseId");

CREATE INDEX "Credit_machineId_idx" ON "Credit"("machineId");

CREATE TRIGGER "credit_no_delete" BEFORE DELETE ON "Credit"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "credit_entry_insert" BEFORE INSERT ON "Credit"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "credit_entry_update" BEFORE UPDATE ON "Credit"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Wanted" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "stepId" TEXT,
    "words" TEXT NOT NULL,
    "estimatedMinor" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "addedWhy" TEXT NOT NULL,
    "lineId" TEXT,
    CONSTRAINT "Wanted_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Wanted_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Wanted_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "PurchaseLine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("estimatedMinor" >= 0),
    CHECK ("state" IN ('open', 'bought', 'dropped')),
    CHECK ("lineId" IS NULL OR "state" = 'bought')
) STRICT;

CREATE INDEX "Wanted_machineId_idx" ON "Wanted"("machineId");

CREATE TRIGGER "wanted_no_delete" BEFORE DELETE ON "Wanted"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "wanted_entry_insert" BEFORE INSERT ON "Wanted"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "wanted_entry_update" BEFORE UPDATE ON "Wanted"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "OwnerPaper" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "day" TEXT NOT NULL,
    "untilDay" TEXT,
    "words" TEXT NOT NULL,
    "limitMinor" INTEGER,
    "state" TEXT NOT NULL,
    "answeredAt" TEXT,
    "agreedBy" TEXT,
    "answerHow" TEXT NOT NULL,
    CONSTRAINT "OwnerPaper_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('quote', 'more', 'statement')),
    CHECK ("number" >= 1),
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("untilDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("untilDay" IS NULL OR "untilDay" >= "day"),
    CHECK ("limitMinor" IS NULL OR "limitMinor" >= 0),
    CHECK ("state" IN ('given', 'agreed', 'refused', 'withdrawn')),
    CHECK ("answeredAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("state" NOT IN ('agreed', 'refused') OR "answeredAt" IS NOT NULL)
) STRICT;

CREATE UNIQUE INDEX "OwnerPaper_kind_number_key" ON "OwnerPaper"("kind", "number");

CREATE INDEX "OwnerPaper_machineId_idx" ON "OwnerPaper"("machineId");

CREATE TRIGGER "ownerPaper_no_delete" BEFORE DELETE ON "OwnerPaper"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "ownerPaper_entry_insert" BEFORE INSERT ON "OwnerPaper"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "ownerPaper_entry_update" BEFORE UPDATE ON "OwnerPaper"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "OwnerPaperLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "paperId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "netMinor" INTEGER NOT NULL,
    "taxPercent" TEXT NOT NULL,
    CONSTRAINT "OwnerPaperLine_paperId_fkey" FOREIGN KEY ("paperId") REFERENCES "OwnerPaper" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("number" >= 1)
) STRICT;

CREATE UNIQUE INDEX "OwnerPaperLine_paperId_number_key" ON "OwnerPaperLine"("paperId", "number");

CREATE TRIGGER "ownerPaperLine_no_delete" BEFORE DELETE ON "OwnerPaperLine"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "ownerPaperLine_entry_insert" BEFORE INSERT ON "OwnerPaperLine"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "ownerPaperLine_entry_update" BEFORE UPDATE ON "OwnerPaperLine"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Payment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Payment_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('deposit', 'payment', 'refund')),
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("amountMinor" >= 1),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE INDEX "Payment_machineId_idx" ON "Payment"("machineId");

CREATE TRIGGER "payment_no_delete" BEFORE DELETE ON "Payment"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "payment_entry_insert" BEFORE INSERT ON "Payment"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "payment_entry_update" BEFORE UPDATE ON "Payment"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

-- What an owner was handed stays as it was: only the answer is added. Its lines never change at all.
CREATE TRIGGER "ownerPaper_frozen" BEFORE UPDATE ON "OwnerPaper"
WHEN NEW."machineId" <> OLD."machineId" OR NEW."kind" <> OLD."kind" OR NEW."number" <> OLD."number" OR NEW."day" <> OLD."day"
    OR NEW."untilDay" IS NOT OLD."untilDay" OR NEW."words" <> OLD."words" OR NEW."limitMinor" IS NOT OLD."limitMinor"
BEGIN
    SELECT RAISE(ABORT, 'paper-frozen: what was handed over stays as it is');
END;

CREATE TRIGGER "ownerPaperLine_frozen" BEFORE UPDATE ON "OwnerPaperLine"
BEGIN
    SELECT RAISE(ABORT, 'paper-frozen: what was handed over stays as it is');
END;
