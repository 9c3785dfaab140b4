"use client";

import { usePathname } from "next/navigation";
import { Tabs } from "@/app/ui/tabs";

const PAGES = [
	["", "Now"],
	["/build", "Build"],
	["/work", "Work"],
	["/changes", "Changes"],
	["/money", "Money"],
	["/tests", "Tests"],
	["/reversal", "Reversal"],
	["/papers", "Papers"],
] as const;

/** The pages of one machine; the one shown is marked, also from a page under it. */
export function MachineTabs({ number, name }: { readonly number: number; readonly name: string }) {
	const path = usePathname();
	const base = `/machines/${number}`;
	const tabs = PAGES.map(([under, label]) => ({ href: `${base}${under}`, label }));
	const under = tabs.find((tab) => tab.href !== base && (path === tab.href || path.startsWith(`${tab.href}/`)));
	const atABench = /\/(take-out|put-in)\//.test(path);
	return (
		<Tabs
			label={name}
			tabs={tabs}
			current={under?.href ?? (path === base || path === `${base}/originality` ? base : atABench ? `${base}/build` : "")}
		/>
	);
}
