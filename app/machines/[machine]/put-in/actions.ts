"use server";

import { act } from "@/app/act";
import { putIn } from "@/lib/fittings/changes";
import { putInSchema } from "@/lib/fittings/schema";

export const putInAction = async (raw: unknown) => act(raw, putInSchema, putIn, "/machines/[machine]");
