"use server";

import { act } from "@/app/act";
import { sayWords, withdrawCapture } from "@/lib/captures/changes";
import { sayWordsSchema, withdrawCaptureSchema } from "@/lib/captures/schema";
import { addDigitalItem } from "@/lib/digital/changes";
import { addDigitalItemSchema } from "@/lib/digital/schema";

export const sayWordsAction = async (raw: unknown) => act(raw, sayWordsSchema, sayWords, "/machines");
export const withdrawCaptureAction = async (raw: unknown) => act(raw, withdrawCaptureSchema, withdrawCapture, "/machines");
export const addDigitalItemAction = async (raw: unknown) => act(raw, addDigitalItemSchema, addDigitalItem, "/machines");
