/** Starting a workbook in Excel by its file: as a new one, or its sheets in the open one. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { ADD_IN_ID } from "../../../src/version";
import { entriesOf, unpacked } from "../../../src/hosts/file/archive";
import { writeCopy } from "../../../src/hosts/file/copy/writeCopy";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeJob } from "../../../src/hosts/file/writeJob";
import { renderPng } from "../../../src/hosts/headless/renderPng";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import type { StartedBook } from "../../../src/pane/host";
import { startedBook } from "../../../src/pane/startedBook";
import { templates } from "../../../src/workbooks/templates";
import type { ExcelStandIn, StandInOptions } from "../../support/excelStandIn";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";

const TEMPLATES = path.join(__dirname, "..", "..", "..", "templates");
const OWN = { lengthUnit: "m", currency: "" } as const;
const job = (): StartedBook => startedBook(templates[1]!, "demonstration", OWN);

/** A server that answers for the add-in's folder. */
function served(answer: (file: string) => Response): () => void {
  const before = globalThis.fetch;
  globalThis.fetch = async (address) => answer(String(address));
  return () => void (globalThis.fetch = before);
}

const fromTemplates = (address: string): Response => {
  const [folder, file] = address.split("/");
  return folder === "workbooks"
    ? new Response(new Uint8Array(readFileSync(path.join(TEMPLATES, file!))))
    : new Response("", { status: 404 });
};

async function starting(
  options: StandInOptions,
  answer: (file: string) => Response,
  work: (excel: ExcelStandIn, host: ExcelHost) => Promise<void>,
): Promise<void> {
  const closed = served(answer);
  try {
    await inExcel(options, (excel) => work(excel, new ExcelHost()));
  } finally {
    closed();
  }
}

const sheetNames = (excel: ExcelStandIn): string[] => excel.state.book.sheets.map(({ name }) => name);

describe("as a new workbook", () => {
  test.each(
    templates.flatMap((template) => [["empty", template] as const, ["demonstration", template] as const]),
  )("%s: the very bytes that the desk saves", (kind, template) =>
    starting({}, fromTemplates, async (excel, host) => {
      const started = startedBook(template, kind, OWN);
      expect(await host.startWorkbook(started)).toMatch(/window of its own.*Rigsheet pane.*Repair formulas/);
      const saved = await writeJob(recalculate(template[kind]()));
      expect(Buffer.from(excel.created[0]!).equals(Buffer.from(saved))).toBe(true);
      expect(sheetNames(excel)).toEqual(["Sheet1"]);
    }),
  );

  test("a person's own unit: written here, to be worked out on opening", () =>
    starting({}, fromTemplates, async (excel, host) => {
      await host.startWorkbook(startedBook(templates[0]!, "empty", { lengthUnit: "ft", currency: "NOK" }));
      const bytes = excel.created[0]!;
      const book = await readXlsx(bytes);
      const { sheet, range } = book.names.find(({ name }) => name === "site_unit")!;
      expect(book.sheets.find(({ name }) => name === sheet)!.cells[range.split(":")[0]!]!.value).toBe("ft");
      expect(partOf(bytes, "xl/workbook.xml")).toContain('fullCalcOnLoad="1"');
    }));

  test.each([
    ["a page of a sign-in in its place", () => new Response("<!doctype html><title>Sign in</title>")],
    ["no such file", () => new Response("", { status: 404 })],
    [
      "an address that is blocked",
      (): Response => {
        throw new TypeError("Failed to fetch");
      },
    ],
  ])("%s: the workbook is written here", (_, answer) =>
    starting({}, answer, async (excel, host) => {
      await host.startWorkbook(job());
      const written = await readXlsx(excel.created[0]!);
      expect(written.sheets.map(({ name }) => name)).toEqual(job().book.sheets.map(({ name }) => name));
    }),
  );

  test("refused by a policy: said with the way on, and that way works", () =>
    starting({ refusesNew: true }, fromTemplates, async (excel, host) => {
      const sentence = await sentenceOf(host.startWorkbook(job()));
      expect(sentence).toMatch(/refused.*AccessDenied.*policy.*As sheets of this workbook/);
      expect(excel.created).toEqual([]);
      expect(sheetNames(excel)).toEqual(["Sheet1"]);
      await host.startHere(job());
      expect(sheetNames(excel)).toEqual(["Sheet1", ...job().book.sheets.map(({ name }) => name)]);
    }));
});

describe("in the open workbook", () => {
  const started = (excel: ExcelStandIn): void => {
    const { book } = job();
    expect(sheetNames(excel)).toEqual(["Sheet1", ...book.sheets.map(({ name }) => name)]);
    expect([...excel.state.book.names].sort(byName)).toEqual([...book.names].sort(byName));
    expect(excel.state.properties.get("RigsheetTemplate")).toBe(book.template);
    expect(excel.state.active.sheet).toBe(book.sheets[0]!.name);
    // The functions are there when it is opened the next time.
    expect(excel.savedSettings.get("Office.AutoShowTaskpaneWithDocument")).toBe(true);
    expect(excel.startup).toBe("Load");
  };
  const byName = (a: { name: string }, b: { name: string }): number => (a.name < b.name ? -1 : 1);

  test("its sheets are inserted, protected as in the file", () =>
    starting({}, fromTemplates, async (excel, host) => {
      expect(await host.startHere(job())).toBe("");
      started(excel);
      expect([...excel.state.protectedSheets.keys()]).toEqual(job().book.sheets.map(({ name }) => name));
    }));

  test("protection that Excel leaves behind is said", () =>
    starting({ inserting: "protection" }, fromTemplates, async (excel, host) => {
      expect(await host.startHere(job())).toMatch(/left the sheets' protection behind.*Protect Sheet/);
      started(excel);
    }));

  test.each(["refused", "names", "formulas"] as const)(
    "%s: they are built cell by cell, and that is said",
    (inserting) =>
      starting({ inserting }, fromTemplates, async (excel, host) => {
        expect(await host.startHere(job())).toMatch(/built cell by cell.*no protection and no pictures/);
        started(excel);
        const wanted = recalculate(job().book);
        const computed = excel.book();
        for (const { name, results } of wanted.sheets)
          expect(computed.sheets.find((one) => one.name === name)!.results).toMatchObject(results);
      }),
  );

  test("an Excel without that call builds them", () =>
    starting({ api: "1.12" }, fromTemplates, async (excel, host) => {
      expect(await host.startHere(job())).toMatch(/built cell by cell/);
      started(excel);
    }));

  test("a workbook that keeps no settings has its sheets all the same", () =>
    starting({ readOnly: true }, fromTemplates, async (excel, host) => {
      await host.startHere(job());
      expect(sheetNames(excel)).toContain(job().book.sheets[0]!.name);
      expect(await sentenceOf(host.openingOfPane.keep(true))).toMatch(
        /did not keep.*read-only.*protected view/,
      );
    }));
});

const partOf = (bytes: Uint8Array, name: string): string => {
  const entry = entriesOf(bytes).find((one) => one.name === name);
  return entry ? new TextDecoder().decode(unpacked(bytes, entry)) : "";
};

/**
 * Source: [MS-OWEXML] 2.1 (parts, their types and relationships); Office
 * add-ins documentation, "Automatically open a task pane with a document" (the
 * property, and by storeType what id and store are).
 */
describe("the pane that comes with a file", () => {
  const relation = (xml: string, type: string): string | undefined =>
    new RegExp(`Type="[^"]*/${type}" Target="([^"]+)"`).exec(xml)?.[1];

  test("the file names the add-in, and asks for its pane", async () => {
    const bytes = new Uint8Array(readFileSync(path.join(TEMPLATES, "multi-room.xlsx")));
    const panes = relation(partOf(bytes, "_rels/.rels"), "webextensiontaskpanes")!;
    const extension = relation(partOf(bytes, panes.replace(/([^/]+)$/, "_rels/$1.rels")), "webextension")!;
    const part = partOf(bytes, path.posix.join(path.posix.dirname(panes), extension));
    expect(part).toContain('<we:property name="Office.AutoShowTaskpaneWithDocument" value="true"/>');
    const references = [...part.matchAll(/<we:reference ([^>]*)\/>/g)].map(([, text]) =>
      Object.fromEntries([...text!.matchAll(/(\w+)="([^"]*)"/g)].map(([, key, value]) => [key, value])),
    );
    expect(references).toMatchObject([
      { id: ADD_IN_ID, store: "EXCatalog", storeType: "EXCatalog", version: "0.1.0.0" },
      { id: ADD_IN_ID, store: "developer", storeType: "Registry", version: "0.1.0.0" },
    ]);
    // Invisible to whoever lacks the add-in.
    expect(partOf(bytes, panes)).toContain('visibility="0"');
    const types = partOf(bytes, "[Content_Types].xml");
    for (const name of [panes, path.posix.join(path.posix.dirname(panes), extension)])
      expect(types).toContain(`PartName="/${name}"`);
  });

  test.each(["office", "sealed", "cards"] as const)("a copy (%s) brings none", async (kind) => {
    const book = recalculate(templates[0]!.demonstration());
    const facts = { now: new Date(0), version: "0.1.0" };
    const names = entriesOf(await writeCopy(book, kind, facts, renderPng)).map(({ name }) => name);
    expect(names.filter((name) => /webextension/i.test(name))).toEqual([]);
  });
});
