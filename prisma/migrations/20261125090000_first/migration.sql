-- The whole model of the first release. STRICT tables, deferred foreign keys (a deed's rows may be written in any order),
-- CHECKs for every closed list of words, and the triggers that keep the rules which a database can keep.

CREATE TABLE "Entry" (
    "seq" INTEGER NOT NULL PRIMARY KEY,
    "machine" TEXT,
    "machineSeq" INTEGER,
    "at" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "open" TEXT NOT NULL,
    "seal" TEXT,
    "prev" TEXT NOT NULL,
    "prevOfMachine" TEXT,
    "hash" TEXT NOT NULL,
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK (json_valid("open")),
    CHECK (length("hash") = 64),
    CHECK (length("prev") = 64),
    CHECK (("machine" IS NULL) = ("machineSeq" IS NULL)),
    CHECK (("machine" IS NULL) = ("prevOfMachine" IS NULL)),
    CHECK ("seq" >= 1),
    CHECK ("machineSeq" IS NULL OR "machineSeq" >= 1)
) STRICT;

CREATE TABLE "Seal" (
    "seq" INTEGER NOT NULL PRIMARY KEY,
    "salt" TEXT,
    "withheld" TEXT,
    CHECK (("salt" IS NULL) = ("withheld" IS NULL)),
    CHECK ("withheld" IS NULL OR json_valid("withheld"))
) STRICT;

CREATE TABLE "Receipt" (
    "deed" TEXT NOT NULL PRIMARY KEY,
    "seq" INTEGER NOT NULL,
    "result" TEXT NOT NULL,
    CHECK (json_valid("result"))
) STRICT;

CREATE TABLE "Shop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "address" TEXT,
    "publicKey" TEXT NOT NULL,
    CHECK ("id" = 'shop'),
    CHECK ("currency" GLOB '[A-Z][A-Z][A-Z]')
) STRICT;

CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "initials" TEXT NOT NULL,
    "skills" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    CHECK ("state" IN ('here', 'left'))
) STRICT;

CREATE TABLE "Rate" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "personId" TEXT NOT NULL,
    "fromDay" TEXT NOT NULL,
    "costMinor" INTEGER NOT NULL,
    "chargeMinor" INTEGER NOT NULL,
    CONSTRAINT "Rate_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("fromDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("costMinor" >= 0),
    CHECK ("chargeMinor" >= 0)
) STRICT;

CREATE TABLE "Party" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "contact" TEXT,
    CHECK ("kind" IN ('supplier', 'owner', 'specialist'))
) STRICT;

CREATE TABLE "Location" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "parentId" TEXT,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "rank" INTEGER NOT NULL,
    CONSTRAINT "Location_parentId_fkey" FOREIGN KEY ("parentId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('room', 'rack', 'shelf', 'bin'))
) STRICT;

CREATE TABLE "Tag" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineNumber" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "partId" TEXT,
    "bagId" TEXT,
    CONSTRAINT "Tag_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Tag_bagId_fkey" FOREIGN KEY ("bagId") REFERENCES "Bag" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK (("partId" IS NULL) <> ("bagId" IS NULL)),
    CHECK ("number" BETWEEN 1 AND 9999),
    CHECK ("machineNumber" >= 0),
    CHECK ("id" GLOB '[0-9]*-[0-9][0-9][0-9][0-9]-[0-9A-HJ-NP-Z]'),
    CHECK ("id" LIKE "machineNumber" || '-' || substr('000' || "number", -4) || '-_')
) STRICT;

CREATE TABLE "LabelPrint" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT,
    "tag" TEXT NOT NULL,
    "stock" TEXT NOT NULL,
    "copies" INTEGER NOT NULL,
    "at" TEXT NOT NULL,
    CONSTRAINT "LabelPrint_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("copies" >= 1)
) STRICT;

CREATE TABLE "Machine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "made" TEXT,
    "ownership" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "sellerId" TEXT,
    "ownerId" TEXT,
    "priceMinor" INTEGER,
    "carriageMinor" INTEGER,
    "soldMinor" INTEGER,
    "carried" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "hazards" TEXT NOT NULL,
    "receivedDay" TEXT NOT NULL,
    "asFoundAt" TEXT,
    "leftDay" TEXT,
    "portraitSha" TEXT,
    CONSTRAINT "Machine_sellerId_fkey" FOREIGN KEY ("sellerId") REFERENCES "Party" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Machine_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "Party" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Machine_portraitSha_fkey" FOREIGN KEY ("portraitSha") REFERENCES "StoredFile" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("ownership" IN ('shop', 'customer', 'collection')),
    CHECK ("state" IN ('intake', 'waiting', 'work', 'ready', 'left')),
    CHECK ("receivedDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("asFoundAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("leftDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("number" >= 1),
    CHECK ("priceMinor" >= 0),
    CHECK ("carriageMinor" >= 0),
    CHECK ("soldMinor" >= 0)
) STRICT;

CREATE TABLE "Position" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "mark" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "area" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "hostId" TEXT,
    "rank" INTEGER NOT NULL,
    "sides" TEXT NOT NULL,
    "asFound" TEXT NOT NULL,
    "mirrorId" TEXT,
    "outLow" INTEGER,
    "outLikely" INTEGER,
    "outHigh" INTEGER,
    "inLow" INTEGER,
    "inLikely" INTEGER,
    "inHigh" INTEGER,
    "note" TEXT NOT NULL,
    CONSTRAINT "Position_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Position_hostId_fkey" FOREIGN KEY ("hostId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Position_mirrorId_fkey" FOREIGN KEY ("mirrorId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('seat', 'place')),
    CHECK ("asFound" IN ('yes', 'no')),
    CHECK (json_valid("sides")),
    CHECK (("outLow" IS NULL) = ("outLikely" IS NULL) AND ("outLikely" IS NULL) = ("outHigh" IS NULL)),
    CHECK (("inLow" IS NULL) = ("inLikely" IS NULL) AND ("inLikely" IS NULL) = ("inHigh" IS NULL)),
    CHECK ("outLow" IS NULL OR (0 <= "outLow" AND "outLow" <= "outLikely" AND "outLikely" <= "outHigh")),
    CHECK ("inLow" IS NULL OR (0 <= "inLow" AND "inLow" <= "inLikely" AND "inLikely" <= "inHigh")),
    CHECK ("mirrorId" <> "id")
) STRICT;

CREATE TABLE "Part" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "maker" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "material" TEXT NOT NULL,
    "made" TEXT,
    "origin" TEXT NOT NULL,
    "works" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "positionId" TEXT,
    "bagId" TEXT,
    "locationId" TEXT,
    "partyId" TEXT,
    "sinceAt" TEXT NOT NULL,
    "dueDay" TEXT,
    "placeWhy" TEXT NOT NULL,
    "lineId" TEXT,
    CONSTRAINT "Part_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Part_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Part_bagId_fkey" FOREIGN KEY ("bagId") REFERENCES "Bag" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Part_locationId_fkey" FOREIGN KEY ("locationId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Part_partyId_fkey" FOREIGN KEY ("partyId") REFERENCES "Party" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Part_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "PurchaseLine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("origin" IN ('original', 'period', 'reproduction', 'modern', 'unknown')),
    CHECK ("works" IN ('works', 'faulty', 'unknown')),
    CHECK ("place" IN ('fitted', 'bag', 'location', 'bench', 'out', 'sold', 'lost', 'scrapped', 'void')),
    CHECK ("sinceAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("dueDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("count" >= 1),
    CHECK (("place" = 'fitted') = ("positionId" IS NOT NULL)),
    CHECK (("place" = 'bag') = ("bagId" IS NOT NULL)),
    CHECK (("place" = 'location') = ("locationId" IS NOT NULL)),
    CHECK ("place" <> 'out' OR "partyId" IS NOT NULL),
    CHECK ("place" NOT IN ('lost', 'scrapped', 'void') OR "placeWhy" <> '')
) STRICT;

CREATE TABLE "Finding" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "positionId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "partId" TEXT,
    "words" TEXT NOT NULL,
    CONSTRAINT "Finding_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Finding_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Finding_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("state" IN ('there', 'missing', 'wrong', 'unseen'))
) STRICT;

CREATE TABLE "Fitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "positionId" TEXT NOT NULL,
    "fromAt" TEXT NOT NULL,
    "untilAt" TEXT,
    "fromStepId" TEXT,
    "untilStepId" TEXT,
    "conversionId" TEXT,
    "outConversionId" TEXT,
    "wayRound" TEXT NOT NULL,
    CONSTRAINT "Fitting_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_fromStepId_fkey" FOREIGN KEY ("fromStepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_untilStepId_fkey" FOREIGN KEY ("untilStepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_conversionId_fkey" FOREIGN KEY ("conversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fitting_outConversionId_fkey" FOREIGN KEY ("outConversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("fromAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("untilAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("untilAt" IS NULL OR "untilAt" >= "fromAt")
) STRICT;

CREATE TABLE "Fixing" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "thread" TEXT NOT NULL,
    "length" TEXT NOT NULL,
    "head" TEXT NOT NULL,
    "drive" TEXT NOT NULL,
    "tightness" TEXT NOT NULL,
    "differs" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "bagId" TEXT,
    CONSTRAINT "Fixing_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fixing_bagId_fkey" FOREIGN KEY ("bagId") REFERENCES "Bag" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("place" IN ('home', 'bag', 'bench', 'left', 'lost', 'scrapped')),
    CHECK ("count" >= 1),
    CHECK (("place" = 'bag') = ("bagId" IS NOT NULL))
) STRICT;

CREATE TABLE "Hold" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "fixingId" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    CONSTRAINT "Hold_fixingId_fkey" FOREIGN KEY ("fixingId") REFERENCES "Fixing" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Hold_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE "Connection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "colour" TEXT NOT NULL,
    "base" TEXT NOT NULL,
    "tracer" TEXT NOT NULL,
    "gauge" TEXT NOT NULL,
    "tagFrom" TEXT NOT NULL,
    "tagTo" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "conversionId" TEXT,
    CONSTRAINT "Connection_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Connection_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Connection_conversionId_fkey" FOREIGN KEY ("conversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("state" IN ('connected', 'parked', 'removed'))
) STRICT;

CREATE TABLE "Setting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "captureId" TEXT,
    CONSTRAINT "Setting_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Setting_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Setting_captureId_fkey" FOREIGN KEY ("captureId") REFERENCES "Capture" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE "Obstruction" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "positionId" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "Obstruction_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Obstruction_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Obstruction_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE TABLE "Exclusion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "otherId" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "Exclusion_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Exclusion_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Exclusion_otherId_fkey" FOREIGN KEY ("otherId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("partId" <> "otherId")
) STRICT;

CREATE TABLE "Evidence" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT,
    "positionId" TEXT,
    "faultId" TEXT,
    "kind" TEXT NOT NULL,
    "claim" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "whoSaid" TEXT,
    "captureId" TEXT,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Evidence_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Evidence_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Evidence_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Evidence_faultId_fkey" FOREIGN KEY ("faultId") REFERENCES "Fault" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Evidence_captureId_fkey" FOREIGN KEY ("captureId") REFERENCES "Capture" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('seen', 'documented', 'told', 'assumed')),
    CHECK ("claim" IN ('came', 'made')),
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE TABLE "Fault" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "positionId" TEXT,
    "partId" TEXT,
    "words" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    CONSTRAINT "Fault_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fault_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Fault_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('seen', 'documented', 'told', 'assumed')),
    CHECK ("state" IN ('open', 'mended', 'stays'))
) STRICT;

CREATE TABLE "Note" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "whoSaid" TEXT,
    "at" TEXT NOT NULL,
    CONSTRAINT "Note_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('seen', 'documented', 'told', 'assumed')),
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z')
) STRICT;

CREATE TABLE "Bag" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT,
    "kind" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "caution" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "parentId" TEXT,
    "locationId" TEXT,
    "sinceAt" TEXT NOT NULL,
    "placeWhy" TEXT NOT NULL,
    CONSTRAINT "Bag_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Bag_parentId_fkey" FOREIGN KEY ("parentId") REFERENCES "Bag" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Bag_locationId_fkey" FOREIGN KEY ("locationId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('bag', 'tote', 'envelope', 'tube', 'tray', 'tub', 'sleeve', 'box')),
    CHECK ("role" IN ('holding', 'keeping')),
    CHECK ("place" IN ('bag', 'location', 'bench', 'out', 'void')),
    CHECK ("sinceAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK (("place" = 'bag') = ("parentId" IS NOT NULL)),
    CHECK (("place" = 'location') = ("locationId" IS NOT NULL)),
    CHECK ("place" <> 'void' OR "placeWhy" <> '')
) STRICT;

CREATE TABLE "Step" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "lowMinutes" INTEGER NOT NULL,
    "likelyMinutes" INTEGER NOT NULL,
    "highMinutes" INTEGER NOT NULL,
    "waitMinutes" INTEGER NOT NULL,
    "waitWhy" TEXT NOT NULL,
    "addedWhy" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "caution" TEXT NOT NULL,
    "conversionId" TEXT,
    "positionId" TEXT,
    "partId" TEXT,
    "startedAt" TEXT,
    "doneAt" TEXT,
    CONSTRAINT "Step_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Step_conversionId_fkey" FOREIGN KEY ("conversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Step_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Step_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('takeout', 'putin', 'alter', 'clean', 'repair', 'make', 'test', 'document', 'move', 'other')),
    CHECK ("state" IN ('planned', 'doing', 'done', 'dropped')),
    CHECK ("startedAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("doneAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK (0 <= "lowMinutes" AND "lowMinutes" <= "likelyMinutes" AND "likelyMinutes" <= "highMinutes"),
    CHECK ("waitMinutes" >= 0),
    CHECK (("state" = 'done') = ("doneAt" IS NOT NULL))
) STRICT;

CREATE TABLE "Need" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "needsId" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Need_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Need_needsId_fkey" FOREIGN KEY ("needsId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("stands" IN ('yes', 'no')),
    CHECK ("stepId" <> "needsId")
) STRICT;

CREATE TABLE "Crew" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Crew_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Crew_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("stands" IN ('yes', 'no'))
) STRICT;

CREATE TABLE "Work" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "startedAt" TEXT NOT NULL,
    "endedAt" TEXT,
    "minutes" INTEGER,
    "how" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "Work_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Work_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Work_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("startedAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("endedAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("how" IN ('timed', 'added', 'void')),
    CHECK (("endedAt" IS NULL) = ("minutes" IS NULL)),
    CHECK ("minutes" IS NULL OR "minutes" >= 0),
    CHECK ("endedAt" IS NULL OR "endedAt" >= "startedAt")
) STRICT;

CREATE TABLE "Alteration" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "partId" TEXT,
    "positionId" TEXT,
    "place" TEXT,
    "undo" TEXT NOT NULL,
    "undoHow" TEXT NOT NULL,
    "undoLow" INTEGER,
    "undoLikely" INTEGER,
    "undoHigh" INTEGER,
    "undoWait" INTEGER,
    "agreedBy" TEXT,
    "reason" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "doneAt" TEXT NOT NULL,
    "undoneAt" TEXT,
    "stepId" TEXT,
    "conversionId" TEXT,
    CONSTRAINT "Alteration_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Alteration_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Alteration_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Alteration_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Alteration_conversionId_fkey" FOREIGN KEY ("conversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("undo" IN ('clean', 'trace', 'never')),
    CHECK ("state" IN ('done', 'undone', 'void')),
    CHECK ("doneAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("undoneAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK (("partId" IS NOT NULL) + ("positionId" IS NOT NULL) + ("place" IS NOT NULL) = 1),
    CHECK (("undo" = 'never') = ("undoLikely" IS NULL)),
    CHECK (("undoLow" IS NULL) = ("undoLikely" IS NULL) AND ("undoLikely" IS NULL) = ("undoHigh" IS NULL) AND ("undoLikely" IS NULL) = ("undoWait" IS NULL)),
    CHECK ("undoLow" IS NULL OR (0 <= "undoLow" AND "undoLow" <= "undoLikely" AND "undoLikely" <= "undoHigh" AND "undoWait" >= 0)),
    CHECK (("state" = 'undone') = ("undoneAt" IS NOT NULL)),
    CHECK ("undo" <> 'never' OR "reason" <> '')
) STRICT;

CREATE TABLE "Conversion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    CONSTRAINT "Conversion_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("purpose" IN ('ordinary', 'safety'))
) STRICT;

CREATE TABLE "Decision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "stepId" TEXT,
    "question" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "agreedBy" TEXT,
    "words" TEXT NOT NULL,
    CONSTRAINT "Decision_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Decision_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z')
) STRICT;

CREATE TABLE "DecisionOption" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "decisionId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "words" TEXT NOT NULL,
    "costMinor" INTEGER,
    "minutes" INTEGER,
    "loses" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    CONSTRAINT "DecisionOption_decisionId_fkey" FOREIGN KEY ("decisionId") REFERENCES "Decision" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("state" IN ('open', 'chosen', 'refused')),
    CHECK ("minutes" IS NULL OR "minutes" >= 0)
) STRICT;

CREATE TABLE "StoredFile" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "mediaType" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    CHECK (length("id") = 64 AND "id" NOT GLOB '*[^0-9a-f]*'),
    CHECK ("bytes" BETWEEN 1 AND 41943040)
) STRICT;

CREATE TABLE "Capture" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT,
    "kind" TEXT NOT NULL,
    "fileSha" TEXT,
    "tag" TEXT,
    "takenAt" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "wordsAt" TEXT,
    "positionId" TEXT,
    "partId" TEXT,
    "bagId" TEXT,
    "stepId" TEXT,
    "stands" TEXT NOT NULL,
    CONSTRAINT "Capture_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Capture_fileSha_fkey" FOREIGN KEY ("fileSha") REFERENCES "StoredFile" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Capture_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Capture_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Capture_bagId_fkey" FOREIGN KEY ("bagId") REFERENCES "Bag" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Capture_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('photo', 'drawing', 'paper', 'tag')),
    CHECK ("takenAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("wordsAt" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z'),
    CHECK ("stands" IN ('yes', 'no')),
    CHECK ("fileSha" IS NOT NULL OR "tag" IS NOT NULL)
) STRICT;

CREATE TABLE "DigitalItem" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "version" TEXT NOT NULL,
    "fileSha" TEXT NOT NULL,
    "pins" TEXT NOT NULL,
    "loading" TEXT NOT NULL,
    CONSTRAINT "DigitalItem_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "DigitalItem_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "DigitalItem_fileSha_fkey" FOREIGN KEY ("fileSha") REFERENCES "StoredFile" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED
) STRICT;

CREATE TABLE "Purchase" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "supplierId" TEXT NOT NULL,
    "orderedDay" TEXT NOT NULL,
    "arrivedDay" TEXT,
    "currency" TEXT NOT NULL,
    "rate" TEXT NOT NULL,
    "discountMinor" INTEGER NOT NULL,
    "freightMinor" INTEGER NOT NULL,
    "dutyMinor" INTEGER NOT NULL,
    "handlingMinor" INTEGER NOT NULL,
    "taxMinor" INTEGER NOT NULL,
    "spreadBy" TEXT NOT NULL,
    "paidMinor" INTEGER NOT NULL,
    "addedWhy" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "Purchase_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Party" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("orderedDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("arrivedDay" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("spreadBy" IN ('value', 'weight')),
    CHECK ("currency" GLOB '[A-Z][A-Z][A-Z]'),
    CHECK ("rate" GLOB '[0-9]*' AND "rate" NOT GLOB '*[^0-9.]*'),
    CHECK ("discountMinor" >= 0 AND "freightMinor" >= 0 AND "dutyMinor" >= 0 AND "handlingMinor" >= 0 AND "taxMinor" >= 0 AND "paidMinor" >= 0)
) STRICT;

CREATE TABLE "PurchaseLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "purchaseId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "what" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "unit" TEXT NOT NULL,
    "netMinor" INTEGER NOT NULL,
    "weightGrams" INTEGER,
    "landedMinor" INTEGER NOT NULL,
    "locationId" TEXT,
    CONSTRAINT "PurchaseLine_purchaseId_fkey" FOREIGN KEY ("purchaseId") REFERENCES "Purchase" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "PurchaseLine_locationId_fkey" FOREIGN KEY ("locationId") REFERENCES "Location" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("count" >= 1),
    CHECK ("netMinor" >= 0 AND "landedMinor" >= 0),
    CHECK ("weightGrams" IS NULL OR "weightGrams" >= 0)
) STRICT;

CREATE TABLE "LineUse" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "lineId" TEXT NOT NULL,
    "machineId" TEXT NOT NULL,
    "partId" TEXT,
    "kind" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "amountMinor" INTEGER NOT NULL,
    "day" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    CONSTRAINT "LineUse_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "PurchaseLine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "LineUse_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "LineUse_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('used', 'returned', 'void')),
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("count" >= 1),
    CHECK ("amountMinor" >= 0)
) STRICT;

CREATE TABLE "CostLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "partyId" TEXT,
    "estimatedMinor" INTEGER NOT NULL,
    "spentMinor" INTEGER NOT NULL,
    CONSTRAINT "CostLine_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "CostLine_partyId_fkey" FOREIGN KEY ("partyId") REFERENCES "Party" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("kind" IN ('consumable', 'outside', 'disposal', 'carriage', 'inspection', 'deposit', 'other')),
    CHECK ("state" IN ('planned', 'spent', 'forgone', 'void')),
    CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]'),
    CHECK ("estimatedMinor" >= 0 AND "spentMinor" >= 0)
) STRICT;

CREATE TABLE "Test" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "limit" TEXT NOT NULL,
    "limitSource" TEXT NOT NULL,
    "positionId" TEXT,
    "partId" TEXT,
    "stepId" TEXT,
    "conversionId" TEXT,
    CONSTRAINT "Test_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Test_positionId_fkey" FOREIGN KEY ("positionId") REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Test_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Test_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "Test_conversionId_fkey" FOREIGN KEY ("conversionId") REFERENCES "Conversion" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK (json_valid("limit"))
) STRICT;

CREATE TABLE "TestRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "entry" INTEGER NOT NULL,
    "machineId" TEXT NOT NULL,
    "testId" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "verdict" TEXT NOT NULL,
    "instrument" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "captureId" TEXT,
    CONSTRAINT "TestRun_machineId_fkey" FOREIGN KEY ("machineId") REFERENCES "Machine" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "TestRun_testId_fkey" FOREIGN KEY ("testId") REFERENCES "Test" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "TestRun_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT "TestRun_captureId_fkey" FOREIGN KEY ("captureId") REFERENCES "Capture" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED,
    CHECK ("phase" IN ('before', 'after')),
    CHECK ("verdict" IN ('pass', 'fail', 'unjudged')),
    CHECK ("at" GLOB '[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9].[0-9][0-9][0-9]Z')
) STRICT;

CREATE UNIQUE INDEX "Entry_hash_key" ON "Entry"("hash");

CREATE INDEX "Entry_machine_at_idx" ON "Entry"("machine", "at");

CREATE INDEX "Entry_subject_idx" ON "Entry"("subject");

CREATE UNIQUE INDEX "Entry_machine_machineSeq_key" ON "Entry"("machine", "machineSeq");

CREATE UNIQUE INDEX "Person_initials_key" ON "Person"("initials");

CREATE UNIQUE INDEX "Rate_personId_fromDay_key" ON "Rate"("personId", "fromDay");

CREATE UNIQUE INDEX "Location_parentId_name_key" ON "Location"("parentId", "name");

CREATE UNIQUE INDEX "Tag_partId_key" ON "Tag"("partId");

CREATE UNIQUE INDEX "Tag_bagId_key" ON "Tag"("bagId");

CREATE UNIQUE INDEX "Tag_machineNumber_number_key" ON "Tag"("machineNumber", "number");

CREATE INDEX "LabelPrint_tag_idx" ON "LabelPrint"("tag");

CREATE UNIQUE INDEX "Machine_number_key" ON "Machine"("number");

CREATE INDEX "Position_hostId_idx" ON "Position"("hostId");

CREATE UNIQUE INDEX "Position_machineId_mark_key" ON "Position"("machineId", "mark");

CREATE UNIQUE INDEX "Part_positionId_key" ON "Part"("positionId");

CREATE INDEX "Part_machineId_idx" ON "Part"("machineId");

CREATE INDEX "Part_bagId_idx" ON "Part"("bagId");

CREATE INDEX "Part_locationId_idx" ON "Part"("locationId");

CREATE INDEX "Part_place_idx" ON "Part"("place");

CREATE INDEX "Finding_positionId_at_idx" ON "Finding"("positionId", "at");

CREATE INDEX "Finding_machineId_idx" ON "Finding"("machineId");

CREATE INDEX "Fitting_partId_idx" ON "Fitting"("partId");

CREATE INDEX "Fitting_positionId_idx" ON "Fitting"("positionId");

CREATE INDEX "Fitting_machineId_idx" ON "Fitting"("machineId");

CREATE INDEX "Fixing_bagId_idx" ON "Fixing"("bagId");

CREATE INDEX "Fixing_machineId_idx" ON "Fixing"("machineId");

CREATE INDEX "Hold_fittingId_idx" ON "Hold"("fittingId");

CREATE UNIQUE INDEX "Hold_fixingId_fittingId_key" ON "Hold"("fixingId", "fittingId");

CREATE INDEX "Connection_fittingId_idx" ON "Connection"("fittingId");

CREATE INDEX "Connection_machineId_idx" ON "Connection"("machineId");

CREATE INDEX "Setting_fittingId_idx" ON "Setting"("fittingId");

CREATE INDEX "Obstruction_positionId_idx" ON "Obstruction"("positionId");

CREATE INDEX "Obstruction_machineId_idx" ON "Obstruction"("machineId");

CREATE UNIQUE INDEX "Obstruction_partId_positionId_side_key" ON "Obstruction"("partId", "positionId", "side");

CREATE UNIQUE INDEX "Exclusion_partId_otherId_key" ON "Exclusion"("partId", "otherId");

CREATE INDEX "Evidence_partId_idx" ON "Evidence"("partId");

CREATE INDEX "Evidence_machineId_idx" ON "Evidence"("machineId");

CREATE INDEX "Fault_machineId_idx" ON "Fault"("machineId");

CREATE INDEX "Note_machineId_idx" ON "Note"("machineId");

CREATE INDEX "Bag_machineId_idx" ON "Bag"("machineId");

CREATE INDEX "Bag_parentId_idx" ON "Bag"("parentId");

CREATE INDEX "Bag_locationId_idx" ON "Bag"("locationId");

CREATE UNIQUE INDEX "Step_machineId_number_key" ON "Step"("machineId", "number");

CREATE INDEX "Need_needsId_idx" ON "Need"("needsId");

CREATE UNIQUE INDEX "Need_stepId_needsId_key" ON "Need"("stepId", "needsId");

CREATE UNIQUE INDEX "Crew_stepId_personId_key" ON "Crew"("stepId", "personId");

CREATE INDEX "Work_stepId_idx" ON "Work"("stepId");

CREATE INDEX "Work_machineId_idx" ON "Work"("machineId");

CREATE INDEX "Work_personId_idx" ON "Work"("personId");

CREATE UNIQUE INDEX "Alteration_machineId_number_key" ON "Alteration"("machineId", "number");

CREATE UNIQUE INDEX "Conversion_machineId_number_key" ON "Conversion"("machineId", "number");

CREATE INDEX "Decision_machineId_idx" ON "Decision"("machineId");

CREATE UNIQUE INDEX "DecisionOption_decisionId_number_key" ON "DecisionOption"("decisionId", "number");

CREATE INDEX "Capture_machineId_idx" ON "Capture"("machineId");

CREATE INDEX "Capture_partId_idx" ON "Capture"("partId");

CREATE INDEX "Capture_positionId_idx" ON "Capture"("positionId");

CREATE INDEX "Capture_bagId_idx" ON "Capture"("bagId");

CREATE INDEX "Capture_stepId_idx" ON "Capture"("stepId");

CREATE INDEX "DigitalItem_machineId_idx" ON "DigitalItem"("machineId");

CREATE UNIQUE INDEX "Purchase_number_key" ON "Purchase"("number");

CREATE UNIQUE INDEX "PurchaseLine_purchaseId_number_key" ON "PurchaseLine"("purchaseId", "number");

CREATE INDEX "LineUse_lineId_idx" ON "LineUse"("lineId");

CREATE INDEX "LineUse_machineId_idx" ON "LineUse"("machineId");

CREATE INDEX "CostLine_machineId_idx" ON "CostLine"("machineId");

CREATE UNIQUE INDEX "Test_machineId_number_key" ON "Test"("machineId", "number");

CREATE INDEX "TestRun_testId_idx" ON "TestRun"("testId");

-- ---------------------------------------------------------------- one place a part, one part a position
CREATE UNIQUE INDEX "Fitting_one_open_a_part" ON "Fitting"("partId") WHERE "untilAt" IS NULL;
CREATE UNIQUE INDEX "Fitting_one_open_a_position" ON "Fitting"("positionId") WHERE "untilAt" IS NULL;
CREATE UNIQUE INDEX "Work_one_clock_a_person" ON "Work"("personId") WHERE "endedAt" IS NULL;
CREATE INDEX "Part_entry" ON "Part"("entry");
CREATE INDEX "Fitting_entry" ON "Fitting"("entry");

-- ---------------------------------------------------------------- the ledger is only ever added to
CREATE TRIGGER "entry_no_update" BEFORE UPDATE ON "Entry"
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: an entry is never changed');
END;

CREATE TRIGGER "entry_no_delete" BEFORE DELETE ON "Entry"
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: an entry is never deleted');
END;

CREATE TRIGGER "entry_follows" BEFORE INSERT ON "Entry"
WHEN NEW."seq" <> (SELECT coalesce(max("seq"), 0) + 1 FROM "Entry")
BEGIN
    SELECT RAISE(ABORT, 'entry-gap: entries are numbered without a gap');
END;

CREATE TRIGGER "entry_chained" BEFORE INSERT ON "Entry"
WHEN NEW."seq" > 1 AND NEW."prev" IS NOT (SELECT "hash" FROM "Entry" WHERE "seq" = NEW."seq" - 1)
BEGIN
    SELECT RAISE(ABORT, 'entry-chain: an entry names the hash of the one before');
END;

CREATE TRIGGER "entry_chained_machine" BEFORE INSERT ON "Entry"
WHEN NEW."machineSeq" > 1 AND NEW."prevOfMachine" IS NOT (SELECT "hash" FROM "Entry" WHERE "machine" = NEW."machine" AND "machineSeq" = NEW."machineSeq" - 1)
BEGIN
    SELECT RAISE(ABORT, 'entry-chain: an entry names the hash of the one before in its machine');
END;

CREATE TRIGGER "seal_no_delete" BEFORE DELETE ON "Seal"
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: a seal is never deleted');
END;

CREATE TRIGGER "seal_only_erased" BEFORE UPDATE ON "Seal"
WHEN NEW."seq" <> OLD."seq" OR NEW."salt" IS NOT NULL
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: what a seal withholds may be erased, never changed');
END;

CREATE TRIGGER "receipt_no_update" BEFORE UPDATE ON "Receipt"
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: a receipt is never changed');
END;

CREATE TRIGGER "receipt_no_delete" BEFORE DELETE ON "Receipt"
BEGIN
    SELECT RAISE(ABORT, 'entry-stands: a receipt is never deleted');
END;

-- A receipt closes a deed: the last statement of its transaction. What only the whole deed can show is checked here.
CREATE TRIGGER "deed_fitted_part_has_fitting" BEFORE INSERT ON "Receipt"
WHEN EXISTS (SELECT 1 FROM "Part" p WHERE p."entry" >= NEW."seq" AND p."place" = 'fitted' AND NOT EXISTS (SELECT 1 FROM "Fitting" f WHERE f."partId" = p."id" AND f."positionId" = p."positionId" AND f."untilAt" IS NULL))
BEGIN
    SELECT RAISE(ABORT, 'fitting-missing: a fitted part has an open fitting at its position');
END;

CREATE TRIGGER "deed_open_fitting_has_part" BEFORE INSERT ON "Receipt"
WHEN EXISTS (SELECT 1 FROM "Fitting" f JOIN "Part" p ON p."id" = f."partId" WHERE f."entry" >= NEW."seq" AND ((f."untilAt" IS NULL) <> (p."positionId" IS f."positionId")) AND NOT (f."untilAt" IS NOT NULL AND EXISTS (SELECT 1 FROM "Fitting" g WHERE g."partId" = p."id" AND g."positionId" = p."positionId" AND g."untilAt" IS NULL)))
BEGIN
    SELECT RAISE(ABORT, 'fitting-open: an open fitting ends when its part leaves the position');
END;

CREATE TRIGGER "deed_part_left_open_fitting" BEFORE INSERT ON "Receipt"
WHEN EXISTS (SELECT 1 FROM "Part" p JOIN "Fitting" f ON f."partId" = p."id" AND f."untilAt" IS NULL WHERE p."entry" >= NEW."seq" AND f."positionId" IS NOT p."positionId")
BEGIN
    SELECT RAISE(ABORT, 'fitting-open: an open fitting ends when its part leaves the position');
END;

-- ---------------------------------------------------------------- nothing changes without an entry, nothing is deleted
CREATE TRIGGER "shop_no_delete" BEFORE DELETE ON "Shop"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "shop_entry_insert" BEFORE INSERT ON "Shop"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "shop_entry_update" BEFORE UPDATE ON "Shop"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "person_no_delete" BEFORE DELETE ON "Person"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "person_entry_insert" BEFORE INSERT ON "Person"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "person_entry_update" BEFORE UPDATE ON "Person"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "rate_no_delete" BEFORE DELETE ON "Rate"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "rate_entry_insert" BEFORE INSERT ON "Rate"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "rate_entry_update" BEFORE UPDATE ON "Rate"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "party_no_delete" BEFORE DELETE ON "Party"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "party_entry_insert" BEFORE INSERT ON "Party"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "party_entry_update" BEFORE UPDATE ON "Party"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "location_no_delete" BEFORE DELETE ON "Location"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "location_entry_insert" BEFORE INSERT ON "Location"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "location_entry_update" BEFORE UPDATE ON "Location"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "tag_no_delete" BEFORE DELETE ON "Tag"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "tag_entry_insert" BEFORE INSERT ON "Tag"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "tag_entry_update" BEFORE UPDATE ON "Tag"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "labelPrint_no_delete" BEFORE DELETE ON "LabelPrint"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "labelPrint_entry_insert" BEFORE INSERT ON "LabelPrint"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "labelPrint_no_update" BEFORE UPDATE ON "LabelPrint"
BEGIN
    SELECT RAISE(ABORT, 'never-changed: a correction is a new row');
END;

CREATE TRIGGER "machine_no_delete" BEFORE DELETE ON "Machine"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "machine_entry_insert" BEFORE INSERT ON "Machine"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "machine_entry_update" BEFORE UPDATE ON "Machine"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "position_no_delete" BEFORE DELETE ON "Position"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "position_entry_insert" BEFORE INSERT ON "Position"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "position_entry_update" BEFORE UPDATE ON "Position"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "part_no_delete" BEFORE DELETE ON "Part"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "part_entry_insert" BEFORE INSERT ON "Part"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "part_entry_update" BEFORE UPDATE ON "Part"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "finding_no_delete" BEFORE DELETE ON "Finding"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "finding_entry_insert" BEFORE INSERT ON "Finding"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "finding_no_update" BEFORE UPDATE ON "Finding"
BEGIN
    SELECT RAISE(ABORT, 'never-changed: a correction is a new row');
END;

CREATE TRIGGER "fitting_no_delete" BEFORE DELETE ON "Fitting"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "fitting_entry_insert" BEFORE INSERT ON "Fitting"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "fitting_entry_update" BEFORE UPDATE ON "Fitting"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "fixing_no_delete" BEFORE DELETE ON "Fixing"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "fixing_entry_insert" BEFORE INSERT ON "Fixing"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "fixing_entry_update" BEFORE UPDATE ON "Fixing"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "hold_no_delete" BEFORE DELETE ON "Hold"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "hold_entry_insert" BEFORE INSERT ON "Hold"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "hold_entry_update" BEFORE UPDATE ON "Hold"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "connection_no_delete" BEFORE DELETE ON "Connection"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "connection_entry_insert" BEFORE INSERT ON "Connection"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "connection_entry_update" BEFORE UPDATE ON "Connection"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "setting_no_delete" BEFORE DELETE ON "Setting"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "setting_entry_insert" BEFORE INSERT ON "Setting"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "setting_entry_update" BEFORE UPDATE ON "Setting"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "obstruction_no_delete" BEFORE DELETE ON "Obstruction"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "obstruction_entry_insert" BEFORE INSERT ON "Obstruction"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "obstruction_entry_update" BEFORE UPDATE ON "Obstruction"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "exclusion_no_delete" BEFORE DELETE ON "Exclusion"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "exclusion_entry_insert" BEFORE INSERT ON "Exclusion"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "exclusion_entry_update" BEFORE UPDATE ON "Exclusion"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "evidence_no_delete" BEFORE DELETE ON "Evidence"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "evidence_entry_insert" BEFORE INSERT ON "Evidence"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "evidence_entry_update" BEFORE UPDATE ON "Evidence"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "fault_no_delete" BEFORE DELETE ON "Fault"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "fault_entry_insert" BEFORE INSERT ON "Fault"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "fault_entry_update" BEFORE UPDATE ON "Fault"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "note_no_delete" BEFORE DELETE ON "Note"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "note_entry_insert" BEFORE INSERT ON "Note"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "note_entry_update" BEFORE UPDATE ON "Note"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "bag_no_delete" BEFORE DELETE ON "Bag"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "bag_entry_insert" BEFORE INSERT ON "Bag"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "bag_entry_update" BEFORE UPDATE ON "Bag"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "step_no_delete" BEFORE DELETE ON "Step"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "step_entry_insert" BEFORE INSERT ON "Step"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "step_entry_update" BEFORE UPDATE ON "Step"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "need_no_delete" BEFORE DELETE ON "Need"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "need_entry_insert" BEFORE INSERT ON "Need"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "need_entry_update" BEFORE UPDATE ON "Need"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "crew_no_delete" BEFORE DELETE ON "Crew"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "crew_entry_insert" BEFORE INSERT ON "Crew"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "crew_entry_update" BEFORE UPDATE ON "Crew"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "work_no_delete" BEFORE DELETE ON "Work"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "work_entry_insert" BEFORE INSERT ON "Work"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "work_entry_update" BEFORE UPDATE ON "Work"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "alteration_no_delete" BEFORE DELETE ON "Alteration"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "alteration_entry_insert" BEFORE INSERT ON "Alteration"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "alteration_entry_update" BEFORE UPDATE ON "Alteration"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "conversion_no_delete" BEFORE DELETE ON "Conversion"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "conversion_entry_insert" BEFORE INSERT ON "Conversion"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "conversion_entry_update" BEFORE UPDATE ON "Conversion"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "decision_no_delete" BEFORE DELETE ON "Decision"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "decision_entry_insert" BEFORE INSERT ON "Decision"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "decision_entry_update" BEFORE UPDATE ON "Decision"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "decisionOption_no_delete" BEFORE DELETE ON "DecisionOption"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "decisionOption_entry_insert" BEFORE INSERT ON "DecisionOption"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "decisionOption_entry_update" BEFORE UPDATE ON "DecisionOption"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "storedFile_no_delete" BEFORE DELETE ON "StoredFile"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "storedFile_entry_insert" BEFORE INSERT ON "StoredFile"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "storedFile_no_update" BEFORE UPDATE ON "StoredFile"
BEGIN
    SELECT RAISE(ABORT, 'never-changed: a correction is a new row');
END;

CREATE TRIGGER "capture_no_delete" BEFORE DELETE ON "Capture"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "capture_entry_insert" BEFORE INSERT ON "Capture"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "capture_entry_update" BEFORE UPDATE ON "Capture"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "digitalItem_no_delete" BEFORE DELETE ON "DigitalItem"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "digitalItem_entry_insert" BEFORE INSERT ON "DigitalItem"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "digitalItem_entry_update" BEFORE UPDATE ON "DigitalItem"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "purchase_no_delete" BEFORE DELETE ON "Purchase"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "purchase_entry_insert" BEFORE INSERT ON "Purchase"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "purchase_entry_update" BEFORE UPDATE ON "Purchase"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "purchaseLine_no_delete" BEFORE DELETE ON "PurchaseLine"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "purchaseLine_entry_insert" BEFORE INSERT ON "PurchaseLine"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "purchaseLine_entry_update" BEFORE UPDATE ON "PurchaseLine"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "lineUse_no_delete" BEFORE DELETE ON "LineUse"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "lineUse_entry_insert" BEFORE INSERT ON "LineUse"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "lineUse_entry_update" BEFORE UPDATE ON "LineUse"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "costLine_no_delete" BEFORE DELETE ON "CostLine"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "costLine_entry_insert" BEFORE INSERT ON "CostLine"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "costLine_entry_update" BEFORE UPDATE ON "CostLine"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "test_no_delete" BEFORE DELETE ON "Test"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "test_entry_insert" BEFORE INSERT ON "Test"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "test_entry_update" BEFORE UPDATE ON "Test"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

CREATE TRIGGER "testRun_no_delete" BEFORE DELETE ON "TestRun"
BEGIN
    SELECT RAISE(ABORT, 'never-deleted: a correction is a new entry');
END;

CREATE TRIGGER "testRun_entry_insert" BEFORE INSERT ON "TestRun"
WHEN NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing is written without an entry');
END;

CREATE TRIGGER "testRun_entry_update" BEFORE UPDATE ON "TestRun"
WHEN NEW."entry" <= OLD."entry" OR NEW."id" <> OLD."id" OR NOT EXISTS (SELECT 1 FROM "Entry" WHERE "seq" = NEW."entry")
BEGIN
    SELECT RAISE(ABORT, 'no-entry: nothing changes without an entry');
END;

-- ---------------------------------------------------------------- no thing inside itself
CREATE TRIGGER "bag_not_in_itself_insert" BEFORE INSERT ON "Bag"
WHEN NEW."parentId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT NEW."parentId" UNION SELECT t."parentId" FROM "Bag" t JOIN up ON t."id" = up.id WHERE t."parentId" IS NOT NULL) SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'bag-inside-itself: a bag is never inside itself');
END;

CREATE TRIGGER "location_not_in_itself_insert" BEFORE INSERT ON "Location"
WHEN NEW."parentId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT NEW."parentId" UNION SELECT t."parentId" FROM "Location" t JOIN up ON t."id" = up.id WHERE t."parentId" IS NOT NULL) SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'location-inside-itself: a location is never inside itself');
END;

CREATE TRIGGER "part_not_on_itself_insert" BEFORE INSERT ON "Part"
WHEN NEW."positionId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT q."hostId" FROM "Position" q WHERE q."id" = NEW."positionId" UNION SELECT q."hostId" FROM up JOIN "Part" p ON p."id" = up.id JOIN "Position" q ON q."id" = p."positionId") SELECT id FROM up WHERE id IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'assembly-hosts-itself: an assembly never hosts itself');
END;

CREATE TRIGGER "position_not_on_itself_insert" BEFORE INSERT ON "Position"
WHEN NEW."hostId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(position) AS (SELECT p."positionId" FROM "Part" p WHERE p."id" = NEW."hostId" UNION SELECT h."positionId" FROM up JOIN "Position" q ON q."id" = up.position JOIN "Part" h ON h."id" = q."hostId") SELECT position FROM up WHERE position IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'assembly-hosts-itself: an assembly never hosts itself');
END;

CREATE TRIGGER "place_holds_no_part_insert" BEFORE INSERT ON "Part"
WHEN NEW."positionId" IS NOT NULL AND EXISTS (SELECT 1 FROM "Position" WHERE "id" = NEW."positionId" AND "kind" = 'place')
BEGIN
    SELECT RAISE(ABORT, 'place-holds-no-part: this position is a place with no part of its own');
END;

CREATE TRIGGER "need_no_loop_insert" BEFORE INSERT ON "Need"
WHEN NEW."stands" = 'yes' AND NEW."stepId" IN (WITH RECURSIVE up(id) AS (SELECT NEW."needsId" UNION SELECT n."needsId" FROM "Need" n JOIN up ON n."stepId" = up.id WHERE n."stands" = 'yes') SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'needs-loop: a step never needs itself');
END;

CREATE TRIGGER "line_not_overused_insert" BEFORE INSERT ON "LineUse"
WHEN NEW."kind" <> 'void' AND NEW."count" + (SELECT coalesce(sum(u."count"), 0) FROM "LineUse" u WHERE u."lineId" = NEW."lineId" AND u."kind" <> 'void' AND u."id" <> NEW."id") > (SELECT l."count" FROM "PurchaseLine" l WHERE l."id" = NEW."lineId")
BEGIN
    SELECT RAISE(ABORT, 'line-overused: no more is used than was bought');
END;

CREATE TRIGGER "bag_not_in_itself_update" BEFORE UPDATE ON "Bag"
WHEN NEW."parentId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT NEW."parentId" UNION SELECT t."parentId" FROM "Bag" t JOIN up ON t."id" = up.id WHERE t."parentId" IS NOT NULL) SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'bag-inside-itself: a bag is never inside itself');
END;

CREATE TRIGGER "location_not_in_itself_update" BEFORE UPDATE ON "Location"
WHEN NEW."parentId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT NEW."parentId" UNION SELECT t."parentId" FROM "Location" t JOIN up ON t."id" = up.id WHERE t."parentId" IS NOT NULL) SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'location-inside-itself: a location is never inside itself');
END;

CREATE TRIGGER "part_not_on_itself_update" BEFORE UPDATE ON "Part"
WHEN NEW."positionId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(id) AS (SELECT q."hostId" FROM "Position" q WHERE q."id" = NEW."positionId" UNION SELECT q."hostId" FROM up JOIN "Part" p ON p."id" = up.id JOIN "Position" q ON q."id" = p."positionId") SELECT id FROM up WHERE id IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'assembly-hosts-itself: an assembly never hosts itself');
END;

CREATE TRIGGER "position_not_on_itself_update" BEFORE UPDATE ON "Position"
WHEN NEW."hostId" IS NOT NULL AND NEW."id" IN (WITH RECURSIVE up(position) AS (SELECT p."positionId" FROM "Part" p WHERE p."id" = NEW."hostId" UNION SELECT h."positionId" FROM up JOIN "Position" q ON q."id" = up.position JOIN "Part" h ON h."id" = q."hostId") SELECT position FROM up WHERE position IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'assembly-hosts-itself: an assembly never hosts itself');
END;

CREATE TRIGGER "place_holds_no_part_update" BEFORE UPDATE ON "Part"
WHEN NEW."positionId" IS NOT NULL AND EXISTS (SELECT 1 FROM "Position" WHERE "id" = NEW."positionId" AND "kind" = 'place')
BEGIN
    SELECT RAISE(ABORT, 'place-holds-no-part: this position is a place with no part of its own');
END;

CREATE TRIGGER "need_no_loop_update" BEFORE UPDATE ON "Need"
WHEN NEW."stands" = 'yes' AND NEW."stepId" IN (WITH RECURSIVE up(id) AS (SELECT NEW."needsId" UNION SELECT n."needsId" FROM "Need" n JOIN up ON n."stepId" = up.id WHERE n."stands" = 'yes') SELECT id FROM up)
BEGIN
    SELECT RAISE(ABORT, 'needs-loop: a step never needs itself');
END;

CREATE TRIGGER "line_not_overused_update" BEFORE UPDATE ON "LineUse"
WHEN NEW."kind" <> 'void' AND NEW."count" + (SELECT coalesce(sum(u."count"), 0) FROM "LineUse" u WHERE u."lineId" = NEW."lineId" AND u."kind" <> 'void' AND u."id" <> NEW."id") > (SELECT l."count" FROM "PurchaseLine" l WHERE l."id" = NEW."lineId")
BEGIN
    SELECT RAISE(ABORT, 'line-overused: no more is used than was bought');
END;

-- ---------------------------------------------------------------- as found is stamped once
CREATE TRIGGER "as_found_stamped_once" BEFORE UPDATE ON "Machine"
WHEN OLD."asFoundAt" IS NOT NULL AND NEW."asFoundAt" IS NOT OLD."asFoundAt"
BEGIN
    SELECT RAISE(ABORT, 'as-found-stands: as found is stamped once');
END;

CREATE TRIGGER "as_found_not_written_over" BEFORE INSERT ON "Finding"
WHEN EXISTS (SELECT 1 FROM "Machine" m WHERE m."id" = NEW."machineId" AND m."asFoundAt" IS NOT NULL AND NEW."at" <= m."asFoundAt")
BEGIN
    SELECT RAISE(ABORT, 'as-found-stands: later knowledge is added after the as found record');
END;

CREATE TRIGGER "fitting_history_stands" BEFORE UPDATE ON "Fitting"
WHEN OLD."untilAt" IS NOT NULL AND (NEW."untilAt" IS NOT OLD."untilAt" OR NEW."partId" <> OLD."partId" OR NEW."positionId" <> OLD."positionId")
BEGIN
    SELECT RAISE(ABORT, 'fitting-stands: a fitting that has ended stays as it was');
END;
