import { readdir, stat } from "node:fs/promises";
import path from "node:path";

/** A file is taken as it is named; of a folder all .xlsx but the lock files that Excel leaves. */
export async function filesIn(named: readonly string[]): Promise<string[]> {
  const files: string[] = [];
  for (const one of named) {
    const isFolder = await stat(one).then(
      (found) => found.isDirectory(),
      () => false,
    );
    if (!isFolder) files.push(one);
    else {
      const inside = await readdir(one, { recursive: true, withFileTypes: true });
      const found = inside.filter(
        (entry) => entry.isFile() && /\.xlsx$/i.test(entry.name) && !entry.name.startsWith("~$"),
      );
      files.push(...found.map((entry) => path.join(entry.parentPath, entry.name)).sort());
    }
  }
  return [...new Set(files)];
}
