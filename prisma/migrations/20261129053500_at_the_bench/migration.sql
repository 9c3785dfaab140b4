-- At the bench: tags of places, the shop's own label stock and how its printer is off the mark, pins on photos.

CREATE TABLE "PlaceTag" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "locationId" TEXT NOT NULL,
    CONSTRAINT "PlaceTag_locationId_fkey" FOREIGN KEY ("locationId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("number" BETWEEN 1 AND 9999),
    CHECK ("id" GLOB '0-[0-9][0-9][0-9][0-9]-[0-9A-HJ-NP-Z]'),
    CHECK ("id" LIKE '0-' || substr('000' || "number", -4) || '-_')
) STRICT;

CREATE UNIQUE INDEX "PlaceTag_number_key" ON "PlaceTag"("number");

CREATE UNIQUE INDEX "PlaceTag_locationId_key" ON "PlaceTag"("locationId");

CREATE TRIGGER "placeTag_no_delete" BEFORE DELETE ON "PlaceTag"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "placeTag_entry_insert" BEFORE INSERT ON "PlaceTag"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "placeTag_entry_update" BEFORE UPDATE ON "PlaceTag"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

-- One number, one thing: a shelf and a bag of the shop never bear the same tag.
CREATE TRIGGER "placeTag_free" BEFORE INSERT ON "PlaceTag"
WHEN EXISTS (SELECT 1 FROM "Tag" WHERE "id" = NEW."id")
BEGIN
    SELECT RAISE(ABORT, 'tag-taken: this tag hangs on something else');
END;

CREATE TRIGGER "tag_free_of_places" BEFORE INSERT ON "Tag"
WHEN EXISTS (SELECT 1 FROM "PlaceTag" WHERE "id" = NEW."id")
BEGIN
    SELECT RAISE(ABORT, 'tag-taken: this tag hangs on a place');
END;

CREATE TABLE "LabelStock" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "longest" INTEGER,
    "pageWidth" INTEGER,
    "pageHeight" INTEGER,
    "columns" INTEGER,
    "rows" INTEGER,
    "top" INTEGER,
    "left" INTEGER,
    "pitchX" INTEGER,
    "pitchY" INTEGER,
    "stands" TEXT NOT NULL,
    CHECK ("kind" IN ('roll', 'continuous', 'sheet')),
    CHECK ("width" > 0 AND "height" > 0),
    CHECK (("longest" IS NOT NULL) = ("kind" = 'continuous')),
    CHECK (("pageWidth" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("pageHeight" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("columns" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("rows" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("top" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("left" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("pitchX" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK (("pitchY" IS NOT NULL) = ("kind" = 'sheet')),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE TRIGGER "labelStock_no_delete" BEFORE DELETE ON "LabelStock"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "labelStock_entry_insert" BEFORE INSERT ON "LabelStock"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "labelStock_entry_update" BEFORE UPDATE ON "LabelStock"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "StockNudge" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "stock" TEXT NOT NULL,
    "right" INTEGER NOT NULL,
    "down" INTEGER NOT NULL,
    CHECK ("right" BETWEEN -100 AND 100),
    CHECK ("down" BETWEEN -100 AND 100)
) STRICT;

CREATE UNIQUE INDEX "StockNudge_stock_key" ON "StockNudge"("stock");

CREATE TRIGGER "stockNudge_no_delete" BEFORE DELETE ON "StockNudge"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "stockNudge_entry_insert" BEFORE INSERT ON "StockNudge"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "stockNudge_entry_update" BEFORE UPDATE ON "StockNudge"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TABLE "Pin" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "captureId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "x" INTEGER NOT NULL,
    "y" INTEGER NOT NULL,
    "positionId" TEXT,
    "connectionId" TEXT,
    "fixingId" TEXT,
    "words" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Pin_captureId_fkey" FOREIGN KEY ("captureId") REFERENCES "Capture" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Pin_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Pin_connectionId_fkey" FOREIGN KEY ("connectionId") REFERENCES "Connection" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Pin_fixingId_fkey" FOREIGN KEY ("fixingId") REFERENCES "Fixing" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("number" >= 1),
    CHECK ("x" BETWEEN 0 AND 10000),
    CHECK ("y" BETWEEN 0 AND 10000),
    CHECK (("positionId" IS NOT NULL) + ("connectionId" IS NOT NULL) + ("fixingId" IS NOT NULL) <= 1),
    CHECK ("positionId" IS NOT NULL OR "connectionId" IS NOT NULL OR "fixingId" IS NOT NULL OR "words" <> ''),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE INDEX "Pin_positionId_idx" ON "Pin"("positionId");

CREATE UNIQUE INDEX "Pin_captureId_number_key" ON "Pin"("captureId", "number");

CREATE TRIGGER "pin_no_delete" BEFORE DELETE ON "Pin"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "pin_entry_insert" BEFORE INSERT ON "Pin"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "pin_entry_update" BEFORE UPDATE ON "Pin"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;
