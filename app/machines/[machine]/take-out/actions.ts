"use server";

import { act } from "@/app/act";
import { putBack } from "@/lib/fittings/changes";
import { putBackSchema } from "@/lib/fittings/schema";
import { sayFault } from "@/lib/machines/changes";
import { sayFaultSchema } from "@/lib/machines/schema";
import { sayObstruction } from "@/lib/positions/changes";
import { sayObstructionSchema } from "@/lib/positions/schema";

export const putBackAction = async (raw: unknown) => act(raw, putBackSchema, putBack, "/machines/[machine]");

/** It did not come out: something is in the way that the record does not know of. */
export const inTheWayAction = async (raw: unknown) => act(raw, sayObstructionSchema, sayObstruction, "/machines/[machine]");

/** It did not come out: it is stuck, sheared, glued. */
export const stuckAction = async (raw: unknown) => act(raw, sayFaultSchema, sayFault, "/machines/[machine]");
