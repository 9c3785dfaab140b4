"use client";

import { usePathname } from "next/navigation";
import { Segments } from "@/app/ui/segments";

/** The four kinds of papers of a machine. */
export function PaperTabs({
	base,
	counts,
}: {
	readonly base: string;
	readonly counts: { readonly photos: number; readonly papers: number; readonly programs: number; readonly entries: number };
}) {
	const path = usePathname();
	const options = [
		{ href: base, label: `Photos ${counts.photos}` },
		{ href: `${base}/documents`, label: `Papers ${counts.papers}` },
		{ href: `${base}/programs`, label: `Programs ${counts.programs}` },
		{ href: `${base}/history`, label: `History ${counts.entries}` },
	];
	return <Segments label="Papers of this machine" options={options} current={path} />;
}
