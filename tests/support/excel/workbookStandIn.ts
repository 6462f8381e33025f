/** The workbook, its sheets and its names, as strict as Excel's own. */
import { address, parseRange, rangeOf } from "../../../src/formula/address";
import { formatOf, RangeStandIn, zoneOf, type Desk, type Place } from "./rangeStandIn";
import { Loadable, officeError, strict } from "./strict";
import type { WorkbookState } from "./workbookState";

/** The longest list of addresses that one call takes. */
const LONGEST_LIST = 8_192;
const PAGE_LAYOUT = ["orientation", "paperSize", "zoom"];
const FOOT = ["leftFooter", "centerFooter", "rightFooter"];

class Protection extends Loadable {
  constructor(
    private readonly desk: Desk,
    private readonly own: () => string,
  ) {
    super(desk);
  }
  private guard() {
    return this.desk.state.protectedSheets.get(this.own());
  }
  protected fetch(name: string): unknown {
    if (name === "protected") return this.guard() !== undefined;
    if (name === "options") return { allowInsertRows: this.guard()?.insertRows ?? false };
    throw officeError("InvalidArgument", `protection.${name} can't be loaded`);
  }
  get protected(): boolean {
    return this.read("protected");
  }
  get options(): { readonly allowInsertRows: boolean } {
    return this.read("options");
  }
  protect(options: { readonly allowInsertRows?: boolean }): void {
    this.desk.later(() => {
      this.desk.ungroupable();
      this.desk.changed();
      this.desk.state.protect(this.own(), options);
    });
  }
  unprotect(): void {
    this.desk.later(() => {
      this.desk.ungroupable();
      this.desk.changed();
      this.desk.state.unprotect(this.own());
    });
  }
}

class Worksheet extends Loadable {
  constructor(
    private readonly desk: Desk,
    /** Asked when the queue comes to it; null for a null object. */
    private readonly find: () => string | null,
  ) {
    super(desk);
    desk.later(() => (this.known = this.find()));
  }
  private known: string | null | undefined;

  private get own(): string {
    if (!this.known) throw officeError("ItemNotFound", "The requested resource doesn't exist.");
    return this.known;
  }

  protected fetch(name: string): unknown {
    if (this.known === null) return undefined;
    if (name === "name") return this.own;
    if (name === "id") return this.desk.state.idOf(this.own);
    if (name === "visibility") return this.desk.state.visibility(this.own);
    throw officeError("InvalidArgument", `Worksheet.${name} can't be loaded`);
  }

  get isNullObject(): boolean {
    if (this.known === undefined) throw officeError("PropertyNotLoaded", "isNullObject needs context.sync()");
    return this.known === null;
  }
  get name(): string {
    return this.read("name");
  }
  get id(): string {
    return this.read("id");
  }
  get visibility(): string {
    return this.read("visibility");
  }
  calculate(markAllDirty: boolean): void {
    if (typeof markAllDirty !== "boolean") throw new Error("markAllDirty is no truth value");
    this.desk.later(() => this.desk.state.dirty());
  }

  private log(what: string, value: unknown): void {
    this.desk.later(() => {
      this.desk.changed();
      this.desk.state.log.push({ sheet: this.own, what, value });
    });
  }

  getRange(text: string): RangeStandIn {
    return strict("Range", new RangeStandIn(this.desk, () => ({ sheet: this.own, zone: zoneOf(text) })));
  }
  getRangeByIndexes(top: number, left: number, rows: number, columns: number): RangeStandIn {
    return this.getRange(rangeOf({ top, left, bottom: top + rows - 1, right: left + columns - 1 }));
  }
  getCell(row: number, column: number): RangeStandIn {
    return this.getRange(address(row, column));
  }
  getRanges(list: string): object {
    if (list.length > LONGEST_LIST) throw officeError("InvalidArgument", "the list of addresses is too long");
    const places = (): Place[] => list.split(",").map((one) => ({ sheet: this.own, zone: zoneOf(one) }));
    return strict("RangeAreas", { format: formatOf(this.desk, places) });
  }
  getUsedRangeOrNullObject(valuesOnly?: boolean): RangeStandIn {
    if (!valuesOnly) throw new Error("the used range with looks is not known to the stand-in");
    return strict(
      "Range",
      new RangeStandIn(this.desk, () => {
        const zone = this.desk.state.usedZone(this.own);
        return zone ? { sheet: this.own, zone } : null;
      }),
    );
  }
  get protection(): object {
    return strict("WorksheetProtection", new Protection(this.desk, () => this.own));
  }
  delete(): void {
    this.desk.later(() => {
      this.desk.ungroupable();
      this.desk.changed();
      this.desk.state.deleteSheet(this.own);
    });
  }
  activate(): void {
    this.desk.later(() => {
      if (this.desk.state.visibility(this.own) !== "Visible")
        throw officeError("InvalidOperation", "A hidden sheet can't be activated.");
      this.desk.state.active = { sheet: this.own, at: "A1" };
    });
  }

  private ownNames: object | undefined;
  get autoFilter(): object {
    return strict(
      "autoFilter",
      new Facts(this.desk, { isDataFiltered: () => this.desk.state.filtered.has(this.own) }),
    );
  }
  get names(): object {
    const { state } = this.desk;
    const own = (): { name: string; formula: string }[] =>
      state.sheetNames.flatMap(({ name, sheet, range }) =>
        sheet === this.own ? [{ name, formula: formulaOf(state, sheet, range) }] : [],
      );
    /** Only of this sheet, and gone with it. */
    const add = (name: string, range: RangeStandIn): object =>
      namedItem(this.desk, name, () => {
        const { sheet, zone } = range.resolved();
        state.addName(name, sheet, rangeOf(zone));
        state.scoped.add(name);
      });
    return (this.ownNames ??= strict(
      "names",
      Object.assign(new Collection(this.desk, "names", own, ["name", "formula"]), { add }),
    ));
  }

  get freezePanes(): object {
    return strict("freezePanes", {
      freezeAt: (range: RangeStandIn) =>
        this.desk.later(() =>
          this.desk.state.log.push({ sheet: this.own, what: "freezeAt", value: range.resolved().zone }),
        ),
      freezeRows: (count: number) => this.log("freezeRows", count),
      freezeColumns: (count: number) => this.log("freezeColumns", count),
    });
  }
  get notes(): object {
    return strict("notes", { add: (at: string, text: string) => this.log("note", [at, text]) });
  }
  set showGridlines(shown: boolean) {
    this.log("showGridlines", shown);
  }
  get showGridlines(): boolean {
    return this.read("showGridlines");
  }
  set tabColor(color: string) {
    this.log("tabColor", color);
  }
  get tabColor(): string {
    return this.read("tabColor");
  }

  get pageLayout(): object {
    const log = (what: string) => (value: unknown) => this.log(what, value);
    const members = (keys: readonly string[], prefix: string): object =>
      Object.defineProperties(
        {},
        Object.fromEntries(
          keys.map((key) => [
            key,
            { set: log(`${prefix}.${key}`), get: () => this.read(key), enumerable: true },
          ]),
        ),
      );
    const layout = members(PAGE_LAYOUT, "pageLayout");
    return strict(
      "pageLayout",
      Object.defineProperties(layout, {
        setPrintArea: {
          configurable: true,
          value: (area: string) => (zoneOf(area), this.log("printArea", area)),
        },
        setPrintTitleRows: {
          configurable: true,
          value: (rows: string) => (zoneOf(rows), this.log("printTitleRows", rows)),
        },
        headersFooters: {
          configurable: true,
          value: strict("headersFooters", { defaultForAllPages: strict("foot", members(FOOT, "foot")) }),
        },
      }),
    );
  }
}

/** Of a sheet that was deleted the name is left. */
const formulaOf = (state: WorkbookState, sheet: string, range: string): string =>
  `=${state.sheet(sheet) ? `'${sheet.replace(/'/g, "''")}'` : "#REF"}!${range.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}`;

/** A name that has just been added. */
const namedItem = (desk: Desk, name: string, add: () => void): object => {
  desk.later(() => {
    desk.changed();
    add();
  });
  return strict("NamedItem", {
    delete: () => desk.later(() => desk.state.deleteName(name)),
    getRange: () =>
      strict(
        "Range",
        new RangeStandIn(desk, () => {
          const found = desk.state.book.names.find((one) => one.name === name);
          if (!found) throw officeError("ItemNotFound", "The requested resource doesn't exist.");
          return { sheet: found.sheet, zone: parseRange(found.range)! };
        }),
      ),
  });
};

/** One of a collection that may not be there, and can be deleted. */
class Member extends Loadable {
  constructor(
    private readonly desk: Desk,
    private readonly isThere: () => boolean,
    private readonly remove: () => void,
  ) {
    super(desk);
    desk.later(() => (this.known = this.isThere()));
  }
  private known: boolean | undefined;

  protected fetch(name: string): unknown {
    throw officeError("InvalidArgument", `${name} can't be loaded`);
  }
  get isNullObject(): boolean {
    if (this.known === undefined) throw officeError("PropertyNotLoaded", "isNullObject needs context.sync()");
    return !this.known;
  }
  delete(): void {
    this.desk.later(() => {
      if (!this.isThere()) throw officeError("ItemNotFound", "The requested resource doesn't exist.");
      this.desk.changed();
      this.remove();
    });
  }
}

/** A collection whose items can be read once `items/…` was loaded. */
class Collection<T extends object> extends Loadable {
  constructor(
    desk: Desk,
    private readonly kind: string,
    private readonly members: () => readonly T[],
    private readonly loadable: readonly string[],
  ) {
    super(desk);
  }
  protected fetch(name: string): unknown {
    const [items, property] = name.split("/");
    if (items !== "items" || !this.loadable.includes(property ?? "")) {
      throw officeError("InvalidArgument", `${this.kind}.${name} can't be loaded`);
    }
    const kept = (this.loaded.get("items") as object[] | undefined) ?? this.members().map(() => ({}));
    this.loaded.set(
      "items",
      this.members().map((member, index) =>
        strict(this.kind, { ...kept[index], [property!]: member[property as keyof T] }),
      ),
    );
    return undefined;
  }
  get items(): readonly T[] {
    return this.read("items");
  }
}

class Worksheets extends Collection<{ name: string }> {
  constructor(private readonly desk: Desk) {
    super(desk, "worksheets", () => [], ["name", "visibility", "id"]);
  }
  private own: Worksheet[] | undefined;

  protected override fetch(name: string): unknown {
    const property = name.replace("items/", "");
    this.own ??= this.desk.state.book.sheets.map((sheet) => new Worksheet(this.desk, () => sheet.name));
    // The queue runs what these have queued before anything of the batch can read them.
    for (const sheet of this.own) sheet.load(property);
    this.loaded.set(
      "items",
      this.own.map((sheet) => strict("Worksheet", sheet)),
    );
    return undefined;
  }
  add(name: string): Worksheet {
    this.desk.later(() => {
      this.desk.changed();
      this.desk.state.addSheet(name);
    });
    return strict("Worksheet", new Worksheet(this.desk, () => name));
  }
  private named(key: string): string | undefined {
    return this.desk.state.nameOf(key);
  }
  getActiveWorksheet(): Worksheet {
    return strict("Worksheet", new Worksheet(this.desk, () => this.desk.state.active.sheet));
  }
  getItem(name: string): Worksheet {
    return strict(
      "Worksheet",
      new Worksheet(this.desk, () => {
        const found = this.named(name);
        if (!found) throw officeError("ItemNotFound", `no sheet ${name}`);
        return found;
      }),
    );
  }
  getItemOrNullObject(name: string): Worksheet {
    return strict("Worksheet", new Worksheet(this.desk, () => this.named(name) ?? null));
  }
}

export function workbookOf(desk: Desk, watchers: Set<() => unknown>, context: object): object {
  const { state } = desk;
  const worksheets = new Worksheets(desk);
  const names = new Collection(
    desk,
    "names",
    () =>
      state.book.names.map(({ name, sheet, range }) => ({
        name,
        formula: formulaOf(state, sheet, range),
      })),
    ["name", "formula"],
  );
  const custom = new Collection(
    desk,
    "custom",
    () => [...state.properties].map(([key, value]) => ({ key, value })),
    ["key", "value"],
  );
  const withAdd = (name: string, target: object, add: (...given: never[]) => void): object =>
    strict(name, Object.defineProperty(target, "add", { value: add, configurable: true }));
  const withMembers = (
    target: object,
    kind: string,
    isThere: (key: string) => boolean,
    remove: (key: string) => void,
  ) =>
    Object.defineProperty(target, "getItemOrNullObject", {
      value: (key: string) =>
        strict(
          kind,
          new Member(
            desk,
            () => isThere(key),
            () => remove(key),
          ),
        ),
      configurable: true,
    });
  withMembers(
    names,
    "NamedItem",
    (name) => state.book.names.some((one) => one.name === name),
    (name) => state.deleteName(name),
  );
  Object.defineProperty(names, "getItem", {
    value: (name: string) =>
      strict("NamedItem", {
        getRange: () =>
          strict(
            "Range",
            new RangeStandIn(desk, () => {
              const found = state.book.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
              if (!found || !state.sheet(found.sheet)) throw officeError("ItemNotFound", `no name ${name}`);
              return { sheet: found.sheet, zone: parseRange(found.range)! };
            }),
          ),
      }),
    configurable: true,
  });
  withMembers(
    custom,
    "CustomProperty",
    (key) => state.properties.has(key),
    (key) => void state.properties.delete(key),
  );
  const facts = new Facts(desk, {
    usePrecisionAsDisplayed: () => false,
    autoSave: () => false,
    readOnly: () => false,
    isDirty: () => true,
    previouslySaved: () => false,
  });
  return strict(
    "workbook",
    Object.assign(facts, {
      protection: strict(
        "WorkbookProtection",
        new Facts(desk, {
          protected: () => state.structure !== undefined || state.oddities.structureProtected === true,
        }),
      ),
      insertWorksheetsFromBase64: (base64: string, options: object) => {
        if (JSON.stringify(options) !== '{"positionType":"End"}') throw new Error("only at the end");
        desk.later(() => desk.insertFile(base64));
        return strict("ClientResult", { value: [] });
      },
      worksheets: strict("worksheets", worksheets),
      names: withAdd("names", names, (name: string, range: RangeStandIn) =>
        namedItem(desk, name, () => {
          const { sheet, zone } = range.resolved();
          state.addName(name, sheet, rangeOf(zone));
        }),
      ),
      properties: strict("properties", {
        custom: withAdd("custom", custom, (key: string, value: string) =>
          desk.later(() => {
            desk.changed();
            state.properties.set(key, value);
          }),
        ),
      }),
      getSelectedRange: () =>
        strict(
          "Range",
          new RangeStandIn(desk, () => {
            if (state.active.at === "") throw officeError("InvalidSelection", "no cell is selected");
            return { sheet: state.active.sheet, zone: parseRange(state.active.at)! };
          }),
        ),
      getActiveCell: () =>
        strict(
          "Range",
          new RangeStandIn(desk, () => {
            if (state.active.at === "") throw officeError("InvalidSelection", "no cell is selected");
            return { sheet: state.active.sheet, zone: parseRange(state.active.at)! };
          }),
        ),
      onSelectionChanged: strict("onSelectionChanged", {
        add: (handler: () => unknown) => {
          desk.later(() => watchers.add(handler));
          return strict("EventHandlerResult", {
            context,
            remove: () => desk.later(() => watchers.delete(handler)),
          });
        },
      }),
    }),
  );
}

/** Properties that can be read once they were loaded. */
export class Facts extends Loadable {
  constructor(
    queue: Desk,
    private readonly known: Readonly<Record<string, () => unknown>>,
  ) {
    super(queue);
    for (const key of Object.keys(known))
      Object.defineProperty(this, key, { enumerable: true, configurable: true, get: () => this.read(key) });
  }
  protected fetch(name: string): unknown {
    const known = Object.hasOwn(this.known, name) ? this.known[name] : undefined;
    if (!known) throw officeError("InvalidArgument", `${name} can't be loaded`);
    return known();
  }
}
