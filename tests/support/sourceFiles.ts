import { readdirSync, statSync } from "node:fs";
import path from "node:path";

/** @returns the TypeScript files of a folder and of those in it, by their full paths */
export const sourceFiles = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const full = path.join(folder, name);
    return statSync(full).isDirectory() ? sourceFiles(full) : full.endsWith(".ts") ? [full] : [];
  });
