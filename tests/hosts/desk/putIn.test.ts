/** What was typed in a window that had lost its job, put into the job as it is now. Every expected cell is worked out by hand. */
import * as library from "@odoo/o-spreadsheet";
import type { Change, JobContent, JobDocument } from "../../../src/jobs/content";
import { putIn, type PutIn } from "../../../src/hosts/desk/page/putIn";
import { replayed, type Transport } from "../../../src/hosts/desk/page/replayed";

const SHEET = "s";
const empty = (cells: Record<string, string>): JobContent => {
  const document = {
    ...new library.Model({
      sheets: [{ id: SHEET, name: "Rooms", colNumber: 5, rowNumber: 20, cells }],
    } as never).exportData(),
    revisionId: "start",
  };
  return { document: document as unknown as JobDocument, changes: [] };
};

/** A window that types into the job as it is, as the page does. */
class Typist {
  readonly typed: Change[] = [];
  readonly model;
  private listener: ((message: Change) => void) | undefined;

  constructor(job: JobContent) {
    const transport: Transport = {
      sendMessage: async (message) => {
        if (message.nextRevisionId === undefined) return;
        this.typed.push(JSON.parse(JSON.stringify(message)) as Change);
        this.listener?.(message);
      },
      onNewMessage: (_id, listener) => void (this.listener = listener),
      leave: () => undefined,
    };
    this.model = replayed(job, transport).model;
  }
  private do(type: string, payload: object): this {
    expect(this.model.dispatch(type as never, payload as never).isSuccessful).toBe(true);
    return this;
  }
  type(row: number, content: string): this {
    return this.do("UPDATE_CELL", { sheetId: SHEET, col: 0, row, content });
  }
  insertAbove(row: number): this {
    return this.do("ADD_COLUMNS_ROWS", {
      dimension: "ROW",
      base: row,
      position: "before",
      quantity: 1,
      sheetId: SHEET,
      sheetName: "Rooms",
    });
  }
  remove(row: number): this {
    return this.do("REMOVE_COLUMNS_ROWS", {
      dimension: "ROW",
      elements: [row],
      sheetId: SHEET,
      sheetName: "Rooms",
    });
  }
  clear(row: number): this {
    return this.do("DELETE_CONTENT", {
      sheetId: SHEET,
      target: [{ top: row, bottom: row, left: 0, right: 0 }],
    });
  }
  undo(): this {
    return this.do("REQUEST_UNDO", {});
  }
}

const rowsOf = ({ model }: Typist): string[] =>
  [0, 1, 2, 3].map(
    (row) =>
      (model.getters.getCell({ sheetId: SHEET, col: 0, row } as never) as { content?: string } | undefined)
        ?.content ?? "",
  );

/** The first column after my commands were done in the job with theirs. */
function together(common: JobContent, theirs: Typist, mine: Typist): PutIn & { rows: string[] } {
  const found = putIn(common, theirs.typed, mine.typed);
  if (typeof found === "string") throw new Error(found);
  const job = new Typist({ ...common, changes: [...common.changes, ...theirs.typed] });
  for (const command of found.commands) job.model.dispatch(command.type as never, command as never);
  return { ...found, rows: rowsOf(job) };
}

const COMMON = { A1: "one", A2: "two", A3: "three" };

test("different cells: both are there, nothing is asked", () => {
  const common = empty(COMMON);
  const found = together(common, new Typist(common).type(0, "1"), new Typist(common).type(1, "2"));
  expect(found).toMatchObject({ rows: ["1", "2", "three", ""], clashes: [], homeless: [] });
});

test("a row put in above: the edit goes down with its row", () => {
  const common = empty(COMMON);
  const found = together(common, new Typist(common).insertAbove(0), new Typist(common).type(1, "2"));
  expect(found).toMatchObject({ rows: ["", "one", "2", "three"], clashes: [] });
});

test("one cell by both, before and after a row was put in above it: both values are shown, each time", () => {
  const common = empty(COMMON);
  const clash = { sheet: "Rooms", cell: "A3", theirs: "8", mine: "7" };
  for (const theirs of [
    new Typist(common).type(1, "8").insertAbove(0),
    new Typist(common).insertAbove(0).type(2, "8"),
  ])
    expect(together(common, theirs, new Typist(common).type(1, "7"))).toMatchObject({
      rows: ["", "one", "7", "three"],
      clashes: [clash],
    });
});

test("a cell that they emptied, or whose edit they took back", () => {
  const common = empty(COMMON);
  expect(together(common, new Typist(common).clear(1), new Typist(common).type(1, "7")).clashes).toEqual([
    { sheet: "Rooms", cell: "A2", theirs: "", mine: "7" },
  ]);
  expect(
    together(common, new Typist(common).type(1, "8").undo(), new Typist(common).type(1, "7")),
  ).toMatchObject({ rows: ["one", "7", "three", ""], clashes: [] });
});

test("a row that they removed: what was typed in it is named, and nothing else changes", () => {
  const common = empty(COMMON);
  const found = together(common, new Typist(common).remove(1), new Typist(common).type(1, "7").type(2, "9"));
  expect(found.homeless).toEqual(["“7” in Rooms A2"]);
  expect(found.rows).toEqual(["one", "9", "", ""]);
});

test("what has reached the job already is not done twice", () => {
  const common = empty(COMMON);
  const mine = new Typist(common).insertAbove(0);
  const [first] = mine.typed;
  mine.type(1, "typed after");
  // The answer to the first was lost; somebody else typed behind it.
  const there = new Typist({ ...common, changes: [first!] });
  there.type(3, "theirs");
  const theirs = [first!, ...there.typed];
  const found = putIn(common, theirs, mine.typed);
  if (typeof found === "string") throw new Error(found);
  expect(found.commands).toHaveLength(1);
  expect(found.commands[0]).toMatchObject({ type: "UPDATE_CELL", row: 1, content: "typed after" });
});

test("a taking back of what was there before is refused with what to do", () => {
  const common = empty(COMMON);
  const before = new Typist(common).type(0, "1");
  const after = { ...common, changes: before.typed };
  before.undo();
  expect(putIn(after, [], before.typed.slice(1))).toMatch(/taking back an earlier edit.*Compare the two/);
});
