/**
 * Computes the native formulas of a saved workbook as Excel would, and writes the new results into it. Calls of the
 * add-in are never computed here: each keeps its saved result, or takes what the case says it became.
 */
import { Fault, type Matrix, type Node, type Value, first, lift, operate, parse, single } from "./formulas";
import { type Argument, NATIVE } from "./functions";
import {
  type Area,
  type Cell,
  type Pack,
  areaText,
  editCells,
  editPart,
  namesOf,
  parseArea,
  parseRef,
  putCell,
  refOf,
  sharedStrings,
  inlineText,
  sheetsOf,
  textOf,
} from "./parts";
import { isRich, storeFaults } from "./richFaults";

export const CALL = /(?:\[\d+\]!|'[^']*'!)?_xldudf_RIG_([A-Z0-9_]+)/;

interface Formula {
  sheet: string;
  ref: string;
  r: number;
  c: number;
  text: string;
  tree: Node;
  array: boolean;
  /** An array with cm, which takes the size of its result; without it the size is fixed. */
  dynamic: boolean;
  area: Area;
  calls: boolean;
}

export interface Call {
  name: string;
  /** "Rooms!AG5" */
  at: string;
  args: Matrix[];
  /** What the call's cells hold now. */
  saved: Matrix;
}

export interface Settings {
  /** What a call of the add-in gives; undefined keeps what is saved. */
  call?: (call: Call) => Value | Matrix | undefined;
  /** A whole formula's result, say #SPILL!; undefined computes it. */
  result?: (at: string) => Value | undefined;
  /** Computes only what hangs on these cells ("Rooms!H10"), as Excel does after an entry. */
  changed?: string[];
  /** Applied to each number before it is stored, for precision as displayed. */
  shown?: (value: number, at: string) => number;
}

export interface Outcome {
  /** "Rooms!P6" to what it shows now, for each cell whose result changed. */
  changed: Map<string, Value>;
  /** Formulas that could not be computed here and kept their results. */
  skipped: string[];
}

type Reference = { sheet: string; area: Area };

export class Book {
  readonly constants = new Map<string, Value>();
  readonly formulas = new Map<string, Formula>();
  /** "Rooms!P6" to the anchor that filled it when the file was saved. */
  readonly filled = new Map<string, Formula>();
  readonly names: ReturnType<typeof namesOf>;
  readonly skipped: string[] = [];

  constructor(readonly pack: Pack) {
    this.names = namesOf(pack);
    const strings = sharedStrings(pack);
    for (const { name, path } of sheetsOf(pack))
      editCells(textOf(pack, path), (cell) => {
        this.read(name, cell, strings);
        return undefined;
      });
    for (const f of this.formulas.values())
      for (let r = f.area.r1; r <= f.area.r2; r++)
        for (let c = f.area.c1; c <= f.area.c2; c++) this.filled.set(`${f.sheet}!${refOf(r, c)}`, f);
  }

  private read(sheet: string, cell: Cell, strings: string[]): void {
    const at = `${sheet}!${cell.ref}`;
    const value = valueOf(cell, strings);
    if (value !== null) this.constants.set(at, value);
    if (cell.formula === undefined) return;
    const { r, c } = parseRef(cell.ref);
    const array = cell.formula.attributes.get("t") === "array";
    const area = array
      ? parseArea(cell.formula.attributes.get("ref") ?? cell.ref)
      : { r1: r, c1: c, r2: r, c2: c };
    const text = cell.formula.text;
    try {
      this.formulas.set(at, {
        sheet,
        ref: cell.ref,
        r,
        c,
        text,
        tree: parse(text),
        array,
        dynamic: array && cell.attributes.has("cm"),
        area,
        calls: CALL.test(text),
      });
    } catch {
      this.skipped.push(at);
    }
  }

  saved(f: Formula): Matrix {
    const rows: Matrix = [];
    for (let r = f.area.r1; r <= f.area.r2; r++) {
      const row: Value[] = [];
      for (let c = f.area.c1; c <= f.area.c2; c++)
        row.push(this.constants.get(`${f.sheet}!${refOf(r, c)}`) ?? null);
      rows.push(row);
    }
    return rows;
  }

  reference(node: Node, sheet: string): Reference | Fault | undefined {
    if (node.kind === "ref")
      return { sheet: node.sheet ?? sheet, area: parseArea(node.area.replace(/\$/g, "")) };
    if (node.kind !== "name") return undefined;
    const place = this.names.get(node.name.toLowerCase());
    return place === undefined ? new Fault("#NAME?") : place === null ? new Fault("#REF!") : place;
  }
}

export function valueOf(cell: Cell, strings: string[]): Value {
  const type = cell.attributes.get("t") ?? "n";
  if (type === "inlineStr") return inlineText(cell.inline ?? "");
  if (cell.value === undefined || (cell.value === "" && type !== "str")) return null;
  if (type === "s") return strings[Number(cell.value)] ?? "";
  if (type === "str") return cell.value;
  if (type === "b") return cell.value === "1";
  return type === "e" ? new Fault(cell.value) : Number(cell.value);
}

export function recalculate(pack: Pack, settings: Settings = {}): Outcome {
  const book = new Book(pack);
  const results = new Map<Formula, Matrix>();
  const running = new Set<Formula>();
  const dirty = settings.changed === undefined ? undefined : dependants(book, settings.changed);
  const skipped = [...book.skipped];

  const compute = (f: Formula): Matrix => {
    const done = results.get(f);
    if (done !== undefined) return done;
    const at = `${f.sheet}!${f.ref}`;
    if (dirty !== undefined && !dirty.has(f)) return book.saved(f);
    if (running.has(f)) throw new Error(`circular at ${at}`);
    running.add(f);
    let result: Matrix;
    const given = settings.result?.(at);
    try {
      if (given !== undefined) result = single(given);
      else if (f.calls && settings.call === undefined) result = book.saved(f);
      else result = evaluate(f.tree, f);
    } catch (error) {
      if (!(error instanceof Unknown)) throw error;
      skipped.push(at);
      result = book.saved(f);
    }
    running.delete(f);
    if (!f.array && (result.length > 1 || (result[0]?.length ?? 0) > 1)) result = single(first(result));
    if (f.array && !f.dynamic) result = crop(result, f.area);
    const { shown } = settings;
    result = result.map((row, r) =>
      row.map((v, c) => {
        if (v === null) return f.calls ? null : 0;
        return typeof v === "number" && shown !== undefined
          ? shown(v, `${f.sheet}!${refOf(f.r + r, f.c + c)}`)
          : v;
      }),
    );
    results.set(f, result);
    return result;
  };

  const cellValue = (sheet: string, r: number, c: number): Value => {
    const at = `${sheet}!${refOf(r, c)}`;
    const f = book.filled.get(at);
    if (f === undefined) return book.constants.get(at) ?? null;
    const result = compute(f);
    return result[r - f.r]?.[c - f.c] ?? null;
  };

  const range = (place: Reference): Matrix => {
    const rows: Matrix = [];
    for (let r = place.area.r1; r <= place.area.r2; r++) {
      const row: Value[] = [];
      for (let c = place.area.c1; c <= place.area.c2; c++) row.push(cellValue(place.sheet, r, c));
      rows.push(row);
    }
    return rows;
  };

  const evaluate = (node: Node, f: Formula): Matrix => {
    if (node.kind === "value") return single(node.value);
    if (node.kind === "array") return node.rows;
    if (node.kind === "unary")
      return lift([evaluate(node.arg, f)], (v) => (node.op === "-" ? operate("*", v, -1) : v));
    if (node.kind === "binary")
      return lift([evaluate(node.left, f), evaluate(node.right, f)], (a, b) => operate(node.op, a, b));
    if (node.kind === "call") return callNode(node.name, node.args, f);
    const place = book.reference(node, f.sheet);
    return place === undefined ? single(null) : place instanceof Fault ? single(place) : range(place);
  };

  const callNode = (written: string, args: (Node | null)[], f: Formula): Matrix => {
    const ours = CALL.exec(written);
    if (ours !== null) {
      const at = `${f.sheet}!${f.ref}`;
      const call: Call = {
        name: ours[1] ?? "",
        at,
        args: args.map((a) => (a === null ? single(null) : evaluate(a, f))),
        saved: book.saved(f),
      };
      const answer = settings.call?.(call);
      return answer === undefined ? call.saved : Array.isArray(answer) ? answer : single(answer);
    }
    const name = written.toUpperCase().replace(/^_XLFN\.(_XLWS\.)?/, "");
    const arg = (i: number): Matrix => {
      const node = args[i];
      return node === undefined || node === null ? single(null) : evaluate(node, f);
    };
    if (name === "IF") return conditionalIf(args, arg);
    if (name === "IFERROR" || name === "IFNA") {
      const value = arg(0);
      const wrong = (v: Value): boolean => v instanceof Fault && (name === "IFERROR" || v.code === "#N/A");
      return value.flat().some(wrong)
        ? lift([value, arg(1)], (v, other) => (wrong(v) ? (other ?? null) : v))
        : value;
    }
    const node = args[0] ?? null;
    const place = node === null ? undefined : book.reference(node, f.sheet);
    if (name === "SINGLE")
      return place === undefined || place instanceof Fault ? single(first(arg(0))) : cut(place, f);
    if (name === "ANCHORARRAY" && place !== undefined && !(place instanceof Fault)) {
      const anchor = book.formulas.get(`${place.sheet}!${refOf(place.area.r1, place.area.c1)}`);
      return anchor === undefined ? single(new Fault("#REF!")) : compute(anchor);
    }
    if (["ROW", "ROWS", "COLUMN", "COLUMNS"].includes(name))
      return position(name, node === null ? f : place, arg);
    const native = NATIVE[name];
    if (native === undefined) throw new Unknown(written);
    const values = args.map((a): Argument | null =>
      a === null ? null : { matrix: evaluate(a, f), cells: a.kind === "ref" || a.kind === "name" },
    );
    return native(values);
  };

  const conditionalIf = (args: (Node | null)[], arg: (i: number) => Matrix): Matrix => {
    const test = arg(0);
    const otherwise = (): Matrix => (args.length < 3 ? single(false) : arg(2));
    const truth = (v: Value): boolean | Fault => {
      if (v instanceof Fault) return v;
      if (typeof v === "string") return new Fault("#VALUE!");
      return v !== null && v !== false && v !== 0;
    };
    if (test.length === 1 && test[0]?.length === 1) {
      const answer = truth(first(test));
      return answer instanceof Fault ? single(answer) : answer ? arg(1) : otherwise();
    }
    return lift([test, arg(1), otherwise()], (v, yes, no) => {
      const answer = truth(v ?? null);
      return answer instanceof Fault ? answer : ((answer ? yes : no) ?? null);
    });
  };

  const cut = (place: Reference, f: Formula): Matrix => {
    const { r1, c1, r2, c2 } = place.area;
    if (r1 === r2 && c1 === c2) return single(cellValue(place.sheet, r1, c1));
    if (c1 === c2)
      return single(f.r >= r1 && f.r <= r2 ? cellValue(place.sheet, f.r, c1) : new Fault("#VALUE!"));
    if (r1 === r2)
      return single(f.c >= c1 && f.c <= c2 ? cellValue(place.sheet, r1, f.c) : new Fault("#VALUE!"));
    return single(new Fault("#VALUE!"));
  };

  for (const f of book.formulas.values()) if (dirty === undefined || dirty.has(f)) compute(f);
  return { changed: store(book, results), skipped };
}

class Unknown extends Error {}

const crop = (result: Matrix, area: Area): Matrix =>
  Array.from({ length: area.r2 - area.r1 + 1 }, (_, r) =>
    Array.from({ length: area.c2 - area.c1 + 1 }, (_, c) => {
      const row = result[result.length === 1 ? 0 : r];
      return row === undefined ? new Fault("#N/A") : (row[row.length === 1 ? 0 : c] ?? null);
    }),
  );

function position(
  name: string,
  place: Reference | Fault | Formula | undefined,
  arg: (i: number) => Matrix,
): Matrix {
  if (place instanceof Fault) return single(place);
  if (place === undefined) {
    const m = arg(0);
    if (name === "ROWS" || name === "COLUMNS")
      return single(name === "ROWS" ? m.length : (m[0]?.length ?? 0));
    throw new Unknown(name);
  }
  const { r1, c1, r2, c2 } =
    "tree" in place ? { r1: place.r, c1: place.c, r2: place.r, c2: place.c } : place.area;
  if (name === "ROWS") return single(r2 - r1 + 1);
  if (name === "COLUMNS") return single(c2 - c1 + 1);
  if (name === "ROW") return Array.from({ length: r2 - r1 + 1 }, (_, i) => [r1 + i]);
  return [Array.from({ length: c2 - c1 + 1 }, (_, i) => c1 + i)];
}

/** All formulas that hang on the given cells, near or far. */
export function dependants(book: Book, cells: string[]): Set<Formula> {
  const readers = new Map<Formula, Reference[]>();
  for (const f of book.formulas.values()) {
    const found: Reference[] = [];
    const walk = (node: Node | null): void => {
      if (node === null) return;
      if (node.kind === "unary") walk(node.arg);
      else if (node.kind === "binary") [node.left, node.right].forEach(walk);
      else if (node.kind === "call") node.args.forEach(walk);
      else {
        const place = book.reference(node, f.sheet);
        if (place !== undefined && !(place instanceof Fault)) found.push(place);
      }
    };
    walk(f.tree);
    readers.set(f, found);
  }
  const result = new Set<Formula>();
  const queue: Reference[] = cells.map((cell) => {
    const [sheet, ref] = cell.split("!");
    return { sheet: sheet ?? "", area: parseArea(ref ?? "") };
  });
  for (let place = queue.pop(); place !== undefined; place = queue.pop())
    for (const [f, reads] of readers) {
      if (result.has(f) || !reads.some((one) => meets(one, place as Reference))) continue;
      result.add(f);
      queue.push({ sheet: f.sheet, area: f.area });
    }
  return result;
}

const meets = (a: Reference, b: Reference): boolean =>
  a.sheet === b.sheet &&
  a.area.r1 <= b.area.r2 &&
  b.area.r1 <= a.area.r2 &&
  a.area.c1 <= b.area.c2 &&
  b.area.c1 <= a.area.c2;

const same = (a: Value, b: Value): boolean => {
  if (a instanceof Fault || b instanceof Fault)
    return a instanceof Fault && b instanceof Fault && a.code === b.code;
  if (typeof a === "number" && typeof b === "number")
    return Math.abs(a - b) <= 1e-11 * Math.max(1, Math.abs(a), Math.abs(b));
  return a === b;
};

/** Writes what changed: values, the size of each spill, and cells that a shorter spill leaves empty. */
function store(book: Book, results: Map<Formula, Matrix>): Map<string, Value> {
  const changed = new Map<string, Value>();
  const now = new Map<string, Value>();
  const size = new Map<string, Area>();
  for (const [f, result] of results) {
    const r2 = f.r + result.length - 1;
    const c2 = f.c + (result[0]?.length ?? 1) - 1;
    if (f.array) size.set(`${f.sheet}!${f.ref}`, { r1: f.r, c1: f.c, r2, c2 });
    for (let r = f.area.r1; r <= Math.max(r2, f.area.r2); r++)
      for (let c = f.area.c1; c <= Math.max(c2, f.area.c2); c++)
        now.set(`${f.sheet}!${refOf(r, c)}`, result[r - f.r]?.[c - f.c] ?? null);
  }
  for (const { name, path } of sheetsOf(book.pack)) {
    const left = new Set([...now.keys()].filter((at) => at.startsWith(`${name}!`)));
    editPart(book.pack, path, (xml) => {
      let edited = editCells(xml, (cell) => {
        const at = `${name}!${cell.ref}`;
        if (!left.delete(at)) return undefined;
        const area = size.get(at);
        const value = now.get(at) ?? null;
        const resized =
          area !== undefined &&
          cell.formula !== undefined &&
          cell.formula.attributes.get("ref") !== areaText(area);
        if (same(value, book.constants.get(at) ?? null) && !resized) return undefined;
        if (!same(value, book.constants.get(at) ?? null)) changed.set(at, value);
        if (resized && area !== undefined) cell.formula?.attributes.set("ref", areaText(area));
        return withValue(cell, value);
      });
      for (const at of left) {
        const value = now.get(at) ?? null;
        if (value === null) continue;
        changed.set(at, value);
        edited = putCell(edited, at.slice(name.length + 1), (cell) => withValue(cell, value));
      }
      return edited;
    });
  }
  const rich = new Map(
    [...changed].filter(([, v]) => v instanceof Fault && isRich(v.code)) as [string, Fault][],
  );
  if (rich.size > 0) storeFaults(book.pack, new Map([...rich].map(([at, v]) => [at, v.code])));
  return changed;
}

/** The cell with another result, as Excel stores it: text as t="str", errors t="e", nothing as no value at all. */
export function withValue(cell: Cell, value: Value): Cell {
  const attributes = new Map(cell.attributes);
  attributes.delete("t");
  attributes.delete("vm");
  const type =
    typeof value === "string"
      ? "str"
      : typeof value === "boolean"
        ? "b"
        : value instanceof Fault
          ? "e"
          : undefined;
  if (type !== undefined) attributes.set("t", type);
  const next: Cell = { ref: cell.ref, attributes };
  if (cell.formula !== undefined) next.formula = cell.formula;
  if (value !== null)
    next.value =
      value instanceof Fault ? value.code : typeof value === "boolean" ? (value ? "1" : "0") : stored(value);
  return next;
}

const stored = (value: number | string): string => (typeof value === "string" ? value : seventeen(value));

/** A number in Excel's hand: up to 17 digits, E notation for the small and the large. */
export function seventeen(value: number): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e15) return String(value);
  const [digits, power] = value.toExponential(16).split("e");
  const n = Number(power);
  const mantissa = (digits ?? "").replace(/\.?0+$/, "");
  if (n < -1 || n > 16) return `${mantissa}E${n < 0 ? "" : "+"}${n}`;
  const plain = value.toPrecision(17);
  return plain.includes(".") ? plain.replace(/\.?0+$/, "") : plain;
}
