// `prisma generate` needs no engine binary, but asks for one. Naming any existing file stops the download.
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";

const prismaProgram = createRequire(import.meta.url).resolve("prisma/build/index.js");
const run = spawnSync(process.execPath, [prismaProgram, "generate"], {
	stdio: "inherit",
	env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: "1", PRISMA_HIDE_UPDATE_MESSAGE: "1" },
});
process.exit(run.status ?? 1);
