/** The native functions that the templates use, and a few more, each over matrices. From memory of Excel's help. */
import {
  Fault,
  type Matrix,
  type Value,
  compare,
  criterion,
  fault,
  first,
  lift,
  round,
  single,
  toNumber,
  toText,
  wildcard,
} from "./formulas";

/** An argument: its matrix, and whether it came from cells (text and TRUE in cells are skipped by SUM). */
export interface Argument {
  matrix: Matrix;
  cells: boolean;
}
type Native = (args: (Argument | null)[]) => Matrix;

const bad = new Fault("#VALUE!");

const scalar =
  (one: (...values: Value[]) => Value, least = 1): Native =>
  (args) => {
    const matrices = args.map((a) => a?.matrix ?? single(null));
    while (matrices.length < least) matrices.push(single(null));
    return lift(matrices, (...values) => {
      for (const value of values) if (value instanceof Fault) return value;
      return one(...values);
    });
  };

const numeric = (one: (...numbers: number[]) => number): Native =>
  scalar((...values) => {
    const numbers: number[] = [];
    for (const value of values) {
      const n = toNumber(value);
      if (n instanceof Fault) return n;
      numbers.push(n);
    }
    const result = one(...numbers);
    return Number.isFinite(result) ? result : new Fault("#NUM!");
  });

const test =
  (one: (value: Value) => boolean): Native =>
  (args) =>
    lift([args[0]?.matrix ?? single(null)], one);

function numbersOf(args: (Argument | null)[]): number[] | Fault {
  const found: number[] = [];
  for (const arg of args) {
    if (arg === null) continue;
    const lone = !arg.cells && arg.matrix.length === 1 && arg.matrix[0]?.length === 1;
    for (const value of arg.matrix.flat()) {
      if (value instanceof Fault) return value;
      if (typeof value === "number") found.push(value);
      else if (lone && value !== null) {
        const n = toNumber(value);
        if (n instanceof Fault) return n;
        found.push(n);
      }
    }
  }
  return found;
}

const total =
  (one: (numbers: number[]) => Value): Native =>
  (args) => {
    const numbers = numbersOf(args);
    return single(numbers instanceof Fault ? numbers : one(numbers));
  };

const text = (value: Value): string => toText(value) as string;
const whole = (value: Value): number => {
  const n = toNumber(value);
  return n instanceof Fault ? NaN : Math.trunc(n);
};

function match(value: Value, within: Value[], kind: number): Value {
  if (value instanceof Fault) return value;
  if (value === null) return new Fault("#N/A");
  if (kind === 0) {
    const pattern = typeof value === "string" && /[*?~]/.test(value) ? wildcard(value) : undefined;
    const at = within.findIndex((item) => {
      if (item === null || item instanceof Fault || typeof item !== typeof value) return false;
      return pattern !== undefined ? pattern.test(text(item)) : compare(item, value) === 0;
    });
    return at < 0 ? new Fault("#N/A") : at + 1;
  }
  let at = -1;
  within.forEach((item, i) => {
    if (typeof item === typeof value && compare(item, value) * kind <= 0) at = i;
  });
  return at < 0 ? new Fault("#N/A") : at + 1;
}

function index(matrix: Matrix, row: Value, column: Value | undefined): Value {
  if (row instanceof Fault) return row;
  if (column instanceof Fault) return column;
  let r = whole(row);
  let c = column === undefined ? 1 : whole(column);
  if (column === undefined && matrix.length === 1 && (matrix[0]?.length ?? 0) > 1) [r, c] = [1, r];
  if (Number.isNaN(r) || Number.isNaN(c)) return bad;
  if (r === 0) r = 1;
  if (c === 0) c = 1;
  const line = matrix[r - 1];
  return r < 1 || c < 1 || line === undefined || c > line.length ? new Fault("#REF!") : (line[c - 1] ?? null);
}

/** COUNTIF, COUNTIFS, SUMIF, SUMIFS: pairs of a range and a criterion; the criterion may be an array. */
function conditional(pairs: (Argument | null)[], sum: Matrix | undefined): Matrix {
  const ranges = pairs.filter((_, i) => i % 2 === 0).map((a) => a?.matrix.flat() ?? []);
  const criteria = pairs.filter((_, i) => i % 2 === 1).map((a) => a?.matrix ?? single(0));
  const summed = sum?.flat();
  return lift(criteria, (...values) => {
    const tests = values.map(criterion);
    let result = 0;
    for (let i = 0; i < (ranges[0]?.length ?? 0); i++) {
      if (!tests.every((one, k) => one(ranges[k]?.[i] ?? null))) continue;
      if (summed === undefined) result++;
      else {
        const value = summed[i] ?? null;
        if (value instanceof Fault) return value;
        if (typeof value === "number") result += value;
      }
    }
    return result;
  });
}

const logic =
  (every: boolean): Native =>
  (args) => {
    const values = args.flatMap((a) => a?.matrix.flat() ?? []);
    const wrong = values.find((v) => v instanceof Fault);
    if (wrong !== undefined) return single(wrong);
    const truths = values.filter((v) => typeof v === "number" || typeof v === "boolean").map(Boolean);
    return single(truths.length === 0 ? bad : every ? truths.every(Boolean) : truths.some(Boolean));
  };

const day = (serial: number): Date => new Date(Math.round((Math.floor(serial) - 25569) * 86400000));

export const NATIVE: Record<string, Native> = {
  SUM: total((n) => n.reduce((a, b) => a + b, 0)),
  MIN: total((n) => (n.length === 0 ? 0 : Math.min(...n))),
  MAX: total((n) => (n.length === 0 ? 0 : Math.max(...n))),
  AVERAGE: total((n) => (n.length === 0 ? new Fault("#DIV/0!") : n.reduce((a, b) => a + b, 0) / n.length)),
  COUNT: (args) =>
    single(args.flatMap((a) => a?.matrix.flat() ?? []).filter((v) => typeof v === "number").length),
  COUNTA: (args) => single(args.flatMap((a) => a?.matrix.flat() ?? []).filter((v) => v !== null).length),
  COUNTBLANK: (args) => single((args[0]?.matrix.flat() ?? []).filter((v) => v === null || v === "").length),
  SUMPRODUCT: (args) => {
    const matrices = args.map((a) => a?.matrix ?? single(0));
    const wrong = fault(...matrices);
    if (wrong !== undefined) return single(wrong);
    let sum = 0;
    (matrices[0] ?? []).forEach((row, r) => {
      row.forEach((_, c) => {
        let product = 1;
        for (const m of matrices) {
          const value = m[r]?.[c];
          product *= typeof value === "number" ? value : 0;
        }
        sum += product;
      });
    });
    return single(sum);
  },
  SMALL: (args) => {
    const numbers = numbersOf([
      args[0] === null || args[0] === undefined ? null : { ...args[0], cells: true },
    ]);
    if (numbers instanceof Fault) return lift([args[1]?.matrix ?? single(1)], () => numbers);
    numbers.sort((a, b) => a - b);
    return lift([args[1]?.matrix ?? single(1)], (k) =>
      k instanceof Fault ? k : (numbers[whole(k) - 1] ?? new Fault("#NUM!")),
    );
  },
  LARGE: (args) => {
    const numbers = numbersOf([
      args[0] === null || args[0] === undefined ? null : { ...args[0], cells: true },
    ]);
    if (numbers instanceof Fault) return lift([args[1]?.matrix ?? single(1)], () => numbers);
    numbers.sort((a, b) => b - a);
    return lift([args[1]?.matrix ?? single(1)], (k) =>
      k instanceof Fault ? k : (numbers[whole(k) - 1] ?? new Fault("#NUM!")),
    );
  },
  MATCH: (args) => {
    const kind = args.length < 3 ? 1 : whole(first(args[2]?.matrix ?? single(0)));
    const within = args[1]?.matrix.flat() ?? [];
    return lift([args[0]?.matrix ?? single(null)], (value) => match(value, within, kind));
  },
  INDEX: (args) => {
    const source = args[0]?.matrix ?? single(null);
    const rows = args[1]?.matrix ?? single(0);
    const columns = args[2]?.matrix;
    return columns === undefined
      ? lift([rows], (r) => index(source, r, undefined))
      : lift([rows, columns], (r, c) => index(source, r, c));
  },
  COUNTIF: (args) => conditional(args, undefined),
  COUNTIFS: (args) => conditional(args, undefined),
  SUMIF: (args) => conditional(args.slice(0, 2), args[2]?.matrix ?? args[0]?.matrix),
  SUMIFS: (args) => conditional(args.slice(1), args[0]?.matrix),
  ISERROR: test((v) => v instanceof Fault),
  ISERR: test((v) => v instanceof Fault && v.code !== "#N/A"),
  ISNA: test((v) => v instanceof Fault && v.code === "#N/A"),
  ISNUMBER: test((v) => typeof v === "number"),
  ISTEXT: test((v) => typeof v === "string"),
  ISBLANK: test((v) => v === null),
  ISLOGICAL: test((v) => typeof v === "boolean"),
  "ERROR.TYPE": (args) =>
    lift([args[0]?.matrix ?? single(null)], (v) => {
      const types = [
        "#NULL!",
        "#DIV/0!",
        "#VALUE!",
        "#REF!",
        "#NAME?",
        "#NUM!",
        "#N/A",
        "#GETTING_DATA",
        "#SPILL!",
      ];
      types.push("#CONNECT!", "#BLOCKED!", "#UNKNOWN!", "#FIELD!", "#CALC!");
      return v instanceof Fault && types.includes(v.code) ? types.indexOf(v.code) + 1 : new Fault("#N/A");
    }),
  NOT: scalar((v) => {
    const n = toNumber(v);
    return n instanceof Fault ? n : n === 0;
  }),
  AND: logic(true),
  OR: logic(false),
  NA: () => single(new Fault("#N/A")),
  TRUE: () => single(true),
  FALSE: () => single(false),
  N: (args) =>
    lift([args[0]?.matrix ?? single(null)], (v) =>
      v instanceof Fault || typeof v === "number" ? v : v === true ? 1 : 0,
    ),
  T: (args) =>
    lift([args[0]?.matrix ?? single(null)], (v) => (v instanceof Fault || typeof v === "string" ? v : "")),
  ABS: numeric(Math.abs),
  INT: numeric(Math.floor),
  SIGN: numeric(Math.sign),
  SQRT: numeric(Math.sqrt),
  LOG10: numeric(Math.log10),
  LOG: numeric((n, base) => Math.log(n) / Math.log(base ?? 10)),
  LN: numeric(Math.log),
  EXP: numeric(Math.exp),
  POWER: numeric((a, b) => Math.pow(a, b ?? 0)),
  MOD: scalar((a, b) => {
    const x = toNumber(a);
    const y = toNumber(b ?? null);
    if (x instanceof Fault) return x;
    if (y instanceof Fault) return y;
    return y === 0 ? new Fault("#DIV/0!") : x - y * Math.floor(x / y);
  }, 2),
  ROUND: numeric((n, digits) => round(n, digits ?? 0)),
  ROUNDUP: numeric((n, digits) => round(n, digits ?? 0, true)),
  ROUNDDOWN: numeric((n, digits) => Math.trunc(n * 10 ** (digits ?? 0)) / 10 ** (digits ?? 0)),
  YEAR: numeric((n) => day(n).getUTCFullYear()),
  MONTH: numeric((n) => day(n).getUTCMonth() + 1),
  DAY: numeric((n) => day(n).getUTCDate()),
  LEN: scalar((v) => text(v).length),
  TRIM: scalar((v) => text(v).replace(/ +/g, " ").replace(/^ | $/g, "")),
  UPPER: scalar((v) => text(v).toUpperCase()),
  LOWER: scalar((v) => text(v).toLowerCase()),
  EXACT: scalar((a, b) => text(a) === text(b ?? null), 2),
  VALUE: scalar((v) => toNumber(v)),
  LEFT: (args) =>
    scalar((v, n) => text(v).slice(0, whole(n ?? 1)))(args.length < 2 ? [...args, one()] : args),
  RIGHT: (args) =>
    scalar((v, n) => {
      const count = whole(n ?? 1);
      return count === 0 ? "" : text(v).slice(-count);
    })(args.length < 2 ? [...args, one()] : args),
  MID: scalar((v, start, n) => text(v).substr(whole(start ?? 1) - 1, whole(n ?? 0)), 3),
  REPLACE: scalar((v, start, n, put) => {
    const from = whole(start ?? 1) - 1;
    const source = text(v);
    return source.slice(0, from) + text(put ?? null) + source.slice(from + whole(n ?? 0));
  }, 4),
  SUBSTITUTE: scalar(
    (v, from, to) =>
      text(v)
        .split(text(from ?? null))
        .join(text(to ?? null)),
    3,
  ),
  FIND: scalar((what, within) => {
    const at = text(within ?? null).indexOf(text(what));
    return at < 0 ? bad : at + 1;
  }, 2),
  SEARCH: scalar((what, within) => {
    const at = text(within ?? null)
      .toLowerCase()
      .indexOf(text(what).toLowerCase());
    return at < 0 ? bad : at + 1;
  }, 2),
  CONCATENATE: scalar((...values) => values.map(text).join("")),
};

function one(): Argument {
  return { matrix: single(1), cells: false };
}
