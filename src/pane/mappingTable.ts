/**
 * The columns of a file and what each is taken for, to be changed in place: used by the pane's views and by the
 * desk's dialogs. It shows what it is given, and tells what a person chooses; whoever reads the file reads it anew.
 */
import type { ColumnChoice, ColumnMeaning, MappedColumn } from "../workbooks/imported/columns";
import { make } from "./dom";

export interface MappingTable {
  readonly element: HTMLElement;
  /** Other columns, or other meanings of the same. The focus stays where it was. */
  show(columns: readonly MappedColumn[]): void;
}

const NOT_USED = "not used";

/** @param chosen what a person chooses for a column */
export function mappingTable(
  meanings: readonly ColumnMeaning[],
  chosen: (column: number, choice: ColumnChoice) => void,
): MappingTable {
  const body = make("tbody");
  const element = make(
    "table",
    { className: "survey-table mapping-table" },
    make(
      "thead",
      {},
      make(
        "tr",
        {},
        ...["In the file", "For example", "Taken for", "In"].map((text) =>
          make("th", { scope: "col" }, text),
        ),
      ),
    ),
    body,
  );
  let rows = new Map<number, MappingRow>();
  let shown = "";
  return {
    element,
    show: (columns) => {
      // The rows themselves stay while the file does: a select that a person has opened is not taken away.
      const now = JSON.stringify(columns.map(({ column, head, samples }) => [column, head, samples]));
      if (now !== shown) {
        rows = new Map(columns.map((one) => [one.column, mappingRow(one, meanings, chosen)]));
        body.replaceChildren(...[...rows.values()].map(({ row }) => row));
        shown = now;
      }
      for (const one of columns) rows.get(one.column)!.show(one);
    },
  };
}

interface MappingRow {
  readonly row: HTMLElement;
  show(column: MappedColumn): void;
}

function mappingRow(
  { column, head, samples }: MappedColumn,
  meanings: readonly ColumnMeaning[],
  chosen: (column: number, choice: ColumnChoice) => void,
): MappingRow {
  const select = make(
    "select",
    { className: "mapping-choice", ariaLabel: `“${head}” is taken for` },
    make("option", { value: "" }, NOT_USED),
    ...meanings.map(({ key, name, needed }) =>
      make("option", { value: key }, needed ? `${name} (needed)` : name),
    ),
  );
  const unit = make("select", { className: "mapping-choice", ariaLabel: `Unit of “${head}”` });
  const unitsOf = (key: string): readonly string[] => meanings.find((one) => one.key === key)?.units ?? [];
  const tell = (): void => {
    const key = select.value;
    const units = unitsOf(key);
    const named = units.includes(unit.value) ? unit.value : undefined;
    chosen(column, { ...(key !== "" && { key }), ...(named !== undefined && { unit: named }) });
  };
  select.addEventListener("change", tell);
  unit.addEventListener("change", tell);
  const row = make(
    "tr",
    {},
    make("th", { scope: "row" }, head),
    make("td", { className: "mapping-samples" }, samples.join(" · ")),
    make("td", {}, select),
    make("td", {}, unit),
  );
  return {
    row,
    show: ({ key = "", unit: own }) => {
      const units = unitsOf(key);
      select.value = key;
      row.classList.toggle("mapping-unused", key === "");
      unit.hidden = units.length === 0;
      if ([...unit.options].map(({ value }) => value).join("|") !== units.join("|"))
        unit.replaceChildren(...units.map((one) => make("option", { value: one }, one)));
      unit.value = own ?? units[0] ?? "";
    },
  };
}
