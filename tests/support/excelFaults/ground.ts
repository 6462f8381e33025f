/** What the cases of faults share: a workbook in the stand-in, what the pane says, what is seen afterwards. */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { address, parseRange, type Zone } from "../../../src/formula/address";
import { HostTrouble } from "../../../src/pane/host";
import { sentenceOf } from "../../../src/pane/trouble";
import { review } from "../../../src/review/review";
import type { Finding } from "../../../src/review/finding";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedValue } from "../../../src/workbooks/named";
import type { Book } from "../../../src/workbooks/book";
import { ExcelStandIn, type StandInOptions } from "../excelStandIn";
import { officeError } from "../excel/strict";
import { referencePrice, type Job } from "../referencePrice";

export type Case = () => Promise<void>;
export type Cases = Readonly<Record<string, Case>>;

export const demonstration = (): Book => layOut(multiRoom, guestHouse);
/** The price of the demonstration by a pricing that is written apart from the product. */
export const PRICE = Number(referencePrice(guestHouse as Job).total);

/** @param book open in Excel; an empty workbook where there is none */
export async function inExcel(
  book: Book | undefined,
  options: StandInOptions,
  work: (excel: ExcelStandIn, host: ExcelHost) => Promise<void>,
): Promise<void> {
  const excel = new ExcelStandIn(options);
  const remove = excel.install();
  try {
    if (book) excel.state.open(book);
    await work(excel, new ExcelHost());
  } finally {
    remove();
  }
}

/** What the pane's last line says; a mistake of ours shows as one. */
export async function said(work: Promise<unknown>): Promise<string> {
  try {
    const told = await work;
    return typeof told === "string" ? told : `Done: ${JSON.stringify(told) ?? ""}`;
  } catch (error) {
    const kind = error instanceof HostTrouble ? "" : `A MISTAKE OF OURS (${String(error)}). `;
    return `${kind}Not done. ${sentenceOf(error)}`;
  }
}

/** Every thing that has to be said, and nothing that must not. */
export function says(sentence: string, musts: readonly RegExp[], nots: readonly RegExp[] = []): void {
  const never = [/A MISTAKE OF OURS/, /TypeError|undefined|\bNaN\b/, ...nots];
  expect({
    sentence,
    missing: musts.filter((one) => !one.test(sentence)).map(String),
    wrong: never.filter((one) => one.test(sentence)).map(String),
  }).toEqual({ sentence, missing: [], wrong: [] });
}

/** All of the workbook that a person could miss. */
export const seen = ({ state }: ExcelStandIn): unknown =>
  JSON.parse(
    JSON.stringify({
      sheets: state.book.sheets.map(({ name, cells }) => [
        name,
        state.visibility(name),
        Object.entries(cells)
          .flatMap(([at, { value, formula }]) =>
            (value ?? formula) === undefined ? [] : [[at, value, formula]],
          )
          .sort(),
      ]),
      names: [...state.book.names].sort((a, b) => (a.name < b.name ? -1 : 1)),
      sheetNames: state.sheetNames,
      properties: [...state.properties].sort(),
      guards: [...state.protectedSheets].sort(),
      manual: state.manual,
      unknown: [...state.forgotten].sort(),
    }),
  );

export const sheetNames = ({ state }: ExcelStandIn): string[] => state.book.sheets.map(({ name }) => name);

export function zoneOf({ state }: ExcelStandIn, name: string): Zone & { readonly sheet: string } {
  const named = state.book.names.find((one) => one.name === name)!;
  return { ...parseRange(named.range)!, sheet: named.sheet };
}

/** Rows of the outlets' block and of its mirror, thin rows among them. */
export const heights = (excel: ExcelStandIn): number[] =>
  ["rooms_outlet", "commission_outlet"].map((name) => {
    const { top, bottom } = zoneOf(excel, name);
    return bottom - top + 1;
  });

/** Every name over the outlets' rows ends and begins with the others. */
export function rowsAgree(excel: ExcelStandIn): void {
  for (const block of ["rooms", "commission"]) {
    const zones = excel.state.book.names
      .filter(({ name }) => new RegExp(`^${block}_[a-z_]+$`).test(name))
      .map(({ range }) => parseRange(range)!)
      .filter(({ top, bottom }) => bottom - top > 3);
    expect(new Set(zones.map(({ top, bottom }) => `${top}:${bottom}`)).size).toBe(1);
  }
}

/** Chooses the first outlet's first cell. */
export async function atFirstOutlet(excel: ExcelStandIn): Promise<void> {
  const { sheet, top, left } = zoneOf(excel, "rooms_receiver");
  await excel.choose(sheet, address(top + 1, left));
}

export const withPassword = (excel: ExcelStandIn, sheet: string): void =>
  void excel.state.protectedSheets.set(sheet, { insertRows: false, password: true });

/** The person takes the protection off by hand. */
export const freed = (excel: ExcelStandIn, sheet: string): void =>
  void excel.state.protectedSheets.delete(sheet);

export const priceOf = async (host: ExcelHost): Promise<unknown> =>
  namedValue(await host.readBook(), "quote_total");

/** The pane's Check. */
export const checked = async (host: ExcelHost): Promise<Finding[]> => review(await host.readBook());

export const inWords = (findings: readonly Finding[]): string =>
  findings
    .map(({ message, effect, remedy, expected }) => [message, expected, effect, remedy].join(" "))
    .join("\n");

export const failing = (code: string, message = "It was refused."): never => {
  throw officeError(code, message);
};
