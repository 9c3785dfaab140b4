import type { Metadata, Viewport } from "next";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import { Link } from "@/app/ui/link";
import { systemClock } from "@/lib/core/clock";
import { currentPerson } from "@/lib/people/current";
import "./fonts";
import "./globals.css";
import { OutboxLine } from "./outbox/outboxLine";
import { FindField } from "./ui/findField";
import { nav } from "./ui/nav";
import { NavLinks } from "./ui/navLinks";

export const metadata: Metadata = {
	title: { default: "Asfound", template: "%s · Asfound" },
	description: "Restoration job book and parts provenance ledger.",
};

export const viewport: Viewport = {
	width: "device-width",
	initialScale: 1,
	viewportFit: "cover",
	themeColor: [
		{ media: "(prefers-color-scheme: light)", color: "#fffdf6" },
		{ media: "(prefers-color-scheme: dark)", color: "#1d2322" },
	],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
	// Reading the request makes every page dynamic; a page made at build time could not carry this request's nonce.
	await headers();
	const person = await currentPerson();
	return (
		<html lang="en">
			<body>
				<a className="af-skip" href="#main">
					Skip to the page
				</a>
				<header className="af-bar">
					<Link className="af-word" href="/">
						Asfound
					</Link>
					<nav className="af-nav" aria-label="Main">
						<NavLinks entries={nav} />
					</nav>
					<FindField />
					<Link className="af-who" href="/people/me">
						<span className="af-who-name">{person?.name ?? "Who is this?"}</span>
						<span className="af-who-initials" aria-hidden="true">
							{person?.initials ?? "?"}
						</span>
					</Link>
				</header>
				<OutboxLine now={systemClock()} />
				<main className="af-main" id="main" tabIndex={-1}>
					{children}
				</main>
			</body>
		</html>
	);
}
