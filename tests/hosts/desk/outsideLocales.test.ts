/** Cases of an outsider: how figures are shown in thirteen locales, and what is meant by what is typed there. */
import { CellEntry, enterTyped } from "../../../src/hosts/desk/page/cellEntry";
import { registerPastePlugin } from "../../../src/hosts/desk/page/pastePlugin";
import { registerDeskPlugin } from "../../../src/hosts/desk/page/deskPlugin";
import { formattedAs } from "../../../src/hosts/grid/asWritten";
import type { GridModel } from "../../../src/hosts/grid/library";
import { registerShownAsWritten } from "../../../src/hosts/grid/shownAsWritten";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { alignmentCard } from "../../../src/workbooks/alignmentCard/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { isoDate, sheetDate } from "../../../src/workbooks/sheetDate";
import { readTyped } from "../../../src/workbooks/typed/readTyped";
import { DATES, type TypedKind } from "../../../src/workbooks/typed/typedKind";
import { WRITING_FIELD, writingOf } from "../../../src/workbooks/typed/writing";
import cases from "../../fixtures/locales/cases.json";

type Meaning = number | string | readonly Meaning[];
interface Case {
  readonly id: string;
  readonly locale: string;
  readonly kind: string;
  readonly value: number | string | null;
  readonly format: string | null;
  readonly shown: string | null;
  readonly typed: string | null;
  readonly means: Meaning | null;
  readonly also?: readonly Meaning[];
  readonly never?: readonly Meaning[];
  readonly cell?: string;
}
const all = cases as readonly Case[];

const NO_SIGN =
  "the currency stands once, in words, on Site and on the quote; a sum's stored format has no sign of it";
const TWO_DIGITS = "day and month have two digits, so that a column of dates stands in line";

/** Where we judge otherwise, and why. */
const OTHERWISE: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [
      "en-gb-show-gbp",
      "en-us-show-usd",
      "de-de-show-eur",
      "de-ch-show-chf",
      "fr-fr-show-eur",
      "nl-nl-show-eur",
    ]
      .concat(["it-it-show-eur", "pl-pl-show-pln", "sv-se-show-sek", "cs-cz-show-czk", "da-dk-show-dkk"])
      .concat("es-es-show-eur")
      .map((id) => [id, NO_SIGN]),
  ),
  "de-de-show-date-leap": TWO_DIGITS,
  "en-us-show-date-leap": TWO_DIGITS,
  "de-de-type-quote":
    "a number is asked for in this cell, so a text is refused; where nothing is asked it is text",
};

const library = loadLibrary();
registerShownAsWritten(library);
enterTyped(library, new CellEntry());
const guard = { unlocked: new Set<string>(), refused: () => undefined };
registerDeskPlugin(library, guard);
registerPastePlugin(library, guard);

const FORMATS: Readonly<Record<string, string | undefined>> = {
  "money 2 decimals": "#,##0.00",
  integer: "#,##0",
  percent: "0.0%",
  date: "yyyy-mm-dd",
  general: undefined,
};
const dayOf = (iso: string): number => sheetDate(...(iso.split("-").map(Number) as [number, number, number]));

function shown({ locale, value, format }: Case): string {
  const number = typeof value === "string" ? dayOf(value) : value;
  const [kind] = format!.split(", ");
  return formattedAs(library, number, FORMATS[kind!], writingOf(locale));
}

const CURRENCIES: Readonly<Record<string, string>> = {
  "en-GB": "GBP",
  "en-US": "USD",
  "de-CH": "CHF",
  "pl-PL": "PLN",
  "cs-CZ": "CZK",
  "da-DK": "DKK",
  "sv-SE": "SEK",
};

const KINDS: Readonly<Record<string, TypedKind>> = {
  number: { kind: "number", quantity: "money" },
  length: { kind: "number", quantity: "length", unit: "m" },
  percent: { kind: "number", quantity: "share" },
  date: { kind: "date", ...DATES },
  name: { kind: "text", maxLength: 250 },
};

/** In a cell of the template, as its column's rule has it. */
function asked(text: string, { locale, cell }: Case): Meaning {
  const kind = cell === "number" && / (?:m|ft)$/.test(text) ? "length" : cell!;
  const currency = CURRENCIES[locale] ?? "EUR";
  const reading = readTyped(text, KINDS[kind]!, {
    writing: writingOf(locale)!,
    currency,
    lengths: "m",
  });
  if ("refused" in reading) return "ask";
  const { value } = reading;
  return typeof value !== "number" ? "text" : kind === "date" ? isoDate(value) : value;
}

/** What stands on a sheet of one's own when it has been typed, or pasted, there. */
function jottedDown({ locale, typed, cell }: Case): Meaning {
  const model = openModel(layOut(alignmentCard, { fields: { [WRITING_FIELD]: writingOf(locale)!.label } }));
  const dispatch = (type: string, payload: object): void =>
    quietly(() => void model.dispatch(type as never, payload as never));
  const from = model.getters.getActiveSheetId();
  dispatch("CREATE_SHEET", { sheetId: "own", position: 1, name: "own" });
  dispatch("ACTIVATE_SHEET", { sheetIdFrom: from, sheetIdTo: "own" });
  if (cell === "row") {
    const zone = { top: 0, bottom: 0, left: 0, right: 0 };
    dispatch("PASTE_FROM_OS_CLIPBOARD", { target: [zone], clipboardContent: { text: typed! } });
    const width = typed!.split("\t").length;
    const row = Array.from({ length: width }, (_, col) => standing(model, col));
    return width === 1 ? row[0]! : row;
  }
  const container = new library.stores.DependencyContainer();
  container.inject(library.stores.ModelStore, model);
  const editor = container.get(library.stores.CellComposerStore) as unknown as {
    startEdition(): void;
    setCurrentContent(text: string): void;
    stopEdition(): void;
  };
  quietly(() => {
    editor.startEdition();
    editor.setCurrentContent(typed!);
    editor.stopEdition();
  });
  return standing(model, 0);
}

function standing({ getters }: GridModel, col: number): Meaning {
  const { value, type, format } = getters.getEvaluatedCell({ sheetId: "own", row: 0, col });
  if (type === "error") return "ask";
  if (typeof value !== "number") return "text";
  return format?.includes("y") ? isoDate(value) : value;
}

function understood(one: Case): Meaning {
  if (one.cell === "formula" || one.cell === "row") return jottedDown(one);
  const parts = one.typed!.split("\n").map((text) => asked(text, one));
  // Each cell that is refused is named, and the others are taken.
  return parts.length === 1 ? parts[0]! : parts.includes("ask") ? "ask" : parts;
}

const same = (one: Meaning, other: Meaning): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) < 1e-9
    : JSON.stringify(one) === JSON.stringify(other);

test("each case is as its author has it, or stands with our reason", () => {
  const off: Record<string, string> = {};
  let silently = 0;
  for (const one of all) {
    const { id, kind, also = [], never = [] } = one;
    const is = kind === "show" ? shown(one) : understood(one);
    const wanted = [kind === "show" ? one.shown! : one.means!, ...also];
    if (wanted.some((other) => same(is, other))) continue;
    off[id] =
      `${JSON.stringify(kind === "show" ? one.value : one.typed)}: ${JSON.stringify(is)}, wanted ${JSON.stringify(wanted)}`;
    if (never.some((other) => same(is, other))) silently++;
  }
  console.info(`${all.length - Object.keys(off).length} of ${all.length} as wanted, ${silently} never to be`);
  expect(silently).toBe(0);
  const unexpected = Object.entries(off).filter(([id]) => !(id in OTHERWISE));
  expect(unexpected).toEqual([]);
  // A reason that has become untrue goes.
  expect(Object.keys(OTHERWISE).filter((id) => !(id in off))).toEqual([]);
});
