"use server";

import { act } from "@/app/act";
import { fileUnder, sayLater, withdrawSeveral } from "@/lib/captures/changes";
import { fileUnderSchema, sayLaterSchema, withdrawSeveralSchema } from "@/lib/captures/schema";

export const sayLaterAction = async (raw: unknown) => act(raw, sayLaterSchema, sayLater);
export const fileUnderAction = async (raw: unknown) => act(raw, fileUnderSchema, fileUnder);
export const withdrawSeveralAction = async (raw: unknown) => act(raw, withdrawSeveralSchema, withdrawSeveral);
