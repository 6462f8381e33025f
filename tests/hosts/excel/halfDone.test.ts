/**
 * What Excel refuses in the middle: nothing is left half done, and where it
 * only can't group the steps, they are done without a group.
 *
 * When Excel answers UndoNotSupported, and what it has done by then, is not
 * documented, so it is tried after every number of changes.
 */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import type { Book } from "../../../src/workbooks/book";
import type { RowChanges } from "../../../src/workbooks/survey/merge";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import type { ExcelStandIn, StandInOptions } from "../../support/excelStandIn";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";
import { sampled } from "../../support/tries";

const LONG_MS = 120_000;

/** As it comes from the add-in: without protection. */
const unprotected = (): Book => {
  const book = layOut(multiRoom, guestHouse);
  for (const sheet of book.sheets) sheet.protected = false;
  return book;
};

/** More than there is room for, so that rows must be added. */
const SURVEY: readonly SurveyRow[] = Array.from({ length: 12 }, (_, index) => ({
  outlet: `S-${index}`,
  room: `room ${index}`,
  run: 10 + index,
}));

interface Doing {
  readonly what: string;
  readonly open: () => Book | undefined;
  readonly options?: StandInOptions;
  readonly act: (excel: ExcelStandIn, host: ExcelHost) => Promise<unknown>;
}

const CHANGES: RowChanges = {
  changed: [
    {
      offset: 1,
      outlet: String(guestHouse.blocks!.rooms![0]!.outlet),
      cells: [{ key: "run", old: guestHouse.blocks!.rooms![0]!.run as number, now: 33.5 }],
    },
  ],
  cleared: [{ offset: 3, outlet: String(guestHouse.blocks!.rooms![2]!.outlet) }],
};

const DOINGS: readonly Doing[] = [
  {
    what: "rows added to a block that another mirrors",
    open: unprotected,
    act: async (excel, host) => {
      await excel.choose("Rooms", "A8");
      return host.addRows(3);
    },
  },
  {
    what: "a survey's outlets, with rows for them",
    open: unprotected,
    act: (_, host) => host.addOutlets(SURVEY),
  },
  {
    what: "a survey's outlets, with changes of those that are there",
    open: unprotected,
    act: (_, host) => host.addOutlets(SURVEY, CHANGES),
  },
  {
    what: "a workbook built in the open one",
    open: () => undefined,
    act: (_, host) => host.startHere({ book: layOut(singleDrop) }),
    options: { inserting: "refused" },
  },
  {
    what: "the sheets of a file inserted into the open workbook",
    open: () => undefined,
    act: (_, host) => host.startHere({ book: layOut(singleDrop) }),
  },
  {
    what: "formulas entered again on protected sheets",
    open: () => layOut(multiRoom, guestHouse),
    act: (excel, host) => {
      for (const at of ["B4", "C4"]) excel.state.forgotten.add(`Diagnosis!${at}`);
      return host.enterOursAgain();
    },
  },
];

/** What a person sees of the workbook. */
const shown = ({ state }: ExcelStandIn): unknown => ({
  sheets: state.book.sheets.map(({ name, cells }) => [
    name,
    Object.entries(cells)
      .flatMap(([at, { value, formula }]) => ((value ?? formula) === undefined ? [] : [[at, value, formula]]))
      .sort(),
  ]),
  names: [...state.book.names].sort((a, b) => (a.name < b.name ? -1 : 1)),
  properties: [...state.properties].sort(),
  protected: [...state.protectedSheets].sort(),
  unknown: [...state.forgotten].sort(),
});

async function outcome(
  options: StandInOptions,
  { open, act, options: usual }: Doing,
): Promise<{ before: unknown; after: unknown; said: unknown }> {
  let found: { before: unknown; after: unknown; said: unknown } | undefined;
  await inExcel({ ...usual, ...options }, async (excel) => {
    const book = open();
    if (book) excel.state.open(book);
    const before = shown(excel);
    let said: unknown;
    try {
      said = await act(excel, new ExcelHost());
    } catch (error) {
      said = error;
    }
    found = { before, after: shown(excel), said };
  });
  return found!;
}

/** After how many changes it is tried; the building of a whole workbook has hundreds. */
const AFTER = sampled([0, 1, 2, 3, 5, 8, 40], 2);

describe.each(DOINGS.map((one) => [one.what, one] as const))("%s", (_, doing) => {
  let wanted: Awaited<ReturnType<typeof outcome>>;
  beforeAll(async () => {
    wanted = await outcome({}, doing);
    expect(wanted.said instanceof Error).toBe(false);
    expect(wanted.after).not.toEqual(wanted.before);
  }, LONG_MS);

  test.each(AFTER)(
    "where Excel can't group it, told after %i changes: done all the same",
    async (ungroupableAfter) => {
      const { after, said } = await outcome({ ungroupableAfter }, doing);
      expect(said).toEqual(wanted.said);
      expect(after).toEqual(wanted.after);
    },
    LONG_MS,
  );

  test.each(AFTER)(
    "an error of Excel's after %i changes: a sentence, and the workbook is as it was",
    async (count) => {
      const { before, after, said } = await outcome(
        { api: "1.19", failing: { after: count, times: 1 } },
        doing,
      );
      // With fewer changes than that nothing goes wrong.
      if (said instanceof Error) {
        expect(said.message).toMatch(/^Excel refused \(GeneralException/);
        expect(after).toEqual(before);
      } else if (said === wanted.said) expect(after).toEqual(wanted.after);
      // An insertion that is refused is no failure: there is another way.
      else expect(said).toMatch(/built cell by cell/);
    },
    LONG_MS,
  );
});

test("what can't be taken back either is said, with what to do", () =>
  inExcel({ api: "1.19", failing: { after: 1, times: 1 } }, async (excel) => {
    excel.state.open(layOut(multiRoom, guestHouse));
    await excel.choose("Rooms", "A8");
    // Protected sheets that take rows give none back, and a person's password keeps it so.
    for (const sheet of excel.state.protectedSheets.keys())
      excel.state.protectedSheets.set(sheet, { insertRows: true, password: true });
    expect(await sentenceOf(new ExcelHost().addRows(2))).toMatch(/stopped in the middle.*Ctrl\+Z/);
  }));

test("a sheet that takes no rows is found before the others grow", () =>
  inExcel({}, async (excel) => {
    excel.state.open(layOut(multiRoom, guestHouse));
    excel.state.protectedSheets.set("Rooms", { insertRows: false });
    await excel.choose("Rooms", "A8");
    const before = shown(excel);
    expect(await sentenceOf(new ExcelHost().addRows(1))).toMatch(/protected.*Unprotect Sheet/);
    expect(await sentenceOf(new ExcelHost().addOutlets(SURVEY))).toMatch(/protected.*Unprotect Sheet/);
    expect(shown(excel)).toEqual(before);
  }));
