/**
 * One job of an estimator's, done through the pane's host interface: every
 * host must bring it to the same figures.
 */
import { HostTrouble, type PaneHost } from "../../src/pane/host";
import { address, parseRange } from "../../src/formula/address";
import { isBookError, type Book, type BookValue } from "../../src/workbooks/book";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { callsUs } from "../../src/formula/callsUs";
import { layOut } from "../../src/workbooks/layOut";
import { referencePrice, type Job } from "../support/referencePrice";

type Row = Readonly<Record<string, number | string>>;

/** Shorter than a reel, longer than any run of the demonstration. */
const LONGER_RUN_M = 90;

/** A host, and what a person does beside the pane. */
export interface HostUnderTest {
  readonly host: PaneHost;
  type(sheet: string, at: string, value: BookValue): Promise<void> | void;
  choose(sheet: string, at: string): Promise<void> | void;
  /** Puts a cell that calls us at the error of an unknown name; absent where a host never meets it. */
  forget?(sheet: string, at: string): Promise<void> | void;
  /** Copies handed over so far, as files. */
  copies(): Promise<readonly Uint8Array[]> | readonly Uint8Array[];
}

export interface ScenarioResult {
  readonly total: number;
  readonly totalAfterLongerRun: number;
  readonly rowsAdded: string;
  readonly outletsAfterOneMore: number;
  readonly totalAfterOneMore: number;
  readonly failing: readonly string[];
  readonly failingAfterNonsense: readonly string[];
  readonly enteredAgain: number;
  readonly officeCopyTotal: number;
  readonly officeCopyCallsUs: boolean;
  readonly sealedCopyFormulas: number;
}

const placeOf = (book: Book, name: string) => {
  const found = book.names.find((one) => one.name === name);
  if (!found) throw new Error(`the workbook has no cells named ${name}`);
  return { sheet: found.sheet, zone: parseRange(found.range)! };
};

const number = (book: Book, name: string): number => {
  const value = namedValue(book, name);
  if (typeof value !== "number") throw new Error(`${name} is ${JSON.stringify(value)}, not a number`);
  return value;
};

/** The checks that do not pass, in words. */
export function failingChecks(book: Book): string[] {
  const { sheet, zone } = placeOf(book, "checks_result");
  const checks = book.sheets.find(({ name }) => name === sheet)!;
  return namedColumn(book, "checks_result").flatMap((result, index) =>
    result === "ok" || result === "note"
      ? []
      : [String(checks.cells[address(zone.top + index, 0)]?.value ?? "?")],
  );
}

const formulasOf = (book: Book): string[] =>
  book.sheets.flatMap(({ cells }) =>
    Object.values(cells).flatMap(({ formula }) => (formula === undefined ? [] : [formula])),
  );

export async function runScenario(under: HostUnderTest): Promise<ScenarioResult> {
  const { host } = under;
  const job = { book: layOut(multiRoom, guestHouse) };
  await (host.startHere ? host.startHere(job) : host.startWorkbook(job));
  const started = await host.readBook();
  const total = number(started, "quote_total");
  const failing = failingChecks(started);

  // A longer run in the first outlet's row costs more cable.
  const runs = placeOf(started, "rooms_run");
  const firstRow = runs.zone.top + 1;
  const firstRun = address(firstRow, runs.zone.left);
  await under.type(runs.sheet, firstRun, LONGER_RUN_M);
  const longer = await host.readBook();
  const totalAfterLongerRun = number(longer, "quote_total");

  // Nonsense in the same cell: the checks say so.
  await under.type(runs.sheet, firstRun, "far");
  const failingAfterNonsense = failingChecks(await host.readBook());
  await under.type(runs.sheet, firstRun, LONGER_RUN_M);

  // Rows for more outlets; a copy of the first outlet in the first new one.
  await under.choose(runs.sheet, firstRun);
  const rowsAdded = await host.addRows(3);
  const grown = await host.readBook();
  const names = ["receiver", "quantity", "from", "cable", "run", "plate"];
  const last = placeOf(grown, "rooms_run").zone.bottom - 1;
  await typeOutlet(under, grown, last, "X1", (key) => firstOf(grown, key), names);
  const more = await host.readBook();

  // A cell of ours that Excel forgot is entered again.
  const anchor = formulaOfOurs(more);
  await under.forget?.(anchor.sheet, anchor.at);
  const enteredAgain = await host.enterOursAgain();
  const after = await host.readBook();
  await host.goTo(anchor.sheet, anchor.at);
  const chosen = await host.selection();
  if (chosen.formula !== anchor.formula) throw new Error(`the chosen cell holds ${String(chosen.formula)}`);
  if (isBookError(namedValue(after, "quote_total"))) throw new Error("the total did not come back");

  await host.handOverCopy("office");
  await host.handOverCopy("sealed");
  const [office, sealed] = await Promise.all(
    (await under.copies()).slice(-2).map((bytes) => readXlsx(bytes)),
  );
  return {
    total,
    totalAfterLongerRun,
    rowsAdded,
    outletsAfterOneMore: number(after, "count_outlets"),
    totalAfterOneMore: number(after, "quote_total"),
    failing,
    failingAfterNonsense,
    enteredAgain,
    officeCopyTotal: number(office!, "quote_total"),
    officeCopyCallsUs: formulasOf(office!).some(callsUs),
    sealedCopyFormulas: formulasOf(sealed!).length,
  };
}

const firstOf = (book: Book, key: string): BookValue | undefined => {
  const value = namedColumn(book, `rooms_${key}`)[1];
  return isBookError(value) ? undefined : value;
};

async function typeOutlet(
  under: HostUnderTest,
  book: Book,
  row: number,
  outlet: string,
  value: (key: string) => BookValue | undefined,
  keys: readonly string[],
): Promise<void> {
  const put = async (key: string, content: BookValue | undefined): Promise<void> => {
    if (content === undefined || content === "") return;
    const { sheet, zone } = placeOf(book, `rooms_${key}`);
    await under.type(sheet, address(row, zone.left), content);
  };
  await put("outlet", outlet);
  for (const key of keys) await put(key, value(key));
}

function formulaOfOurs(book: Book): { sheet: string; at: string; formula: string } {
  for (const { name, cells } of book.sheets) {
    for (const [at, { formula }] of Object.entries(cells)) {
      if (formula !== undefined && callsUs(formula)) return { sheet: name, at, formula };
    }
  }
  throw new Error("no cell calls us");
}

/**
 * What every host must come to. The totals are those of an independent price
 * of the same job; the mistakes are those that the demonstration's own file
 * says were made on purpose.
 */
export function expectScenario(result: ScenarioResult): void {
  const priced = (change: (rooms: Row[]) => Row[]): number => {
    const rooms = change((guestHouse.blocks!.rooms ?? []).map((row) => ({ ...row })));
    const job = { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } };
    return Number(referencePrice(job as unknown as Job).total);
  };
  const longer = (rooms: Row[]): Row[] => [{ ...rooms[0]!, run: LONGER_RUN_M }, ...rooms.slice(1)];
  const oneMore = (rooms: Row[]): Row[] => [...longer(rooms), { ...longer(rooms)[0]!, outlet: "X1" }];
  expect(result.total).toBeCloseTo(
    priced((rooms) => rooms),
    9,
  );
  expect(result.totalAfterLongerRun).toBeCloseTo(priced(longer), 9);
  expect(result.outletsAfterOneMore).toBe(guestHouse.blocks!.rooms!.length + 1);
  expect(result.totalAfterOneMore).toBeCloseTo(priced(oneMore), 9);
  expect(result.totalAfterOneMore).toBeGreaterThan(result.totalAfterLongerRun);
  expect(result.totalAfterLongerRun).toBeGreaterThan(result.total);
  expect(result.rowsAdded).toMatch(/^3 rows/);
  expect(result.failing.join("; ")).toMatch(/Outlets too weak.*short of volts/s);
  expect(result.failingAfterNonsense.join("; ")).toMatch(/cannot be worked out/);
  expect(result.officeCopyTotal).toBe(result.totalAfterOneMore);
  expect(result.officeCopyCallsUs).toBe(false);
  expect(result.sealedCopyFormulas).toBe(0);
}

/** The sentence with which work is refused. */
export async function sentenceOf(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof HostTrouble) return error.message;
    throw error;
  }
  throw new Error("nothing was refused");
}
