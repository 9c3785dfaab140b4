// What the tests need besides packages: Chromium for the screens, pdftoppm for the papers, zbarimg for the labels.
// Tries what is there, then each way to get it, and says what it did.
import { existsSync } from "node:fs";
import path from "node:path";
import { hear, root, say, stop } from "./run.mjs";

// The one without a window first: it is the same browser, and the tests of the screens take a third less time in it.
const BROWSERS = ["chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

function whereIs(program) {
	for (const folder of (process.env.PATH ?? "").split(path.delimiter)) {
		const file = path.join(folder, program);
		if (folder && existsSync(file)) return file;
	}
	return null;
}

const firstOf = (programs) => programs.map(whereIs).find((file) => file !== null) ?? null;
const isRoot = () => process.getuid?.() === 0;
let listsRead = false;

/** Installs system packages where we may. Gives what went wrong, or null. */
function aptInstall(packages) {
	if (!whereIs("apt-get")) return "this system has no apt-get";
	if (!isRoot()) return "installing system packages needs root";
	const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
	if (!listsRead) hear("apt-get", ["update", "-q"], { env });
	listsRead = true;
	const { code, said } = hear("apt-get", ["install", "-y", "-q", "--no-install-recommends", ...packages], { env });
	return code === 0 ? null : (said.trim().split("\n").at(-1) ?? "apt-get failed");
}

/** Playwright's own Chromium: its file when it has been installed, else null. */
function ownBrowser() {
	const asked = hear(process.execPath, ["-e", 'process.stdout.write(require("playwright-core").chromium.executablePath())']);
	return asked.code === 0 && existsSync(asked.said) ? asked.said : null;
}

function findBrowser() {
	const named = process.env.ASFOUND_CHROMIUM;
	if (named) {
		if (existsSync(named)) return named;
		stop(`ASFOUND_CHROMIUM names ${named}, and there is no such file. Correct it or leave it out.`);
	}
	const there = firstOf(BROWSERS) ?? ownBrowser();
	if (there) return there;
	say("No Chromium here; installing it for the tests of the screens ...");
	// Older systems have no package of the one without a window.
	const refused = aptInstall(["chromium-headless-shell"]) && aptInstall(["chromium"]);
	const fromSystem = firstOf(BROWSERS);
	if (fromSystem) {
		say("Installed Chromium with apt-get.");
		return fromSystem;
	}
	say(`Not with apt-get (${refused ?? "it brought no Chromium"}); trying Playwright's own ...`);
	const { code, said } = hear(process.execPath, [
		path.join(root, "node_modules/playwright-core/cli.js"),
		"install",
		"--with-deps",
		"chromium",
	]);
	const own = ownBrowser();
	if (own) {
		say("Installed Playwright's own Chromium.");
		return own;
	}
	return stop(
		`${said.trim()}\n\nThe tests of the screens need Chromium, and neither way brought it (exit ${code}). Install Chromium or Chrome, or name it with ASFOUND_CHROMIUM.`,
	);
}

/** Finds or installs what the tests need, and gives the environment that tells them where it is. */
export function testNeeds() {
	const chromium = findBrowser();
	const wanted = [
		["pdftoppm", "poppler-utils", "drawing the papers"],
		["zbarimg", "zbar-tools", "reading the labels"],
	].filter(([program]) => whereIs(program) === null);
	if (wanted.length > 0) {
		const packages = wanted.map(([, name]) => name);
		say(`Installing ${packages.join(" and ")} for the tests ...`);
		const refused = aptInstall(packages);
		const missing = wanted.filter(([program]) => whereIs(program) === null);
		if (missing.length > 0)
			stop(
				missing
					.map(
						([program, name, what]) =>
							`The tests need ${program} for ${what}: install ${name} (${refused ?? "not found after installing"}).`,
					)
					.join("\n"),
			);
		say(`Installed ${packages.join(" and ")} with apt-get.`);
	}
	return { ...process.env, ASFOUND_CHROMIUM: chromium };
}
