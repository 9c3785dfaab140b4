#!/usr/bin/env node
// `npx asfound VERB`: the command line of the checkout. Loads TypeScript as it is, with the "@/" of tsconfig.json.
import { existsSync } from "node:fs";
import path from "node:path";
import process from "node:process";

const root = path.resolve(import.meta.dirname, "../..");
if (!existsSync(path.join(root, "node_modules/tsx")) || !existsSync(path.join(root, "lib/generated/prisma"))) {
	process.stderr.write(`Asfound is not set up in ${root} yet. Run: node ${path.join(root, "lib/cli/house.mjs")} prepare\n`);
	process.exit(1);
}
const { register } = await import("tsx/esm/api");
register({ tsconfig: path.join(root, "tsconfig.json") });
await import("./asfound.ts");
