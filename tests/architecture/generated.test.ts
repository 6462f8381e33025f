/** Generated files are rebuilt here; one that differs from what is kept fails. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { INPUT_RECORD, type InputRecord } from "../../src/build/closedInputs";
import { generatedFiles, type Records } from "../../src/build/generatedFiles";
import { RELEASE_RECORD, type ReleaseRecord } from "../../src/build/releaseRecord";
import { hashOf, VERSION_RECORD, versionRecord, type VersionRecord } from "../../src/build/versionRecord";
import type { WorkbookDefinition } from "../../src/workbooks/definition";
import { singleDrop } from "../../src/workbooks/singleDrop/definition";
import { templates } from "../../src/workbooks/templates";
import { VERSIONS } from "../../src/workbooks/versions";

const project = path.join(__dirname, "../..");
const read = (file: string): unknown => JSON.parse(readFileSync(path.join(project, file), "utf8"));
const kept: Records = {
  versions: read(VERSION_RECORD) as VersionRecord,
  releases: read(RELEASE_RECORD) as ReleaseRecord,
  inputs: read(INPUT_RECORD) as InputRecord,
};

test("what `npm run generate` writes is what the repository keeps", async () => {
  const files = await generatedFiles(kept);
  expect(files.size).toBeGreaterThanOrEqual(4);
  const stale = [...files].filter(([name, content]) => {
    const kept = readFileSync(path.join(project, name));
    return Buffer.compare(kept, Buffer.from(content)) !== 0;
  });
  expect(stale.map(([name]) => name)).toEqual([]);
}, 180_000);

describe("the templates' versions", () => {
  /** The same version with one label changed. */
  const changed: WorkbookDefinition = {
    ...singleDrop,
    sheets: singleDrop.sheets.map((sheet) => ({ ...sheet, intro: `${sheet.intro} And more.` })),
  };
  const released = versionRecord({}, true, [singleDrop]);
  const { id, version } = singleDrop;

  test("each template's definition has the last version of its list, counted up from 1", () => {
    for (const { definition } of templates) {
      const versions = Object.entries(VERSIONS).find(([name]) => name === definition.id)![1];
      expect(versions.map((one) => one.version)).toEqual(versions.map((_, index) => String(index + 1)));
      expect(definition.version).toBe(versions.at(-1)!.version);
    }
  });

  test("a definition that changes under a released version is refused, with what to do", () => {
    expect(() => versionRecord(released, false, [changed])).toThrow(
      /single-drop .* src\/workbooks\/versions\.ts/,
    );
    expect(() => versionRecord(released, false, [singleDrop])).not.toThrow();
  });

  test("with its version raised, or before the release, it may change", () => {
    const next = versionRecord(released, false, [{ ...changed, version: "99" }]);
    expect(next[id]).toEqual({
      ...released[id],
      "99": { hash: hashOf({ ...changed, version: "99" }), released: false },
    });
    const open = versionRecord({}, false, [singleDrop]);
    expect(versionRecord(open, false, [changed])[id]![version]!.hash).not.toBe(open[id]![version]!.hash);
  });

  test("a look is no part of it", () => {
    const narrower = {
      ...singleDrop,
      sheets: singleDrop.sheets.map((sheet) => ({
        ...sheet,
        print: { ...sheet.print, orientation: "landscape" as const },
      })),
    };
    expect(hashOf(narrower)).toBe(hashOf(singleDrop));
  });
});
