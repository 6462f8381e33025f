/** The rows around the selected cell as a table that a screen reader can walk through. */
import { address, parseAddress } from "../../formula/address";
import { blockTable, type BlockTable, type TableHead, type TableRow } from "../blockTable";
import { button, make, paragraph, setText } from "../dom";
import { scrolled } from "../surveyTables";
import { placeInWords, type View } from "../view";

/** A longer table is shown in parts. */
export const MOST_ROWS = 200;

export const readTable: View = {
  id: "read",
  label: "Read as table",
  title: "Read as table",
  build: ({ host, run, onSelection }) => {
    const result = make("div", {});
    const goTo = (sheet: string, at: string): void =>
      void run(`Going to ${sheet} ${at}…`, async () => {
        await host.goTo(sheet, at);
        return `${sheet} ${at} is selected.`;
      });
    const read = (): void =>
      void run("Reading the rows…", async () => {
        const { sheet, at } = await host.selection();
        const table = blockTable(await host.readBook(), sheet, at);
        if (typeof table === "string") {
          result.replaceChildren();
          return table;
        }
        const place = parseAddress(at)!;
        const of = (first: number): void => {
          const shown = tableShown(table, first, place.column, (row, column) =>
            goTo(sheet, address(row, column)),
          );
          result.replaceChildren(...shown, ...otherRows(table, first, of));
        };
        // The part in which the selected row is.
        const index = table.rows.findIndex(({ row }) => row === place.row);
        of(Math.floor(Math.max(0, index) / MOST_ROWS) * MOST_ROWS);
        return `${table.caption} is shown as a table: ${rowsInWords(table.rows.length)}.`;
      });
    const again = button("Read the rows around it", read, "pane-button pane-first");
    onSelection((selection) => setText(again, `Read the rows around ${placeInWords(selection)}`));
    return {
      body: [
        paragraph(
          "The block of the selected cell, as its cells show it, for whoever reads by ear or by keyboard. It stays as it was read until you read again.",
        ),
        again,
        result,
      ],
      shown: read,
    };
  },
};

const rowsInWords = (count: number): string => (count === 1 ? "1 row" : `${count} rows`);

function tableShown(
  { caption, heads, rows, blankRows }: BlockTable,
  first: number,
  selected: number,
  goTo: (row: number, column: number) => void,
): HTMLElement[] {
  if (rows.length === 0)
    return [make("h2", {}, caption), paragraph(`Nothing is filled in yet; ${rowsInWords(blankRows)} ready.`)];
  const part = rows.slice(first, first + MOST_ROWS);
  const column = make(
    "select",
    { id: "pane-read-column", className: "pane-input" },
    ...heads.map(({ text, unit, column: value }) =>
      make("option", { value: String(value), selected: value === selected }, headInWords(text, unit)),
    ),
  );
  const table = make(
    "table",
    { className: "survey-table" },
    make("caption", { className: "pane-caption" }, caption),
    make("thead", {}, make("tr", {}, ...heads.map(headShown))),
    make("tbody", {}, ...part.map((row) => rowShown(row, (to) => goTo(to, Number(column.value))))),
  );
  const behind = blankRows > 0 ? ` ${rowsInWords(blankRows)} more ready, nothing in them.` : "";
  return [
    paragraph(`Rows ${first + 1} to ${first + part.length} of ${rows.length}.${behind}`),
    make("label", { htmlFor: column.id }, "The buttons of the rows go to the column"),
    column,
    scrolled(caption, table),
  ];
}

const headInWords = (text: string, unit: string): string => (unit === "" ? text : `${text} (${unit})`);

const headShown = ({ text, unit, asked }: TableHead): HTMLElement =>
  make("th", { scope: "col" }, `${headInWords(text, unit)}${asked ? ", to fill in" : ""}`);

function rowShown({ row, cells }: TableRow, goTo: (row: number) => void): HTMLElement {
  const [name, ...others] = cells;
  const head = button(name?.text || `Row ${row + 1}`, () => goTo(row), "pane-button pane-jump");
  head.ariaLabel = `${head.textContent}, go to row ${row + 1}`;
  return make(
    "tr",
    {},
    make("th", { scope: "row" }, head),
    ...others.map(({ text, asked }) =>
      make("td", { dir: "auto" }, text || (asked ? make("i", {}, "blank, to fill in") : "")),
    ),
  );
}

function otherRows({ rows }: BlockTable, first: number, show: (first: number) => void): HTMLElement[] {
  const to = (label: string, start: number): HTMLElement[] =>
    start >= 0 && start < rows.length ? [button(label, () => show(start))] : [];
  const ways = [
    ...to(`The ${MOST_ROWS} rows before`, first - MOST_ROWS),
    ...to(`The next rows`, first + MOST_ROWS),
  ];
  return ways.length > 0 ? [make("div", { className: "pane-row" }, ...ways)] : [];
}
