"use server";

import { act } from "@/app/act";
import { addStock, correctStock, putAwayStock, sayNudge } from "@/lib/labels/changes";
import { correctStockSchema, nudgeSchema, ownStockSchema, putAwayStockSchema } from "@/lib/labels/ownStock";

export const addStockAction = async (raw: unknown) => act(raw, ownStockSchema, addStock, "/labels");

export const correctStockAction = async (raw: unknown) => act(raw, correctStockSchema, correctStock, "/labels");

export const putAwayStockAction = async (raw: unknown) => act(raw, putAwayStockSchema, putAwayStock, "/labels");

export const sayNudgeAction = async (raw: unknown) => act(raw, nudgeSchema, sayNudge, "/labels");
