/**
 * Files of libraries that are shipped whole: each can be replaced by another
 * version of its own. The built package brings them in `library/` beside its
 * bundles, since the libraries' own packages bring much that is never used; in
 * a clone, where they are installed, they are taken from there.
 */
import { existsSync } from "node:fs";
import path from "node:path";

/** In a clone what the build makes lies in its own folder. */
const HOMES = ["library", "node_modules", "dist/library"];

/**
 * @param name of the package, for example `bootstrap`
 * @param file its path in the package
 * @returns its place on this machine
 */
export function libraryFile(name: string, file: string): string {
  for (let folder = __dirname; ; folder = path.dirname(folder)) {
    for (const home of HOMES) {
      const found = path.join(folder, home, name, file);
      if (existsSync(found)) return found;
    }
    if (folder === path.dirname(folder)) {
      throw new Error(
        `${file} of ${name} is missing. Install Rigsheet anew; in a clone, run npm ci in the project's folder.`,
      );
    }
  }
}
