/** What a file says beside its cells: read as the format has it, bounded, and only where a review asks. */
import { unzipSync, zipSync } from "fflate";
import { elementsOf, fromXml } from "../../../src/hosts/file/markup";
import { MAX_FACTS } from "../../../src/hosts/file/limits";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { recalculate } from "../../../src/hosts/headless/recalculate";

let bytes: Uint8Array;
beforeAll(async () => {
  bytes = await writeXlsx(recalculate(layOut(multiRoom, {})));
});

function changed(change: (parts: Record<string, string>) => void): Uint8Array {
  const parts = unzipSync(bytes);
  const texts = Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, new TextDecoder().decode(part)]),
  );
  change(texts);
  return zipSync(
    Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, new TextEncoder().encode(text)])),
    { level: 0 },
  );
}
const factsOf = async (file: Uint8Array) => (await readXlsx(file, { forReview: true })).saved!.file!;

test("a book that is worked with carries nothing of it", async () => {
  expect((await readXlsx(bytes)).saved).toBeUndefined();
});

test("our own file: its names, its pages, and nothing that lies on its cells", async () => {
  const { names, links, sheets, application } = await factsOf(bytes);
  expect(application).toBe("Rigsheet");
  expect(links).toEqual([]);
  expect(names.find(({ name, sheet }) => name === "_xlnm.Print_Titles" && sheet === "Quote")?.text).toBe(
    "'Quote'!$1:$1",
  );
  const quote = sheets.find(({ name }) => name === "Quote")!;
  expect(quote.page).toEqual({ fit: { wide: 1, tall: 1 }, rowBreaks: [] });
  expect(sheets.flatMap(({ drawings, notes }) => [...drawings, ...notes])).toEqual([]);
});

test("days from 1904 are refused for work and told to a review", async () => {
  const file = changed((parts) => {
    parts["xl/workbook.xml"] = parts["xl/workbook.xml"]!.replace(
      "<bookViews>",
      '<workbookPr date1904="1"/><bookViews>',
    );
  });
  await expect(readXlsx(file)).rejects.toThrow(/1904/);
  expect((await factsOf(file)).dates1904).toBe(true);
});

test("more hyperlinks and rules than people make are cut, not kept", async () => {
  const file = changed((parts) => {
    const [name, sheet] = Object.entries(parts).find(([part]) => part === "xl/worksheets/sheet1.xml")!;
    const many = Array.from(
      { length: MAX_FACTS + 500 },
      () => '<scenario name="a"><inputCells r="A1"/></scenario>',
    );
    parts[name] = sheet.replace("</worksheet>", `<scenarios>${many.join("")}</scenarios></worksheet>`);
  });
  expect((await factsOf(file)).sheets[0]!.scenarios).toHaveLength(MAX_FACTS);
});

test("markup that is not closed, or nothing but tags, ends", () => {
  expect(elementsOf("<a><a><a>", "a")).toEqual([]);
  expect(elementsOf(`<a b="1"`.repeat(20_000), "a")).toEqual([]);
  expect(elementsOf("<x:a k='1'/><x:a>t</x:a><ab/>", "a").map(({ inside }) => inside)).toEqual(["", "t"]);
  expect(fromXml("&#x110000;&#65;&amp;&none;")).toBe("&#x110000;A&&none;");
});
