/** The guide for contributors names files that there are. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";

const root = path.join(__dirname, "../..");
const guide = readFileSync(path.join(root, "DEVELOPERS.md"), "utf8");

/** What looks like a file with its folder; a name alone, or one with a placeholder, is not looked for. */
const files = [...guide.matchAll(/`((?:[\w.-]+\/)+[\w.-]+\.(?:ts|mjs|cjs|json|md))`/g)].map(
  ([, file]) => file!,
);

test("every file that it names is there", () => {
  expect(files.length).toBeGreaterThan(60);
  const gone = files.filter(
    (file) => !["", "src", "src/workbooks"].some((folder) => existsSync(path.join(root, folder, file))),
  );
  expect(gone).toEqual([]);
});
