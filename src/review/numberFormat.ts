/**
 * What a number looks like under a number format, as a page shows it (ECMA-376 part 1, 18.8.31): as far as it takes
 * to see that a reader reads another figure. Written with a point and commas.
 */

export interface ShownNumber {
  readonly text: string;
  readonly kind: "nothing" | "words" | "number" | "date";
  /** Places behind the point; of General as many as it shows. */
  readonly decimals: number;
  readonly percent: boolean;
  readonly exponent: boolean;
  /** It is divided by a thousand so often. */
  readonly thousandsAway: number;
  /** Words and signs that stand beside the figure. */
  readonly beside: string;
  /** A sign or letters of a currency. */
  readonly currency: string;
  /** Of a date: what it shows. */
  readonly shows: ReadonlySet<"year" | "month" | "day" | "time">;
}

type Piece =
  | { readonly kind: "literal"; readonly text: string; readonly currency?: true }
  | {
      readonly kind: "digit" | "point" | "comma" | "percent" | "general" | "at" | "slash";
      readonly text: string;
    }
  | { readonly kind: "exponent"; readonly text: string }
  | { readonly kind: "date"; readonly text: string };

interface Section {
  readonly condition?: (value: number) => boolean;
  readonly pieces: readonly Piece[];
}

const PIECE =
  /"([^"]*)"?|\\(.)|_.|\*.|\[([^\]]*)\]|(General)|(AM\/PM|A\/P|y+|m+|d+|h+|s+|e+(?![+-]))|(E[+-]0+)|([0#?])|(\.)|(,)|(%)|(@)|(\/)|([\s\S])/gi;
const CONDITION = /^(<=|>=|<>|<|>|=)(-?\d+(?:\.\d+)?)$/;
const CURRENCY = /[$€£¥₤₦₩₪₫₱₴₹₺₽]/;

function sectionOf(format: string): Section {
  let condition: Section["condition"];
  const pieces: Piece[] = [];
  for (const found of format.matchAll(PIECE)) {
    const [
      whole,
      quoted,
      escaped,
      bracket,
      general,
      date,
      exponent,
      digit,
      point,
      comma,
      percent,
      at,
      slash,
      other,
    ] = found as readonly (string | undefined)[];
    const literal = (text: string): void =>
      void pieces.push({ kind: "literal", text, ...(CURRENCY.test(text) && { currency: true }) });
    if (quoted !== undefined) literal(quoted);
    else if (escaped !== undefined) literal(escaped);
    else if (bracket !== undefined) {
      const held = CONDITION.exec(bracket);
      const money = /^\$([^-]*)(?:-.*)?$/.exec(bracket);
      if (held) condition = holds(held[1]!, Number(held[2]));
      else if (money) {
        if (money[1] !== "") pieces.push({ kind: "literal", text: money[1]!, currency: true });
      } else if (/^(?:h+|m+|s+)$/i.test(bracket)) pieces.push({ kind: "date", text: bracket });
    } else if (general) pieces.push({ kind: "general", text: general });
    else if (date) pieces.push({ kind: "date", text: date });
    else if (exponent) pieces.push({ kind: "exponent", text: exponent });
    else if (digit) pieces.push({ kind: "digit", text: digit });
    else if (point) pieces.push({ kind: "point", text: point });
    else if (comma) pieces.push({ kind: "comma", text: comma });
    else if (percent) pieces.push({ kind: "percent", text: percent });
    else if (at) pieces.push({ kind: "at", text: at });
    else if (slash) pieces.push({ kind: "slash", text: slash });
    else if (other !== undefined) literal(other);
    else if (whole) pieces.push({ kind: "literal", text: " " });
  }
  return { condition, pieces };
}

const holds =
  (operator: string, limit: number) =>
  (value: number): boolean => {
    switch (operator) {
      case "<":
        return value < limit;
      case ">":
        return value > limit;
      case "<=":
        return value <= limit;
      case ">=":
        return value >= limit;
      case "<>":
        return value !== limit;
      default:
        return value === limit;
    }
  };

/** At semicolons that are no literals. */
const sectionsOf = (format: string): Section[] =>
  // Each sign has one way to be read: no format takes longer than its length.
  (format.match(/(?:"[^"]*(?:"|$)|[\\_*](?:[\s\S]|$)|\[[^\]]*(?:\]|$)|[^;"\\_*[])*(?:;|$)/g) ?? [])
    .slice(0, format.endsWith(";") ? undefined : -1)
    .map((section) => sectionOf(section.replace(/;$/, "")));

const known = new Map<string, readonly Section[]>();
const MOST_KNOWN = 500;
const MOST_LETTERS = 255;

export function shownNumber(given: string, value: number): ShownNumber {
  // Excel takes no longer ones.
  const format = given.length > MOST_LETTERS ? "General" : given;
  let sections = known.get(format);
  if (!sections) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(format, (sections = sectionsOf(format)));
  }
  const [first, second, third] = sections;
  if (!first) return number(value, sectionOf("General").pieces);
  if (first.condition) {
    const held = sections.slice(0, 3).find(({ condition }) => condition?.(value) ?? true);
    return held ? number(value, held.pieces) : number(value, sectionOf("General").pieces);
  }
  if (value < 0 && second) return number(-value, second.pieces);
  if (value === 0 && third) return number(value, third.pieces);
  return number(value, first.pieces);
}

const NOTHING = new Set<"year" | "month" | "day" | "time">();

function number(value: number, pieces: readonly Piece[]): ShownNumber {
  const literals = pieces.flatMap((piece) => (piece.kind === "literal" ? [piece] : []));
  const currency = literals
    .filter((piece) => piece.currency)
    .map(({ text }) => text)
    .join("")
    .trim();
  const words = literals
    .filter((piece) => !piece.currency)
    .map(({ text }) => text)
    .join("");
  const common = {
    decimals: 0,
    percent: false,
    exponent: false,
    thousandsAway: 0,
    beside: words.trim(),
    currency,
    shows: NOTHING,
  };
  const has = (kind: Piece["kind"]): boolean => pieces.some((piece) => piece.kind === kind);
  if (has("date")) return { ...common, kind: "date", ...dated(value, pieces) };
  const general = has("general") || has("at");
  if (!general && !has("digit")) {
    const text = literals.map((piece) => piece.text).join("");
    return { ...common, kind: text.trim() === "" ? "nothing" : "words", text };
  }
  const digits = pieces.flatMap(({ kind }, index) => (kind === "digit" ? [index] : []));
  const point = pieces.findIndex(({ kind }) => kind === "point");
  const percent = pieces.filter(({ kind }) => kind === "percent").length;
  const exponent = pieces.find(({ kind }) => kind === "exponent");
  const decimals = point < 0 ? 0 : digits.filter((index) => index > point).length;
  const whole = digits.filter((index) => point < 0 || index < point);
  const lastWhole = whole.at(-1) ?? -1;
  let thousandsAway = 0;
  // Behind the last digit, decimals included (ECMA-376, 18.8.31).
  const lastDigit = digits.at(-1) ?? -1;
  while (lastDigit >= 0 && pieces[lastDigit + 1 + thousandsAway]?.kind === "comma") thousandsAway += 1;
  const grouped = pieces.some(
    ({ kind }, index) => kind === "comma" && index > (whole[0] ?? Infinity) && index < lastWhole,
  );
  const scaled = (Math.abs(value) * 100 ** percent) / 1000 ** thousandsAway;
  const least = whole.filter((index) => pieces[index]!.text === "0").length;
  const figure = general
    ? generally(scaled)
    : exponent
      ? scaled
          .toExponential(decimals)
          .replace(/e([+-])(\d)$/, "E$10$2")
          .replace("e", "E")
      : fixed(scaled, decimals, grouped, least);
  let placed = false;
  const text = pieces
    .map((piece) => {
      if (piece.kind === "literal") return piece.text;
      if (piece.kind === "percent") return "%";
      if (!["digit", "general", "at"].includes(piece.kind) || placed) return "";
      placed = true;
      return (value < 0 ? "-" : "") + figure;
    })
    .join("");
  return {
    ...common,
    kind: "number",
    text: text.trim(),
    decimals: general ? (figure.split(".")[1]?.length ?? 0) : decimals,
    percent: percent > 0,
    exponent: exponent !== undefined,
    thousandsAway,
  };
}

/** Eleven characters at most, the point among them; what is beyond that stands as a power of ten (from memory). */
function generally(value: number): string {
  if (value !== 0 && (value < 1e-4 || value >= 1e11))
    return value
      .toExponential(5)
      .replace(/\.?0+e/, "e")
      .replace(/e([+-])(\d)$/, "E$10$2")
      .replace("e", "E");
  const whole = String(Math.trunc(value)).length;
  return String(Number(value.toFixed(Math.max(0, 10 - whole))));
}

function fixed(value: number, decimals: number, grouped: boolean, least: number): string {
  // A half goes away from zero, as sheets round.
  const rounded = Number(`${Math.round(Number(`${value}e${decimals}`))}e-${decimals}`);
  const [whole = "", part] = (Number.isFinite(rounded) ? rounded : value)
    .toFixed(Math.min(decimals, 20))
    .split(".");
  const led = whole === "0" && least === 0 ? "" : whole.padStart(least, "0");
  const parted = grouped ? led.replace(/\B(?=(\d{3})+(?!\d))/g, ",") : led;
  return part === undefined ? parted : `${parted}.${part}`;
}

const DAY_MS = 86_400_000;
const FIRST_DAY = Date.UTC(1899, 11, 30);
const LAST_DAY = 2_958_465;
const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);

function dated(value: number, pieces: readonly Piece[]): Pick<ShownNumber, "text" | "shows"> {
  const shows = new Set<"year" | "month" | "day" | "time">();
  if (value < 0 || value > LAST_DAY) return { text: "########", shows };
  const day = new Date(FIRST_DAY + Math.floor(value) * DAY_MS);
  const text = pieces
    .map((piece, index) => {
      if (piece.kind === "slash") return "/";
      if (piece.kind === "comma" || piece.kind === "literal" || piece.kind === "point") return piece.text;
      if (piece.kind !== "date") return "";
      const letter = piece.text[0]!.toLowerCase();
      const wide = (figure: number): string => String(figure).padStart(Math.min(piece.text.length, 2), "0");
      const before = pieces.slice(0, index).findLast(({ kind }) => kind === "date")?.text[0];
      const after = pieces.slice(index + 1).find(({ kind }) => kind === "date")?.text[0];
      if (letter === "y" || letter === "e") {
        shows.add("year");
        // One e is a year in full.
        return String(day.getUTCFullYear()).slice(letter === "y" && piece.text.length <= 2 ? 2 : 0);
      }
      if (letter === "d") {
        if (piece.text.length < 3) shows.add("day");
        return piece.text.length < 3 ? wide(day.getUTCDate()) : "";
      }
      if (letter === "m" && !/h/i.test(before ?? "") && !/s/i.test(after ?? "")) {
        shows.add("month");
        const name = MONTHS[day.getUTCMonth()]!;
        return piece.text.length > 3
          ? name
          : piece.text.length === 3
            ? name.slice(0, 3)
            : wide(day.getUTCMonth() + 1);
      }
      shows.add("time");
      return "";
    })
    .join("");
  return { text: text.trim(), shows };
}
