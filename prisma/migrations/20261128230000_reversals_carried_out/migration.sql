-- A reversal that is carried out.
CREATE TABLE "Reversal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "target" TEXT NOT NULL,
    "targetAt" TEXT,
    "conversionIds" TEXT NOT NULL,
    "positionIds" TEXT NOT NULL,
    "frozen" TEXT NOT NULL,
    "startBuild" TEXT NOT NULL,
    "leftOut" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "startedAt" TEXT NOT NULL,
    "safeAt" TEXT,
    "endedAt" TEXT,
    "words" TEXT NOT NULL,
    "stepId" TEXT,
    CONSTRAINT "Reversal_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Reversal_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("target" IN ('asFound', 'asMade', 'moment')),
    CHECK (("target" = 'moment') = ("targetAt" IS NOT NULL)),
    CHECK ("state" IN ('open', 'done', 'stopped')),
    CHECK (("state" = 'open') = ("endedAt" IS NULL)),
    CHECK ("targetAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("startedAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("safeAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("endedAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("number" >= 1),
    CHECK (json_valid("conversionIds")),
    CHECK (json_valid("positionIds")),
    CHECK (json_valid("frozen")),
    CHECK (json_valid("startBuild")),
    CHECK (json_valid("leftOut"))
) STRICT;

CREATE UNIQUE INDEX "Reversal_machineId_number_key" ON "Reversal"("machineId", "number");

CREATE UNIQUE INDEX "Reversal_one_open_a_machine" ON "Reversal"("machineId") WHERE "state" = 'open';

CREATE TRIGGER "reversal_no_delete" BEFORE DELETE ON "Reversal"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "reversal_entry_insert" BEFORE INSERT ON "Reversal"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "reversal_entry_update" BEFORE UPDATE ON "Reversal"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;
