/** The record of what formulas each earlier version had. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { closedFormulas } from "../../src/build/closedFormulas";
import { VERSION_RECORD, type VersionRecord } from "../../src/build/versionRecord";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { layOut } from "../../src/workbooks/layOut";
import { formulaMark } from "../../src/workbooks/formulaMark";
import { templates } from "../../src/workbooks/templates";
import { formulaRecord, marksIn, versionFormulas } from "../../src/workbooks/versionFormulas";
import { VERSIONS } from "../../src/workbooks/versions";

test("every version before today's is kept", () => {
  for (const [id, versions] of Object.entries(VERSIONS))
    for (const { version } of versions.slice(0, -1)) expect(versionFormulas(id, version)).toBeDefined();
  const released = JSON.parse(
    readFileSync(path.join(__dirname, "../..", VERSION_RECORD), "utf8"),
  ) as VersionRecord;
  for (const [id, versions] of Object.entries(released))
    for (const [version, { released: closed }] of Object.entries(versions))
      if (closed && version !== VERSIONS[id as keyof typeof VERSIONS].at(-1)!.version)
        expect(formulaRecord[id]).toHaveProperty(version);
});

test("closing today's versions adds them and leaves the others", () => {
  const closed = closedFormulas(formulaRecord, true);
  for (const { id, definition } of templates) {
    const kept = formulaRecord[id] ?? {};
    expect(Object.keys(closed[id]!)).toEqual(
      expect.arrayContaining([...Object.keys(kept), definition.version]),
    );
    for (const version of Object.keys(kept))
      if (version !== definition.version) expect(closed[id]![version]).toEqual(kept[version]);
  }
  expect(closedFormulas(formulaRecord, false)).toBe(formulaRecord);
});

test.each(templates.map(({ id, definition }) => [id, definition] as const))(
  "%s: a workbook that was written and read has the marks of its definition",
  async (_, definition) => {
    const book = layOut(definition);
    expect(marksIn(await readXlsx(await writeXlsx(book)))).toEqual(marksIn(book));
  },
);

test("a mark does not depend on addresses, blanks, case or a program's spelling, and on all else it does", () => {
  const mark = formulaMark('IF(C7=0,"ok",_xlfn.SINGLE(x)+TRUE())');
  expect(formulaMark('if( $C$12 = 0, "ok", @x + TRUE )')).toBe(mark);
  for (const other of ['IF(C7=1,"ok",@x+TRUE)', 'IF(C7=0,"OK",@x+TRUE)', 'IF(C7=0,"ok",@y+TRUE)'])
    expect(formulaMark(other)).not.toBe(mark);
});
