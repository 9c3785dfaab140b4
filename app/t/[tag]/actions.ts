"use server";

import { act } from "@/app/act";
import { describeBag, makeBag, moveBag, movePart, voidBag } from "@/lib/bags/changes";
import { describeBagSchema, makeBagSchema, moveBagSchema, movePartSchema, voidBagSchema } from "@/lib/bags/schema";
import { moveFixing } from "@/lib/fittings/changes";
import { moveFixingSchema } from "@/lib/fittings/schema";

export const makeBagAction = async (raw: unknown) => act(raw, makeBagSchema, makeBag);
export const moveBagAction = async (raw: unknown) => act(raw, moveBagSchema, moveBag);
export const movePartAction = async (raw: unknown) => act(raw, movePartSchema, movePart);
export const moveFixingAction = async (raw: unknown) => act(raw, moveFixingSchema, moveFixing);
export const describeBagAction = async (raw: unknown) => act(raw, describeBagSchema, describeBag);
export const voidBagAction = async (raw: unknown) => act(raw, voidBagSchema, voidBag);
