// The sides of a position as the database keeps them: a JSON list of names; none means one side, unnamed.

import { z } from "zod";

const schema = z.array(z.string());

/** The side names of a position's `sides` column. */
export const sidesOf = (column: string): string[] => schema.parse(JSON.parse(column));
