"use server";

import { act } from "@/app/act";
import { shopStore } from "@/lib/db/shopStore";
import {
	closeFault,
	describeMachine,
	handOver,
	promiseReady,
	sayFault,
	sayNote,
	setMachineState,
	setPortrait,
	stampAsFound,
	takeInMachine,
} from "@/lib/machines/changes";
import {
	closeFaultSchema,
	describeMachineSchema,
	handOverSchema,
	promiseSchema,
	sayFaultSchema,
	sayNoteSchema,
	setMachineStateSchema,
	setPortraitSchema,
	stampAsFoundSchema,
	takeInMachineSchema,
} from "@/lib/machines/schema";
import { requireShop } from "@/lib/shop/queries";

const currency = async () => (await requireShop((await shopStore()).read)).currency;

export const takeInMachineAction = async (raw: unknown) => act(raw, takeInMachineSchema(await currency()), takeInMachine);
export const describeMachineAction = async (raw: unknown) => act(raw, describeMachineSchema(await currency()), describeMachine);
export const handOverAction = async (raw: unknown) => act(raw, handOverSchema(await currency()), handOver);
export const stampAsFoundAction = async (raw: unknown) => act(raw, stampAsFoundSchema, stampAsFound);
export const setPortraitAction = async (raw: unknown) => act(raw, setPortraitSchema, setPortrait);
export const setMachineStateAction = async (raw: unknown) => act(raw, setMachineStateSchema, setMachineState);
export const sayNoteAction = async (raw: unknown) => act(raw, sayNoteSchema, sayNote);
export const sayFaultAction = async (raw: unknown) => act(raw, sayFaultSchema, sayFault);
export const closeFaultAction = async (raw: unknown) => act(raw, closeFaultSchema, closeFault);
export const promiseReadyAction = async (raw: unknown) => act(raw, promiseSchema, promiseReady);
