"use client";

import { ButtonLink } from "@/app/ui/buttonLink";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";

/** It is out, and the shop does not know yet: the phone keeps it, and sends it once. */
export function KeptHere({ say, part, machine }: { say: string; part: { readonly name: string }; machine: { readonly number: number } }) {
	return (
		<>
			<Notice means="wait" title="Kept on this phone">
				<p>
					That the {part.name} is out, and its photos, go to the shop's book as soon as it can be reached, once. {say}
				</p>
				<p>
					<Link href="/phone">What waits on this phone</Link>
				</p>
			</Notice>
			<ActionBar>
				<ButtonLink kind="main" href={`/machines/${machine.number}/bench`}>
					The next one
				</ButtonLink>
			</ActionBar>
		</>
	);
}
