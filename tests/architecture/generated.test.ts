/** Generated files are rebuilt here; one that differs from what is kept fails. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { generatedFiles } from "../../src/build/generatedFiles";

const project = path.join(__dirname, "../..");

test("what `npm run generate` writes is what the repository keeps", async () => {
  const files = await generatedFiles();
  expect(files.size).toBeGreaterThanOrEqual(4);
  const stale = [...files].filter(([name, content]) => {
    const kept = readFileSync(path.join(project, name));
    return Buffer.compare(kept, Buffer.from(content)) !== 0;
  });
  expect(stale.map(([name]) => name)).toEqual([]);
});
