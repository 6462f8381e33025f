/** `npm run bench`: prints how long the work takes against bare baselines. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

/** The parts that need a browser. */
const IN_BROWSER = {
  start: async () => (await import("./benchStart.mjs")).benchStart(),
  desk: async () => (await import("./benchDesk.mjs")).benchDesk(),
};
/** Takes minutes, and so runs only when it is named. */
const ONLY_NAMED = ["desk"];

await build();
const named = process.argv.slice(2);
const others = named.filter((one) => !Object.hasOwn(IN_BROWSER, one));
if (named.length === 0 || others.length > 0) {
  const { status } = spawnSync(process.execPath, [path.join(project, "dist", "bench.js"), ...others], {
    stdio: "inherit",
  });
  process.exitCode = status ?? 1;
}
for (const [name, run] of Object.entries(IN_BROWSER))
  if (named.length === 0 ? !ONLY_NAMED.includes(name) : named.includes(name)) await run();
