/** A script of the build, run twice at once in other surroundings: nothing of them may be in what it makes. */
import { spawn } from "node:child_process";
import path from "node:path";

const scripts = path.join(__dirname, "../../src/build");

const SURROUNDINGS = [
  { place: "first", mask: "022", env: { TZ: "UTC", LANG: "C" } },
  { place: "second place", mask: "077", env: { TZ: "Pacific/Auckland", LANG: "de_DE.UTF-8" } },
];

/** @returns the two folders that it made, below `top` */
export const madeTwice = (top: string, script: string, ...words: string[]): Promise<string[]> =>
  Promise.all(
    SURROUNDINGS.map(
      ({ place, mask, env }) =>
        new Promise<string>((resolve, reject) => {
          const to = path.join(top, place);
          const child = spawn(
            "sh",
            [
              "-c",
              `umask ${mask}; exec "$0" "$@"`,
              process.execPath,
              path.join(scripts, script),
              "--to",
              to,
              ...words,
            ],
            { env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] },
          );
          let said = "";
          for (const stream of [child.stdout, child.stderr]) stream.on("data", (part) => (said += part));
          child.on("close", (code) => (code === 0 ? resolve(to) : reject(new Error(said))));
        }),
    ),
  );
