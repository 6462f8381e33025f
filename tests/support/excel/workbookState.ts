/** The workbook behind the stand-in: cells, names, looks and locks, computed by the headless grid engine. */
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { address, parseRange, type Zone } from "../../../src/formula/address";
import { callsUs } from "../../../src/formula/callsUs";
import {
  isBookError,
  type Book,
  type BookName,
  type BookResult,
  type BookSheet,
} from "../../../src/workbooks/book";
import { bookOf, emptySheet } from "../books";
import { calledBy, markedBlank, type Caller } from "./calls";
import type { BlankKind, Oddities } from "./oddities";
import { resultsOf } from "./sharedResults";
import { officeError } from "./strict";

/** From 1900-01-01 to 1904-01-01, as Excel counts (ECMA-376 part 1, 18.17.4.1). */
const DAYS_TO_1904 = 1462;
/** A workbook of so many holds a template's. */
const TEMPLATE_SHEETS = 5;
/** Rows and columns of a new sheet that the engine is told of. */
const SHEET_ROWS = 400;
const SHEET_COLUMNS = 60;

/** What an Excel may lose of the sheets of a file that it inserts. */
export type Lost = "names" | "protection" | "formulas" | "locks";

export class WorkbookState {
  book: Book = bookOf({ ...emptySheet("Sheet1"), rowCount: SHEET_ROWS, columnCount: SHEET_COLUMNS });
  readonly properties = new Map<string, string>();
  /** Looks, rules and the like by sheet and A1 address. */
  readonly looks = new Map<string, Record<string, unknown>>();
  /** Rules, marks, frozen panes and the like, as they were set: one line each. */
  readonly log: { readonly sheet: string; readonly what: string; readonly value: unknown }[] = [];
  readonly protectedSheets = new Map<string, { readonly insertRows: boolean; readonly password?: boolean }>();
  /** Cells that call us while Excel does not know us: sheet and address. */
  readonly forgotten = new Set<string>();
  /** Formulas that are computed in the place of a cell's own: another Excel answers otherwise. */
  readonly instead = new Map<string, string>();
  /** What the cells that Excel has forgotten show. */
  forgottenCode = "#NAME?";
  /** The code that Excel answers with where the workbook's structure is protected. */
  structure: string | undefined;
  readonly veryHidden = new Set<string>();
  /** Names of single sheets. */
  readonly sheetNames: BookName[] = [];
  /** Calculation is manual. */
  manual = false;
  /** Sheets on which a filter hides rows. */
  readonly filtered = new Set<string>();
  active = { sheet: "Sheet1", at: "A1" };
  private readonly unlocked = new Map<string, Set<string>>();
  private result: Book | undefined;
  oddities: Oddities = {};
  /** Who calls our functions; absent where the engine calls them itself. */
  caller: Caller | undefined;
  /** Cells that were emptied, by sheet and address. */
  private readonly emptied = new Set<string>();
  /** What is shown for ever, where old values stay. */
  private readonly kept = new Map<string, BookResult>();
  private readonly ids = new Map<string, string>();
  private nextId = 1;

  /** Excel's own name of a sheet, which stays when it is renamed. */
  idOf(name: string): string {
    if (!this.ids.has(name)) this.ids.set(name, `{0000-${this.nextId++}}`);
    return this.ids.get(name)!;
  }

  /** By name, without regard to case, or by id. */
  nameOf(key: string): string | undefined {
    return this.sheet(key)?.name ?? [...this.ids].find(([name, id]) => id === key && this.sheet(name))?.[0];
  }

  empty(sheetName: string, zone: Zone): void {
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const at = address(row, column);
        this.checkMayWrite(sheetName, at);
        const sheet = this.sheet(sheetName)!;
        const look = sheet.cells[at]?.look;
        if (!sheet.cells[at]) continue;
        if (look === undefined) delete sheet.cells[at];
        else sheet.cells[at] = { look };
        this.emptied.add(`${sheetName}!${at}`);
      }
    }
    this.dirty();
  }

  /** A file that Excel has opened. */
  open(book: Book): void {
    this.book = JSON.parse(JSON.stringify(book)) as Book;
    for (const [key, value] of [
      ["RigsheetTemplate", book.template],
      ["RigsheetTemplateVersion", book.templateVersion],
    ] as const) {
      if (value) this.properties.set(key, value);
    }
    for (const sheet of this.book.sheets) this.guard(sheet);
    this.active = { sheet: book.sheets[0]!.name, at: "A1" };
    this.dirty();
  }

  /** As a file has it: protected, without a password, and its inputs free. */
  private guard({ name, protected: isProtected, cells }: BookSheet): void {
    if (isProtected) this.protectedSheets.set(name, { insertRows: true });
    for (const [at, { look }] of Object.entries(cells)) {
      if (look !== undefined && this.book.looks[look]?.locked === false) this.unlock(name, at);
    }
  }

  /** The sheets of a file, at the end of the open workbook; Excel renames one whose name is taken. */
  insertSheets(file: Book, loses: Lost | undefined): void {
    this.checkStructure();
    const shift = this.book.looks.length;
    const book = JSON.parse(JSON.stringify(file)) as Book;
    this.book.looks.push(...book.looks);
    for (const sheet of book.sheets) {
      if (this.sheet(sheet.name)) sheet.name = `${sheet.name} (2)`;
      for (const cell of Object.values(sheet.cells)) {
        if (cell.look !== undefined) cell.look += shift;
        if (loses === "formulas") delete cell.formula;
      }
      sheet.marks = sheet.marks.map((mark) => ({ ...mark, look: mark.look + shift }));
      if (loses === "protection" || loses === "locks") sheet.protected = false;
      if (loses === "locks") sheet.validations = [];
      this.book.sheets.push(sheet);
      if (loses !== "locks") this.guard(sheet);
    }
    if (loses !== "names") this.book.names.push(...book.names);
    this.dirty();
  }

  /** In this Excel everything on a protected sheet is refused, unlocked or not. */
  private refuseIfDenied(sheet: string): void {
    if (this.oddities.protection === "denied" && this.protectedSheets.has(sheet))
      throw officeError("AccessDenied", "You can't perform the requested operation.");
  }

  protect(name: string, options: { readonly allowInsertRows?: boolean } = {}): void {
    if (this.protectedSheets.has(name)) throw officeError("AccessDenied", `${name} is protected already.`);
    this.protectedSheets.set(name, { insertRows: options.allowInsertRows === true });
  }

  /** On a sheet that has no protection some builds of 2026 refuse (issue threads of OfficeDev/office-js). */
  unprotect(name: string): void {
    if (!this.protectedSheets.has(name)) throw officeError("AccessDenied", `${name} is not protected.`);
    if (this.protectedSheets.get(name)?.password)
      throw officeError("AccessDenied", `${name} needs its password.`);
    this.protectedSheets.delete(name);
  }

  sheet(name: string): BookSheet | undefined {
    const { sheets } = this.book;
    // Asked for each cell, and nearly always by the very name.
    return (
      sheets.find((one) => one.name === name) ??
      sheets.find((one) => one.name.toLowerCase() === name.toLowerCase())
    );
  }

  addSheet(name: string): void {
    this.checkStructure();
    if (this.oddities.structureProtected)
      throw officeError("InvalidOperation", "The workbook's structure is protected.");
    if (this.sheet(name)) throw officeError("ItemAlreadyExists", `A sheet named ${name} exists.`);
    if (name.length > 31 || /[\\/?*[\]:]/.test(name))
      throw officeError("InvalidArgument", `Bad name ${name}`);
    this.book.sheets.push({ ...emptySheet(name), rowCount: SHEET_ROWS, columnCount: SHEET_COLUMNS });
    this.dirty();
  }

  deleteSheet(name: string): void {
    this.checkStructure();
    if (this.oddities.deletingThrows !== undefined)
      throw officeError(this.oddities.deletingThrows, "The sheet can't be deleted.");
    this.ids.delete(name);
    this.book.names = this.book.names.filter((one) => one.sheet !== name || !this.scoped.has(one.name));
    this.book.sheets = this.book.sheets.filter((one) => one.name !== name);
    for (const cell of [...this.looks.keys()]) if (cell.startsWith(`${name}!`)) this.looks.delete(cell);
    this.log.splice(0, this.log.length, ...this.log.filter(({ sheet }) => sheet !== name));
    this.unlocked.delete(name);
    this.protectedSheets.delete(name);
    if (this.active.sheet === name) this.active = { sheet: this.book.sheets[0]!.name, at: "A1" };
    this.dirty();
  }

  /** Names of one sheet only, which go with it. */
  readonly scoped = new Set<string>();

  deleteName(name: string): void {
    this.book.names = this.book.names.filter((one) => one.name !== name);
    this.dirty();
  }

  addName(name: string, sheet: string, range: string): void {
    if (this.book.names.some((one) => one.name.toLowerCase() === name.toLowerCase())) {
      throw officeError("ItemAlreadyExists", `The name ${name} exists.`);
    }
    this.book.names.push({ name, sheet, range });
    this.dirty();
  }

  unlock(sheet: string, at: string): void {
    const cells = this.unlocked.get(sheet) ?? new Set();
    this.unlocked.set(sheet, cells.add(at));
  }

  isLocked(sheet: string, at: string): boolean {
    return this.unlocked.get(sheet)?.has(at) !== true;
  }

  /** Writing into a locked cell of a protected sheet is refused. */
  checkMayWrite(sheet: string, at: string): void {
    this.refuseIfDenied(sheet);
    if (this.oddities.protection === "ignored") return;
    if (this.protectedSheets.has(sheet) && !this.unlocked.get(sheet)?.has(at)) {
      throw officeError("AccessDenied", "You can't perform the requested operation.");
    }
  }

  /** Whether the cell's number format is text. */
  isText(sheetName: string, at: string): boolean {
    const look = this.sheet(sheetName)!.cells[at]?.look;
    return look !== undefined && this.book.looks[look]?.format === "@";
  }

  /** One cell as a person would type it. */
  enter(sheetName: string, at: string, content: string | number | boolean): void {
    const sheet = this.sheet(sheetName)!;
    this.checkMayWrite(sheetName, at);
    this.forgotten.delete(`${sheetName}!${at}`);
    const spilled = this.result?.sheets.find(({ name }) => name === sheetName)?.results[at] !== undefined;
    if (spilled && !sheet.cells[at] && content !== "") throw new Error(`${sheetName}!${at} is spilled into`);
    const look = sheet.cells[at]?.look;
    const parsed = (this.isText(sheetName, at) ? textEntry : parsedEntry)(content, `${sheetName}!${at}`);
    sheet.cells[at] = { ...parsed, ...(look !== undefined && { look }) };
    const zone = parseRange(at)!;
    sheet.rowCount = Math.max(sheet.rowCount, zone.bottom + 2);
    sheet.columnCount = Math.max(sheet.columnCount, zone.right + 2);
    if (content === "") this.emptied.add(`${sheetName}!${at}`);
    if (parsed.formula !== undefined && this.oddities.addsAt && callsUs(parsed.formula))
      this.cut.add(`${sheetName}!${at}`);
    else this.cut.delete(`${sheetName}!${at}`);
    if (parsed.formula !== undefined)
      for (const key of [...this.kept.keys()]) if (key.startsWith(`${sheetName}!`)) this.kept.delete(key);
    // Only what is entered is computed then; this stand-in computes the whole workbook with it.
    if (this.oddities.calculation !== "Manual" || parsed.formula !== undefined) this.dirty();
  }

  insertRows(sheetName: string, first: number, count: number): void {
    this.refuseIfDenied(sheetName);
    const guard = this.protectedSheets.get(sheetName);
    if (this.oddities.protection === "lost") this.protectedSheets.delete(sheetName);
    if (guard && !guard.insertRows) throw officeError("AccessDenied", "Rows can't be inserted.");
    this.changeRows("ADD_COLUMNS_ROWS", sheetName, { base: first, position: "before", quantity: count });
    this.moveLocks(sheetName, first, count);
    this.dirty();
  }

  deleteRows(sheetName: string, first: number, count: number): void {
    if (this.protectedSheets.has(sheetName)) throw officeError("AccessDenied", "Rows can't be deleted.");
    const elements = Array.from({ length: count }, (_, index) => first + index);
    this.changeRows("REMOVE_COLUMNS_ROWS", sheetName, { elements });
    const left = [...(this.unlocked.get(sheetName) ?? [])].flatMap((at) => {
      const { top: row, left: column } = parseRange(at)!;
      if (row >= first && row < first + count) return [];
      return [address(row < first ? row : row - count, column)];
    });
    this.unlocked.set(sheetName, new Set(left));
    this.dirty();
  }

  /** The engine moves what refers to the rows. */
  private changeRows(what: string, sheetName: string, rows: object): void {
    const changed = (): Book => {
      const model = openModel(this.book);
      const sheetId = model.getters.getSheetIds().find((id) => model.getters.getSheetName(id) === sheetName)!;
      const command = { sheetId, sheetName, dimension: "ROW", ...rows };
      const { isSuccessful } = quietly(() => model.dispatch(what as never, command as never));
      if (!isSuccessful) throw new Error(`the engine refused ${what} on ${sheetName}`);
      return quietly(() => fromModel(loadLibrary(), model));
    };
    const book = resultsOf(JSON.stringify([this.book, what, sheetName, rows]), changed);
    this.book = JSON.parse(JSON.stringify(book)) as Book;
  }

  /** New rows take the locks of the row above them, as they take its looks. */
  private moveLocks(sheetName: string, first: number, count: number): void {
    const moved = new Set<string>();
    for (const at of this.unlocked.get(sheetName) ?? []) {
      const { top: row, left: column } = parseRange(at)!;
      moved.add(address(row < first ? row : row + count, column));
      for (let added = 0; row === first - 1 && added < count; added++)
        moved.add(address(first + added, column));
    }
    this.unlocked.set(sheetName, moved);
  }

  applyLook(sheet: string, zone: Zone, key: string, value: unknown): void {
    if (this.protectedSheets.has(sheet)) throw officeError("AccessDenied", "Looks can't be changed.");
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const at = address(row, column);
        if (key === "locked" && value === false) this.unlock(sheet, at);
        const cell = `${sheet}!${at}`;
        const look = this.looks.get(cell) ?? {};
        this.looks.set(cell, { ...look, [key]: value });
      }
    }
  }

  /** Excel has no functions of ours: every cell of ours shows an error, and what lives on them is computed again. */
  forgetOurs(code = "#NAME?"): number {
    this.forgottenCode = code;
    for (const { name, cells } of this.book.sheets)
      for (const [at, { formula }] of Object.entries(cells))
        if (formula !== undefined && callsUs(formula)) this.forgotten.add(`${name}!${at}`);
    this.dirty();
    return this.forgotten.size;
  }

  /** By a person, on the sheet's tab. */
  renameSheet(from: string, to: string): void {
    const model = openModel(this.book);
    const sheetId = model.getters.getSheetIds().find((id) => model.getters.getSheetName(id) === from)!;
    const command = { sheetId, oldName: from, newName: to };
    const { isSuccessful } = quietly(() => model.dispatch("RENAME_SHEET" as never, command as never));
    if (!isSuccessful) throw new Error(`the engine did not rename ${from}`);
    this.book = quietly(() => fromModel(loadLibrary(), model));
    for (const kept of [this.protectedSheets, this.unlocked] as Map<string, unknown>[]) {
      const value = kept.get(from);
      if (kept.delete(from)) kept.set(to, value);
    }
    this.dirty();
  }

  private checkStructure(): void {
    if (this.structure) throw officeError(this.structure, "The workbook is protected.");
  }

  visibility(name: string): "Visible" | "Hidden" | "VeryHidden" {
    if (this.veryHidden.has(name)) return "VeryHidden";
    return this.sheet(name)?.hidden ? "Hidden" : "Visible";
  }

  dirty(): void {
    this.result = undefined;
  }

  /** The workbook with every formula computed. */
  computed(): Book {
    return (this.result ??= this.withOwnFormulas(this.computedAnew()));
  }

  /** Computed otherwise, a cell still has its formula. The results are others' as well: nothing of them changes. */
  private withOwnFormulas(book: Book): Book {
    const others = [...this.forgotten, ...this.instead.keys()];
    if (others.length === 0) return book;
    const sheets = book.sheets.map((sheet) => {
      const own = others.filter((one) => one.startsWith(`${sheet.name}!`));
      if (own.length === 0) return sheet;
      const [cells, results] = [{ ...sheet.cells }, { ...sheet.results }];
      for (const one of own) {
        const at = one.slice(sheet.name.length + 1);
        if (!cells[at]) continue;
        cells[at] = { ...cells[at], formula: this.sheet(sheet.name)?.cells[at]?.formula };
        if (this.forgotten.has(one)) results[at] = { error: this.forgottenCode };
      }
      return { ...sheet, cells, results };
    });
    return { ...book, sheets };
  }

  /** What is called while a template computes is not heard: its results may be those of an earlier time. */
  isUnheard = false;

  private computedAnew(): Book {
    const compute = (book: Book): Book => quietly(() => fromModel(loadLibrary(), openModel(book)));
    const { caller } = this;
    const isHeard = caller && (!this.isUnheard || this.book.sheets.length < TEMPLATE_SHEETS);
    if (isHeard) return calledBy(caller, () => compute(this.asComputed()));
    const { blankInRange, blankAlone, errorInRange, spillsNot, elsewhere } = this.oddities;
    const oddly = caller && [blankInRange, blankAlone, errorInRange, spillsNot, elsewhere];
    const { computing, beside } = apart(this.asComputed());
    const anew = (): Book => compute(computing);
    // A formula may ask for today.
    const asked = [computing, oddly, new Date().toDateString()];
    const found = resultsOf(JSON.stringify(asked), caller ? () => calledBy(caller, anew) : anew);
    return withSheetsBeside(found, beside, this.book);
  }

  /** What a cell shows, with what is odd about this Excel. */
  private oddly(sheet: string, at: string, value: BookResult): BookResult {
    const { date1904, oldValues, wrongBy } = this.oddities;
    const formula = this.formula(sheet, at);
    if (date1904 && formula?.startsWith("DATE(") && typeof value === "number") return value - DAYS_TO_1904;
    if (wrongBy && typeof value === "number") {
      const named = this.book.names.find(({ name }) => name === wrongBy.name);
      if (named?.sheet === sheet && named.range === at) return value + wrongBy.by;
    }
    if (!oldValues || this.sheet(sheet)?.cells[at]?.value !== undefined) return value;
    const key = `${sheet}!${at}`;
    if (!this.kept.has(key) && typeof value === "number") this.kept.set(key, value);
    return this.kept.get(key) ?? value;
  }

  /** What a cell shows; blank is "". */
  shown(sheet: string, at: string): BookResult {
    if (this.forgotten.has(`${sheet}!${at}`)) return { error: this.forgottenCode };
    const typed = this.sheet(sheet)?.cells[at]?.value;
    const one = this.computed().sheets.find(({ name }) => name === sheet)!;
    const shown = this.oddly(sheet, at, one.results[at] ?? typed ?? "");
    const follows = this.forgotten.size > 0 && isBookError(shown) && shown.error === "#NAME?";
    return follows ? { error: this.forgottenCode } : shown;
  }

  formula(sheet: string, at: string): string | undefined {
    const formula = this.sheet(sheet)?.cells[at]?.formula;
    return formula !== undefined && this.cut.has(`${sheet}!${at}`) ? `@${formula}` : formula;
  }

  /** Where the formula of a cell spills, its own cell included. */
  spillOf(sheet: string, at: string): Zone | undefined {
    const { spill } = this.computed().sheets.find(({ name }) => name === sheet)?.cells[at] ?? {};
    // Of an array with one result Excel knows no spill.
    if (!spill || spill.rows * spill.columns === 1) return undefined;
    const place = parseRange(at)!;
    return { ...place, bottom: place.top + spill.rows - 1, right: place.left + spill.columns - 1 };
  }

  /** The smallest zone around every cell that holds or shows something. */
  usedZone(sheetName: string): Zone | undefined {
    const sheet = this.computed().sheets.find(({ name }) => name === sheetName)!;
    const held = [
      ...Object.entries(sheet.cells).flatMap(([at, { value, formula }]) =>
        value === undefined && formula === undefined ? [] : [at],
      ),
      ...Object.keys(sheet.results),
    ].map((at) => parseRange(at)!);
    if (held.length === 0) return undefined;
    return held.reduce((all, one) => ({
      top: Math.min(all.top, one.top),
      left: Math.min(all.left, one.left),
      bottom: Math.max(all.bottom, one.bottom),
      right: Math.max(all.right, one.right),
    }));
  }

  /** Cells before whose formula an @ was put, by sheet and address. */
  private readonly cut = new Set<string>();

  /**
   * The book with what the engine has no word for: formulas that were cut, blanks that are not all the same, and
   * what Excel computes where it does not know us: our cells at an error, their spills blank.
   */
  private asComputed(): Book {
    // In a template's sheets one blank is as the other.
    const hasKinds = this.oddities.blankKinds !== undefined && this.book.sheets.length < TEMPLATE_SHEETS;
    const isOther = this.forgotten.size + this.instead.size > 0;
    if (this.cut.size === 0 && !hasKinds && !isOther) return this.book;
    const book = JSON.parse(JSON.stringify(this.book)) as Book;
    const unknown = [...this.forgotten].map((one) => [one, "NOBODY.KNOWS()"] as const);
    for (const [one, formula] of [...unknown, ...this.instead]) {
      const [name, at] = one.split("!") as [string, string];
      const cell = book.sheets.find((sheet) => sheet.name === name)?.cells[at];
      if (!cell) continue;
      cell.formula = formula;
      delete cell.spill;
    }
    for (const sheet of book.sheets) {
      for (const [at, cell] of Object.entries(sheet.cells))
        if (this.cut.has(`${sheet.name}!${at}`)) cell.formula = `INDEX(${cell.formula},1,1)`;
      if (!hasKinds) continue;
      const mark = (at: string, kind: BlankKind): void => {
        const { value, formula, look } = sheet.cells[at] ?? {};
        if (value === undefined && formula === undefined)
          sheet.cells[at] = { value: markedBlank(kind), ...(look !== undefined && { look }) };
      };
      for (const [key, { format }] of this.looks) {
        const [name, at] = key.split("!") as [string, string];
        if (name === sheet.name && typeof format === "string")
          mark(at, format === "@" ? "formattedText" : "formattedNumber");
      }
      for (const key of this.emptied) {
        const [name, at] = key.split("!") as [string, string];
        if (name === sheet.name) mark(at, "cleared");
      }
    }
    return book;
  }
}

/** Sheets that nothing is computed on or from, and where they stand: what a person or a trial noted beside a template. */
interface Apart {
  readonly computing: Book;
  readonly beside: ReadonlySet<string>;
}

/** A word typed into one of the sheets beside a template leaves what was computed of the template as it was. */
function apart(book: Book): Apart {
  const beside = new Set<string>();
  for (const { name, cells, marks, validations } of book.sheets) {
    const isBare =
      marks.length + validations.length === 0 &&
      book.names.every(({ sheet }) => sheet !== name) &&
      Object.values(cells).every(({ formula }) => formula === undefined);
    if (isBare) beside.add(name);
  }
  if (beside.size === 0 || beside.size === book.sheets.length) return { computing: book, beside: new Set() };
  for (const { cells } of book.sheets)
    for (const { formula } of Object.values(cells))
      if (formula?.includes("!"))
        for (const name of [...beside]) if (mentions(formula, name)) beside.delete(name);
  if (beside.size === 0) return { computing: book, beside };
  return { computing: { ...book, sheets: book.sheets.filter(({ name }) => !beside.has(name)) }, beside };
}

const mentions = (formula: string, sheet: string): boolean =>
  formula.toLowerCase().includes(sheet.toLowerCase().replaceAll("'", "''"));

/** What stands on the sheets beside shows as it stands there. */
function withSheetsBeside(computed: Book, beside: ReadonlySet<string>, { sheets, looks }: Book): Book {
  if (beside.size === 0) return computed;
  const found = new Map(computed.sheets.map((sheet) => [sheet.name, sheet]));
  const shift = computed.looks.length;
  const asItStands = (sheet: BookSheet): BookSheet => ({
    ...sheet,
    results: {},
    cells: Object.fromEntries(
      Object.entries(sheet.cells).map(([at, { look, ...cell }]) => [
        at,
        { ...cell, ...(look !== undefined && { look: look + shift }) },
      ]),
    ),
  });
  return {
    ...computed,
    looks: [...computed.looks, ...looks],
    sheets: sheets.map((sheet) => found.get(sheet.name) ?? asItStands(sheet)),
  };
}

interface Entered {
  readonly value?: string | number | boolean;
  readonly formula?: string;
}

/** Into a cell whose number format is text. */
function textEntry(content: string | number | boolean, where: string): Entered {
  if (content === "") return {};
  // Whether it is hidden or shown there is documented nowhere, so nothing may depend on it.
  if (String(content).startsWith("'")) throw new Error(`${where}: an apostrophe in a cell of text`);
  return { value: String(content) };
}

/** As Excel takes what is typed. What it would turn into a date by itself is refused here: nobody meant it. */
function parsedEntry(content: string | number | boolean, where: string): Entered {
  if (content === "") return {};
  if (typeof content !== "string") return { value: content };
  if (content.startsWith("=")) return { formula: content.slice(1) };
  if (content.startsWith("'")) return { value: content.slice(1) };
  if (/^(true|false)$/i.test(content)) return { value: content.toLowerCase() === "true" };
  if (content.trim() !== "" && Number.isFinite(Number(content.replace(/[,%$€]/g, "")))) {
    return { value: Number(content.replace(/[,%$€]/g, "")) };
  }
  if (/\d/.test(content) || /^[+@-]/.test(content)) {
    throw new Error(
      `${where}: Excel might take ${JSON.stringify(content)} for a date, a number or a formula`,
    );
  }
  return { value: content };
}
