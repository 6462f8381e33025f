/** Ranges, areas and their looks, as strict as Excel's own. */
import {
  address,
  LAST_COLUMN,
  LAST_ROW,
  parseRange,
  quotedSheet,
  rangeOf,
  type Zone,
} from "../../../src/formula/address";
import { isBookError } from "../../../src/workbooks/book";
import { Loadable, officeError, strict, type Queue } from "./strict";
import type { WorkbookState } from "./workbookState";

export interface Place {
  readonly sheet: string;
  readonly zone: Zone;
}

/** What the stand-in's parts share. */
export interface Desk extends Queue {
  readonly state: WorkbookState;
  /** A cell that a formula spilled into answers with that formula, as one reading of Excel's behaviour has it. */
  readonly ghostFormulas: boolean;
  /** Notes that the workbook was changed. */
  changed(): void;
  /** Called before what Excel can never take back: refused in a group. */
  ungroupable(): void;
  /** The sheets of an .xlsx. */
  insertFile(base64: string): Promise<void>;
}

/** A1 ranges, whole columns `B:D` and whole rows `3:5`. */
export function zoneOf(text: string): Zone {
  const columns = /^\$?([A-Z]{1,3}):\$?([A-Z]{1,3})$/.exec(text);
  if (columns) {
    const [first, last] = [parseRange(`${columns[1]}1`)!, parseRange(`${columns[2]}1`)!];
    return { top: 0, bottom: LAST_ROW, left: first.left, right: last.left };
  }
  const rows = /^\$?(\d+):\$?(\d+)$/.exec(text);
  if (rows) return { top: Number(rows[1]) - 1, bottom: Number(rows[2]) - 1, left: 0, right: LAST_COLUMN };
  const zone = parseRange(text);
  if (!zone) throw officeError("InvalidArgument", `${text} is no range`);
  return zone;
}

const FONT = { bold: "boolean", italic: "boolean", size: "number", color: "string", name: "string" };
const EDGES = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"];

/** An object whose members can only be set, each with a value of its type. */
function settable(
  name: string,
  types: Readonly<Record<string, string>>,
  set: (key: string, value: unknown) => void,
): object {
  const target = {};
  for (const [key, type] of Object.entries(types)) {
    Object.defineProperty(target, key, {
      enumerable: true,
      get: () => {
        throw officeError("PropertyNotLoaded", `${name}.${key} was not loaded`);
      },
      set: (value: unknown) => {
        if (typeof value !== type) throw new Error(`${name}.${key} takes a ${type}, not ${String(value)}`);
        set(key, value);
      },
    });
  }
  return strict(name, target);
}

/** Whether cells are locked: null where some are and some are not. */
class Locks extends Loadable {
  constructor(
    private readonly desk: Desk,
    private readonly places: () => readonly Place[],
    private readonly apply: (locked: boolean) => void,
  ) {
    super(desk);
  }
  protected fetch(name: string): unknown {
    if (name !== "locked") throw officeError("InvalidArgument", `protection.${name} can't be loaded`);
    const all = this.places().flatMap(({ sheet, zone: { top, bottom, left, right } }) =>
      Array.from({ length: bottom - top + 1 }, (_, row) =>
        Array.from({ length: right - left + 1 }, (__, column) =>
          this.desk.state.isLocked(sheet, address(top + row, left + column)),
        ),
      ).flat(),
    );
    return new Set(all).size === 1 ? all[0] : null;
  }
  get locked(): boolean {
    return this.read("locked");
  }
  set locked(locked: boolean) {
    if (typeof locked !== "boolean") throw new Error("protection.locked takes a boolean");
    this.apply(locked);
  }
}

/** Whether cells have a rule, besides what can be set of one. */
class Rules extends Loadable {
  constructor(
    queue: Desk,
    private readonly kind: () => string,
    private readonly set: (key: string, value: unknown) => void,
  ) {
    super(queue);
  }
  protected fetch(name: string): unknown {
    if (name === "type") return this.kind();
    throw officeError("InvalidArgument", `dataValidation.${name} can't be loaded`);
  }
  get type(): string {
    return this.read("type");
  }
  get rule(): unknown {
    return this.read("rule");
  }
  set rule(value: unknown) {
    this.set("rule", value);
  }
  get prompt(): unknown {
    return this.read("prompt");
  }
  set prompt(value: unknown) {
    this.set("prompt", value);
  }
  get errorAlert(): unknown {
    return this.read("errorAlert");
  }
  set errorAlert(value: unknown) {
    this.set("errorAlert", value);
  }
}

/** @param places resolved when the queue comes to it */
export function formatOf(desk: Desk, places: () => readonly Place[]): object {
  const apply = (key: string, value: unknown): void =>
    desk.later(() => {
      desk.changed();
      for (const { sheet, zone } of places()) {
        const whole = zone.bottom === LAST_ROW || zone.right === LAST_COLUMN;
        if (key === "columnWidth" || key === "rowHeight")
          desk.state.log.push({ sheet, what: key, value: [rangeOf(zone), value] });
        else if (whole) throw new Error("a look of whole rows or columns is not known to the stand-in");
        else desk.state.applyLook(sheet, zone, key, value);
      }
    });
  const borders = {
    getItem(edge: string) {
      if (!EDGES.includes(edge)) throw officeError("InvalidArgument", `no edge ${edge}`);
      return settable(
        `borders ${edge}`,
        { style: "string", weight: "string", color: "string" },
        (key, value) =>
          desk.later(() => {
            for (const { sheet, zone } of places()) {
              const none =
                (edge === "InsideHorizontal" && zone.top === zone.bottom) ||
                (edge === "InsideVertical" && zone.left === zone.right);
              if (none) throw officeError("InvalidArgument", `${rangeOf(zone)} has no ${edge}`);
              drawn(desk.state, sheet, zone, edge, key, value);
            }
          }),
      );
    },
  };
  const target = Object.defineProperties(
    settable(
      "format",
      {
        horizontalAlignment: "string",
        verticalAlignment: "string",
        wrapText: "boolean",
        columnWidth: "number",
        rowHeight: "number",
      },
      apply,
    ),
    {},
  );
  const nested: Record<string, unknown> = {
    font: settable("font", FONT, apply),
    fill: settable("fill", { color: "string" }, (_, value) => apply("fill", value)),
    protection: strict("protection", new Locks(desk, places, (locked) => apply("locked", locked))),
    borders: strict("borders", borders),
  };
  return new Proxy(target, {
    get: (inside, key) => (typeof key === "string" && key in nested ? nested[key] : Reflect.get(inside, key)),
  });
}

/** A line lies on one side of each cell that it touches. */
function drawn(
  state: WorkbookState,
  sheet: string,
  zone: Zone,
  edge: string,
  key: string,
  value: unknown,
): void {
  if (key !== "weight") return;
  const { top, left, bottom, right } = zone;
  const side = (part: Zone, name: string): void => state.applyLook(sheet, part, name, value);
  if (edge === "EdgeTop") side({ ...zone, bottom: top }, "edgeTop");
  if (edge === "EdgeBottom") side({ ...zone, top: bottom }, "edgeBottom");
  if (edge === "EdgeLeft") side({ ...zone, right: left }, "edgeLeft");
  if (edge === "EdgeRight") side({ ...zone, left: right }, "edgeRight");
  if (edge === "InsideHorizontal") {
    side({ ...zone, top: top + 1 }, "edgeTop");
    side({ ...zone, bottom: bottom - 1 }, "edgeBottom");
  }
  if (edge === "InsideVertical") {
    side({ ...zone, left: left + 1 }, "edgeLeft");
    side({ ...zone, right: right - 1 }, "edgeRight");
  }
}

type Entry = string | number | boolean | null;

/** The sheet of a range, as far as it is asked for. */
class OwnSheet extends Loadable {
  constructor(
    desk: Desk,
    private readonly named: () => string,
  ) {
    super(desk);
  }
  protected fetch(name: string): unknown {
    if (name === "name") return this.named();
    throw officeError("InvalidArgument", `worksheet.${name} can't be loaded here`);
  }
  get name(): string {
    return this.read("name");
  }
}

export class RangeStandIn extends Loadable {
  private place: Place | null | undefined;
  readonly format: object;

  /** @param find where it lies, or null for a null object; asked when the queue comes to it */
  constructor(
    private readonly desk: Desk,
    find: () => Place | null,
  ) {
    super(desk);
    desk.later(() => (this.place = find()));
    this.format = formatOf(desk, () => [this.at]);
  }

  private get at(): Place {
    if (!this.place) throw officeError("ItemNotFound", "The requested resource doesn't exist.");
    return this.place;
  }

  /** For names.add, which takes a range. */
  resolved(): Place {
    return this.at;
  }

  get isNullObject(): boolean {
    if (this.place === undefined) throw officeError("PropertyNotLoaded", "isNullObject needs context.sync()");
    return this.place === null;
  }

  protected fetch(name: string): unknown {
    if (this.place === null) return undefined;
    const { sheet, zone } = this.at;
    const { state, ghostFormulas } = this.desk;
    const each = <T>(make: (at: string) => T): T[][] =>
      Array.from({ length: zone.bottom - zone.top + 1 }, (_, row) =>
        Array.from({ length: zone.right - zone.left + 1 }, (_, column) =>
          make(address(zone.top + row, zone.left + column)),
        ),
      );
    switch (name) {
      case "address":
        return `${quotedSheet(sheet)}!${rangeOf(zone)}`;
      case "rowIndex":
        return zone.top;
      case "columnIndex":
        return zone.left;
      case "rowCount":
        return zone.bottom - zone.top + 1;
      case "columnCount":
        return zone.right - zone.left + 1;
      case "values":
        return each((at) => {
          const shown = state.shown(sheet, at);
          return isBookError(shown) ? this.errorText(shown.error, state.oddities.errorTextsInValues) : shown;
        });
      case "text":
        return each((at) => {
          const shown = state.shown(sheet, at);
          return isBookError(shown) ? this.errorText(shown.error, true) : String(shown);
        });
      case "valueTypes":
        return each((at) => {
          const shown = state.shown(sheet, at);
          if (isBookError(shown)) return "Error";
          if (shown === "") return "Empty";
          return { number: "Double", string: "String", boolean: "Boolean" }[typeof shown as "string"];
        });
      case "formulas": {
        const ghosts = ghostFormulas ? ghostsOf(state, sheet) : new Map<string, string>();
        return each((at) => {
          const formula = state.formula(sheet, at) ?? ghosts.get(at);
          if (formula !== undefined) return `=${formula}`;
          const shown = state.shown(sheet, at);
          return isBookError(shown) ? shown.error : shown;
        });
      }
      case "numberFormat": {
        const { looks, sheets } = state.book;
        const { cells } = sheets.find((one) => one.name === sheet)!;
        return each((at) => looks[cells[at]?.look ?? -1]?.format ?? "General");
      }
      default:
        throw officeError("InvalidArgument", `Range.${name} can't be loaded`);
    }
  }

  private errorText(code: string, inLanguage: boolean | undefined): string {
    return (inLanguage && this.desk.state.oddities.errorTexts?.[code]) || code;
  }

  clear(applyTo: string): void {
    if (applyTo !== "Contents") throw new Error("only contents are cleared here");
    this.desk.later(() => {
      this.desk.changed();
      this.desk.state.empty(this.at.sheet, this.at.zone);
    });
  }

  calculate(): void {
    this.desk.later(() => this.desk.state.dirty());
  }

  get text(): unknown[][] {
    return this.read("text");
  }
  get address(): string {
    return this.read("address");
  }
  get rowIndex(): number {
    return this.read("rowIndex");
  }
  get columnIndex(): number {
    return this.read("columnIndex");
  }
  get rowCount(): number {
    return this.read("rowCount");
  }
  get columnCount(): number {
    return this.read("columnCount");
  }
  get values(): unknown[][] {
    return this.read("values");
  }
  set values(matrix: Entry[][]) {
    this.write(matrix, (sheet, at, value) => this.desk.state.enter(sheet, at, value));
  }
  get valueTypes(): unknown[][] {
    return this.read("valueTypes");
  }
  get formulas(): unknown[][] {
    return this.read("formulas");
  }
  set formulas(matrix: Entry[][]) {
    this.write(matrix, (sheet, at, value) => this.desk.state.enter(sheet, at, value));
  }
  get numberFormat(): unknown[][] {
    return this.read("numberFormat");
  }
  set numberFormat(matrix: Entry[][]) {
    this.write(matrix, (sheet, at, value) =>
      this.desk.state.applyLook(sheet, parseRange(at)!, "format", value),
    );
  }

  /** `null` leaves a cell as it is; a matrix of another shape is refused whole. */
  private write(
    matrix: Entry[][],
    set: (sheet: string, at: string, value: string | number | boolean) => void,
  ): void {
    this.desk.later(() => {
      const { sheet, zone } = this.at;
      const rows = zone.bottom - zone.top + 1;
      const columns = zone.right - zone.left + 1;
      if (matrix.length !== rows || matrix.some((row) => row.length !== columns)) {
        throw officeError("InvalidArgument", "The array doesn't match the size of the range.");
      }
      this.desk.changed();
      matrix.forEach((row, down) =>
        row.forEach((value, across) => {
          if (value === undefined) throw officeError("InvalidArgument", "undefined in the array");
          if (value !== null) set(sheet, address(zone.top + down, zone.left + across), value);
        }),
      );
    });
  }

  get worksheet(): object {
    return (this.own ??= strict("Range.worksheet", new OwnSheet(this.desk, () => this.at.sheet)));
  }
  private own: object | undefined;

  private part(make: (zone: Zone) => Zone): RangeStandIn {
    return strict(
      "Range",
      new RangeStandIn(this.desk, () => ({ sheet: this.at.sheet, zone: make(this.at.zone) })),
    );
  }
  getLastRow(): RangeStandIn {
    return this.part((zone) => ({ ...zone, top: zone.bottom }));
  }
  getResizedRange(rows: number, columns: number): RangeStandIn {
    return this.part(({ top, left, bottom, right }) => ({
      ...{ top, left },
      bottom: bottom + rows,
      right: right + columns,
    }));
  }
  getEntireRow(): RangeStandIn {
    return this.part((zone) => ({ ...zone, left: 0, right: LAST_COLUMN }));
  }
  getCell(row: number, column: number): RangeStandIn {
    return this.part(({ top, left }) => ({
      top: top + row,
      bottom: top + row,
      left: left + column,
      right: left + column,
    }));
  }

  insert(shift: string): object {
    if (shift !== "Down") throw new Error("only rows are inserted here");
    this.desk.later(() => {
      const { sheet, zone } = this.at;
      if (zone.left !== 0 || zone.right !== LAST_COLUMN) throw new Error("only whole rows are inserted here");
      this.desk.changed();
      this.desk.state.insertRows(sheet, zone.top, zone.bottom - zone.top + 1);
    });
    return this;
  }

  delete(shift: string): void {
    if (shift !== "Up") throw new Error("only rows are deleted here");
    this.desk.later(() => {
      const { sheet, zone } = this.at;
      if (zone.left !== 0 || zone.right !== LAST_COLUMN) throw new Error("only whole rows are deleted here");
      this.desk.changed();
      this.desk.state.deleteRows(sheet, zone.top, zone.bottom - zone.top + 1);
    });
  }

  select(): void {
    this.desk.later(() => {
      const { sheet, zone } = this.at;
      this.desk.state.active = { sheet, at: address(zone.top, zone.left) };
    });
  }

  getSpillingToRangeOrNullObject(): RangeStandIn {
    return strict(
      "Range",
      new RangeStandIn(this.desk, () => {
        const { sheet, zone } = this.at;
        if (zone.top !== zone.bottom || zone.left !== zone.right)
          throw officeError("InvalidArgument", "one cell only");
        const spill = this.desk.state.spillOf(sheet, rangeOf(zone));
        return spill ? { sheet, zone: spill } : null;
      }),
    );
  }

  get dataValidation(): object {
    const log = (what: string, value: unknown): void =>
      this.desk.later(() => {
        this.desk.changed();
        this.desk.state.log.push({
          sheet: this.at.sheet,
          what,
          value: { range: rangeOf(this.at.zone), ...(value as object) },
        });
      });
    const short = (text: unknown, most: number): void => {
      if (typeof text !== "string" || text.length > most)
        throw officeError("InvalidArgument", `too long: ${String(text)}`);
    };
    const kind = (): string => {
      const { sheet, zone } = this.at;
      const own = this.desk.state.sheet(sheet)!.validations.map(({ range }) => range);
      const set = this.desk.state.log
        .filter((one) => one.sheet === sheet && one.what === "rule")
        .map(({ value }) => (value as { range: string }).range);
      return [...own, ...set].includes(rangeOf(zone)) ? "Custom" : "None";
    };
    return strict(
      "dataValidation",
      new Rules(this.desk, kind, (key, value) => {
        if (typeof value !== "object") throw new Error(`dataValidation.${key} takes an object`);
        const { title, message, list } = value as {
          title?: string;
          message?: string;
          list?: { source: string };
        };
        if (key !== "rule") {
          short(title, 32);
          short(message, 255);
        } else if (Object.keys(value as object).length !== 1)
          throw officeError("InvalidArgument", "one kind of rule");
        if (list) short(list.source, 255);
        log(key, value);
      }),
    );
  }

  get conditionalFormats(): object {
    const { desk } = this;
    const at = (): Place => this.at;
    return strict("conditionalFormats", {
      add(type: string) {
        if (type !== "CellValue") throw new Error(`a mark of type ${type} is not known to the stand-in`);
        const mark: Record<string, unknown> = {};
        const set = (key: string, value: unknown): void => void (mark[key] = value);
        desk.later(() => {
          desk.changed();
          desk.state.log.push({
            sheet: at().sheet,
            what: "mark",
            value: { range: rangeOf(at().zone), ...mark },
          });
        });
        const cellValue = settable("cellValue", { rule: "object" }, set);
        const format = strict("cellValue.format", {
          font: settable("font", { bold: "boolean", italic: "boolean", color: "string" }, set),
          fill: settable("fill", { color: "string" }, (_, value) => set("fill", value)),
        });
        return strict("ConditionalFormat", {
          cellValue: new Proxy(cellValue, {
            get: (inside, key) => (key === "format" ? format : Reflect.get(inside, key)),
          }),
        });
      },
    });
  }
}

/** Every cell that a formula of the sheet spills into, with that formula. */
function ghostsOf(state: WorkbookState, sheet: string): Map<string, string> {
  const ghosts = new Map<string, string>();
  const computed = state.computed().sheets.find(({ name }) => name === sheet)!;
  for (const [at, { formula, spill }] of Object.entries(computed.cells)) {
    if (formula === undefined || !spill) continue;
    const { top, left } = parseRange(at)!;
    for (let row = top; row < top + spill.rows; row++) {
      for (let column = left; column < left + spill.columns; column++)
        ghosts.set(address(row, column), formula);
    }
  }
  return ghosts;
}
