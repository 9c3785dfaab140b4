"use server";

import { act } from "@/app/act";
import {
	comeBack,
	describePart,
	losePart,
	sayEvidence,
	scrapPart,
	sellPart,
	sendOut,
	voidPart,
	withdrawEvidence,
} from "@/lib/parts/changes";
import {
	comeBackSchema,
	describePartSchema,
	leaveSchema,
	sayEvidenceSchema,
	sellPartSchema,
	sendOutSchema,
	withdrawEvidenceSchema,
} from "@/lib/parts/schema";
import {
	addPositions,
	addPositionsAsText,
	copyBuild,
	describePosition,
	recordFinding,
	sayExclusion,
	sayObstruction,
	withdrawObstruction,
} from "@/lib/positions/changes";
import {
	addPositionsAsTextSchema,
	addPositionsSchema,
	copyBuildSchema,
	describePositionSchema,
	recordFindingSchema,
	sayExclusionSchema,
	sayObstructionSchema,
	withdrawObstructionSchema,
} from "@/lib/positions/schema";

export const addPositionsAction = async (raw: unknown) => act(raw, addPositionsSchema, addPositions);
export const addPositionsAsTextAction = async (raw: unknown) => act(raw, addPositionsAsTextSchema, addPositionsAsText);
export const copyBuildAction = async (raw: unknown) => act(raw, copyBuildSchema, copyBuild);
export const describePositionAction = async (raw: unknown) => act(raw, describePositionSchema, describePosition);
export const recordFindingAction = async (raw: unknown) => act(raw, recordFindingSchema, recordFinding);
export const sayObstructionAction = async (raw: unknown) => act(raw, sayObstructionSchema, sayObstruction);
export const withdrawObstructionAction = async (raw: unknown) => act(raw, withdrawObstructionSchema, withdrawObstruction);
export const sayExclusionAction = async (raw: unknown) => act(raw, sayExclusionSchema, sayExclusion);
export const describePartAction = async (raw: unknown) => act(raw, describePartSchema, describePart);
export const sayEvidenceAction = async (raw: unknown) => act(raw, sayEvidenceSchema, sayEvidence);
export const withdrawEvidenceAction = async (raw: unknown) => act(raw, withdrawEvidenceSchema, withdrawEvidence);
export const sendOutAction = async (raw: unknown) => act(raw, sendOutSchema, sendOut);
export const comeBackAction = async (raw: unknown) => act(raw, comeBackSchema, comeBack);
export const sellPartAction = async (raw: unknown) => act(raw, sellPartSchema, sellPart);
export const losePartAction = async (raw: unknown) => act(raw, leaveSchema, losePart);
export const scrapPartAction = async (raw: unknown) => act(raw, leaveSchema, scrapPart);
export const voidPartAction = async (raw: unknown) => act(raw, leaveSchema, voidPart);
