// npm run bench: what things cost, as ratios to a baseline measured in the same run. Nothing is asserted but the answers of the planners.
// With a folder (`npm run bench -- FOLDER`) the scheduler also runs on the published projects in it.

import { cpus } from "node:os";
import { freshShop } from "@/tests/support/freshShop";
import { benchPages } from "./benchPages";
import { labels } from "./labels";
import { leastOpening } from "./leastOpening";
import { fill, machinePage } from "./machinePage";
import { recordedWrite } from "./recordedWrite";
import { largerProjects, publishedProjects } from "./schedules";
import { simulating } from "./simulating";
import { verifying } from "./verifying";

console.log(`Node ${process.versions.node}, ${cpus().length} cores, ${cpus()[0]?.model.trim() ?? "unknown processor"}`);
// A wrong answer is no figure: it ends the run badly.
if ((await leastOpening()) > 0) process.exitCode = 1;
const [folder] = process.argv.slice(2);
if (folder !== undefined && publishedProjects(folder) > 0) process.exitCode = 1;
if (largerProjects() > 0) process.exitCode = 1;
await simulating();
await labels();
await benchPages();
await recordedWrite();
const shop = await freshShop();
try {
	const machineId = await fill(shop);
	await machinePage(shop, machineId);
	await verifying(shop);
} finally {
	await shop.close();
}
