/** `npm run bench`: prints how long the work takes against bare baselines. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

/** The part that needs a browser, and none of what is built for Node. */
const IN_BROWSER = "start";

await build();
const named = process.argv.slice(2);
const others = named.filter((one) => one !== IN_BROWSER);
if (named.length === 0 || others.length > 0) {
  const { status } = spawnSync(process.execPath, [path.join(project, "dist", "bench.js"), ...others], {
    stdio: "inherit",
  });
  process.exitCode = status ?? 1;
}
if (named.length === 0 || named.includes(IN_BROWSER)) await (await import("./benchStart.mjs")).benchStart();
