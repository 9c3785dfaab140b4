import { notFound } from "next/navigation";

/** The number that an address names, or the page that says there is nothing. */
export const numberInAddress = (text: string): number => (/^[1-9]\d{0,5}$/.test(text) ? Number(text) : notFound());
