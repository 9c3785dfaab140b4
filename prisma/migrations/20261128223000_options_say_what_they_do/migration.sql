-- What an option of a decision would do to the machine, and what reversal would lose by it as it was worked out when it was
-- decided. Options from before have NULL: nobody was asked.

ALTER TABLE "DecisionOption" ADD COLUMN "does" TEXT CHECK ("does" IS NULL OR "does" IN ('nothing', 'alter', 'parting', 'other'));

ALTER TABLE "DecisionOption" ADD COLUMN "positionId" TEXT CONSTRAINT "DecisionOption_positionId_fkey" REFERENCES "Position" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED;

ALTER TABLE "DecisionOption" ADD COLUMN "partId" TEXT CONSTRAINT "DecisionOption_partId_fkey" REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT DEFERRABLE INITIALLY DEFERRED;

-- One thing is altered, a position or a part, and it is said how far that can be undone; a part is parted with whole.
ALTER TABLE "DecisionOption" ADD COLUMN "undo" TEXT CHECK (
    CASE "does"
        WHEN 'alter' THEN ("positionId" IS NULL) <> ("partId" IS NULL) AND "undo" IS NOT NULL AND "undo" IN ('clean', 'trace', 'never')
        WHEN 'parting' THEN "positionId" IS NULL AND "partId" IS NOT NULL AND "undo" IS NULL
        ELSE "positionId" IS NULL AND "partId" IS NULL AND "undo" IS NULL
    END
);

ALTER TABLE "DecisionOption" ADD COLUMN "foreseen" TEXT CHECK ("foreseen" IS NULL OR "does" IS NOT NULL);

ALTER TABLE "DecisionOption" ADD COLUMN "positionsLost" INTEGER CHECK ("positionsLost" IS NULL OR ("positionsLost" >= 0 AND "foreseen" IS NOT NULL));

-- What is known of one is known of both. A cost below nought is no cost.
ALTER TABLE "DecisionOption" ADD COLUMN "statesLost" INTEGER CHECK (
    ("statesLost" IS NULL) = ("positionsLost" IS NULL) AND ("statesLost" IS NULL OR "statesLost" >= 0) AND ("costMinor" IS NULL OR "costMinor" >= 0)
);
