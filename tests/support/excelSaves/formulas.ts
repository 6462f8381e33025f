/**
 * Excel's arithmetic for the native formulas of the templates: arrays, blanks, errors. Written from memory of Excel's
 * documentation, by someone who had not seen the product's own engine; proved on the demonstration's cached values.
 */
export class Fault {
  constructor(readonly code: string) {}
}
export type Value = number | string | boolean | null | Fault;
export type Matrix = Value[][];

export type Node =
  | { kind: "value"; value: Value }
  | { kind: "array"; rows: Matrix }
  | { kind: "name"; name: string }
  | { kind: "ref"; sheet?: string; area: string }
  | { kind: "call"; name: string; args: (Node | null)[] }
  | { kind: "unary"; op: string; arg: Node }
  | { kind: "binary"; op: string; left: Node; right: Node };

const TOKEN = new RegExp(
  [
    '"(?:[^"]|"")*"',
    "#(?:REF|NAME|VALUE|DIV/0|N/A|NUM|NULL|BUSY|SPILL|CONNECT|BLOCKED|CALC)[!?]?",
    "(?:'(?:[^']|'')+'|\\[\\d+\\]|[A-Za-z_][\\w.]*)?!?\\$?[A-Z]{1,3}\\$?\\d+(?::\\$?[A-Z]{1,3}\\$?\\d+)?(?![\\w.(])",
    "(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?",
    "(?:'(?:[^']|'')+'!|\\[\\d+\\]!)?[A-Za-z_\\\\][\\w.]*",
    "<>|<=|>=|[-+*/^&=<>%(),;{}]",
  ].join("|"),
  "y",
);

export function tokens(formula: string): string[] {
  const found: string[] = [];
  let at = 0;
  while (at < formula.length) {
    const space = /\s+/y;
    space.lastIndex = at;
    if (space.test(formula)) at = space.lastIndex;
    if (at >= formula.length) break;
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(formula);
    if (match === null) throw new Error(`cannot read ${formula.slice(at, at + 40)}`);
    found.push(match[0]);
    at = TOKEN.lastIndex;
  }
  return found;
}

const LEVELS: string[][] = [["=", "<>", "<", ">", "<=", ">="], ["&"], ["+", "-"], ["*", "/"], ["^"]];

export function parse(formula: string): Node {
  const list = tokens(formula);
  let at = 0;
  const take = (wanted?: string): string => {
    const token = list[at++];
    if (token === undefined || (wanted !== undefined && token !== wanted))
      throw new Error(`expected ${wanted ?? "more"} in ${formula.slice(0, 60)}`);
    return token;
  };
  const level = (n: number): Node => {
    const ops = LEVELS[n];
    if (ops === undefined) return unary();
    let left = level(n + 1);
    while (list[at] !== undefined && ops.includes(list[at] ?? "")) {
      const op = take();
      left = { kind: "binary", op, left, right: level(n + 1) };
    }
    return left;
  };
  const unary = (): Node => {
    if (list[at] === "-" || list[at] === "+") return { kind: "unary", op: take(), arg: unary() };
    let node = primary();
    while (list[at] === "%") {
      take();
      node = { kind: "binary", op: "/", left: node, right: { kind: "value", value: 100 } };
    }
    return node;
  };
  const primary = (): Node => {
    const token = take();
    if (token === "(") {
      const inner = level(0);
      take(")");
      return inner;
    }
    if (token === "{") {
      const rows: Matrix = [[]];
      for (;;) {
        const node = unary();
        if (node.kind === "value") rows[rows.length - 1]?.push(node.value);
        else if (node.kind === "unary" && node.arg.kind === "value")
          rows[rows.length - 1]?.push(-Number(node.arg.value));
        const next = take();
        if (next === "}") return { kind: "array", rows };
        if (next === ";") rows.push([]);
      }
    }
    if (token.startsWith('"')) return { kind: "value", value: token.slice(1, -1).replace(/""/g, '"') };
    if (token.startsWith("#")) return { kind: "value", value: new Fault(token) };
    if (/^[\d.]/.test(token)) return { kind: "value", value: Number(token) };
    if (list[at] === "(") {
      take();
      const args: (Node | null)[] = [];
      while (list[at] !== ")") {
        if (list[at] === ",") {
          args.push(null);
          take();
          if (list[at] === ")") args.push(null);
          continue;
        }
        args.push(level(0));
        if (list[at] === ",") {
          take();
          if (list[at] === ")") args.push(null);
        }
      }
      take(")");
      return { kind: "call", name: token, args };
    }
    if (/^(TRUE|FALSE)$/i.test(token)) return { kind: "value", value: token.toUpperCase() === "TRUE" };
    const ref =
      /^(?:(?:'((?:[^']|'')+)'|([A-Za-z_][\w.]*))!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/.exec(
        token,
      );
    if (ref !== null) {
      const sheet = ref[1]?.replace(/''/g, "'") ?? ref[2];
      return sheet === undefined
        ? { kind: "ref", area: ref[3] ?? "" }
        : { kind: "ref", sheet, area: ref[3] ?? "" };
    }
    return { kind: "name", name: token };
  };
  const tree = level(0);
  if (at < list.length) throw new Error(`left over: ${list.slice(at).join(" ").slice(0, 60)}`);
  return tree;
}

export const single = (value: Value): Matrix => [[value]];
export const first = (matrix: Matrix): Value => matrix[0]?.[0] ?? null;
const width = (matrix: Matrix): number => matrix[0]?.length ?? 0;

/** The element at a place of the common shape: a single row or column is repeated, else #N/A beyond the edge. */
function spread(matrix: Matrix, r: number, c: number): Value {
  const row = matrix[matrix.length === 1 ? 0 : r];
  if (row === undefined) return new Fault("#N/A");
  const at = width(matrix) === 1 ? 0 : c;
  return at < row.length ? (row[at] ?? null) : new Fault("#N/A");
}

export function lift(matrices: Matrix[], one: (...values: Value[]) => Value): Matrix {
  const rows = Math.max(...matrices.map((m) => m.length));
  const columns = Math.max(...matrices.map(width));
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => one(...matrices.map((m) => spread(m, r, c)))),
  );
}

export function toNumber(value: Value): number | Fault {
  if (value instanceof Fault) return value;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "number") return value;
  const text = value.trim();
  return text !== "" && Number.isFinite(Number(text)) ? Number(text) : new Fault("#VALUE!");
}

export function toText(value: Value): string | Fault {
  if (value instanceof Fault) return value;
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  const short = Number(value.toPrecision(15));
  const plain = String(short);
  return plain.includes("e") && Math.abs(short) < 1e21 && Math.abs(short) >= 1e-9
    ? short.toFixed(20).replace(/\.?0+$/, "")
    : plain.replace("e", "E");
}

export function compare(a: Value, b: Value): number {
  const rank = (v: Value): number => (typeof v === "number" ? 0 : typeof v === "string" ? 1 : 2);
  const fill = (v: Value, other: Value): Value =>
    v !== null ? v : typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
  const x = fill(a, b);
  const y = fill(b, a);
  if (rank(x) !== rank(y)) return rank(x) - rank(y);
  if (typeof x === "string" && typeof y === "string") {
    const p = x.toLowerCase();
    const q = y.toLowerCase();
    return p < q ? -1 : p > q ? 1 : 0;
  }
  const p = Number(x);
  const q = Number(y);
  return p < q ? -1 : p > q ? 1 : 0;
}

/** Errors go from left to right, text that is no number among them (M: "open" - #NAME? is #VALUE!). */
export function operate(op: string, a: Value, b: Value): Value {
  if (a instanceof Fault) return a;
  if (b instanceof Fault && ["&", "=", "<>", "<", ">", "<=", ">="].includes(op)) return b;
  if (op === "&") return `${toText(a) as string}${toText(b) as string}`;
  if (["=", "<>", "<", ">", "<=", ">="].includes(op)) {
    const order = compare(a, b);
    if (op === "=") return order === 0;
    if (op === "<>") return order !== 0;
    if (op === "<") return order < 0;
    if (op === ">") return order > 0;
    return op === "<=" ? order <= 0 : order >= 0;
  }
  const x = toNumber(a);
  const y = toNumber(b);
  if (x instanceof Fault) return x;
  if (y instanceof Fault) return y;
  if (op === "/" && y === 0) return new Fault("#DIV/0!");
  const result =
    op === "+" ? x + y : op === "-" ? x - y : op === "*" ? x * y : op === "/" ? x / y : Math.pow(x, y);
  if (!Number.isFinite(result)) return new Fault("#NUM!");
  const near = (op === "+" || op === "-") && Math.abs(result) < 1e-15 * Math.max(Math.abs(x), Math.abs(y));
  return near ? 0 : result;
}

export function round(value: number, digits: number, up = false): number {
  const shifted = Number(
    `${Math.abs(value).toPrecision(15)}e${digits}`.replace(
      /e([+-]\d+)e(-?\d+)$/,
      (_, a, b) => `e${Number(a) + Number(b)}`,
    ),
  );
  const whole = up
    ? Math.ceil(Number(shifted.toPrecision(15)))
    : Math.floor(Number(shifted.toPrecision(15)) + 0.5);
  return Math.sign(value) * Number(`${whole}e${-digits}`);
}

/** A criterion of COUNTIF and the like: an operator and a value, wildcards in text, ~ before a plain mark. */
export function criterion(value: Value): (cell: Value) => boolean {
  if (value instanceof Fault) return (cell) => cell instanceof Fault && cell.code === value.code;
  const text = toText(value) as string;
  const parts = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(text);
  const op = parts?.[1] ?? "=";
  const rest = parts?.[2] ?? "";
  const number = rest.trim() !== "" && Number.isFinite(Number(rest)) ? Number(rest) : undefined;
  if (op === "=" || op === "<>") {
    const pattern = wildcard(rest);
    const same = (cell: Value): boolean => {
      if (cell instanceof Fault) return false;
      if (rest === "") return parts?.[1] === undefined ? cell === "" || cell === null : cell === null;
      if (number !== undefined && typeof cell === "number") return cell === number;
      return typeof cell === "string" && pattern.test(cell);
    };
    return op === "=" ? same : (cell) => !same(cell);
  }
  return (cell) => {
    if (number !== undefined ? typeof cell !== "number" : typeof cell !== "string") return false;
    return operate(op, cell, number ?? rest) === true;
  };
}

export function wildcard(text: string): RegExp {
  let out = "";
  for (let i = 0; i < text.length; i++) {
    const ch = text[i] ?? "";
    const next = text[i + 1];
    if (ch === "~" && next !== undefined && "*?~".includes(next)) {
      out += `\\${next === "~" ? "~" : next}`.replace("\\~", "~");
      i++;
    } else if (ch === "*") out += "[\\s\\S]*";
    else if (ch === "?") out += "[\\s\\S]";
    else out += ch.replace(/[.+^${}()|[\]\\/]/g, "\\$&");
  }
  return new RegExp(`^${out}$`, "i");
}

/** The first fault of any matrix, row by row. */
export function fault(...matrices: Matrix[]): Fault | undefined {
  for (const matrix of matrices)
    for (const row of matrix) for (const value of row) if (value instanceof Fault) return value;
  return undefined;
}
