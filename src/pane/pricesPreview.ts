/**
 * A supplier's price list before anything is written, in the pane and in the desk's dialog: whose it is, what has to be
 * asked, what its columns are, then what is new, changed, gone and doubtful, each to be taken or left.
 */
import type { ColumnKey } from "../workbooks/prices/headMeaning";
import { waits, type PriceAnswers } from "../workbooks/prices/list";
import { COLUMN_MEANINGS, mappedColumns } from "../workbooks/prices/mappedColumns";
import { likelyList, nearestParts } from "../workbooks/prices/nearestParts";
import { othersInWords, partChangesInWords } from "../workbooks/prices/partChanges";
import { planPrices, type NewPlace, type PricePlan } from "../workbooks/prices/planPrices";
import { supplierNames, type PriceBook } from "../workbooks/prices/priceBook";
import { KINDS, lineInWords, linesOf, summaryOf, type WordedLine } from "../workbooks/prices/priceWords";
import { pricesOf, type PricesFound } from "../workbooks/prices/pricesOf";
import type { PriceTables } from "../workbooks/prices/priceTable";
import { rememberedText } from "../workbooks/prices/remembered";
import { isoDate } from "../workbooks/sheetDate";
import { sentenceInSigns } from "../workbooks/typed/jotted";
import { WRITING_FIELD, writingOf } from "../workbooks/typed/writing";
import { readDate } from "../workbooks/typed/readDate";
import { DATES } from "../workbooks/typed/typedKind";
import { make } from "./dom";
import { mappingTable } from "./mappingTable";
import { questionControl } from "./priceQuestions";
import { newPlaceChoice } from "./newPlaceChoice";

export interface PricesAsked {
  readonly file: PriceTables;
  /** Of the file. */
  readonly name: string;
  readonly book: PriceBook;
  readonly today: number;
  /** Level of the headings. */
  readonly heading: "h2" | "h3";
  /** Told whenever something can be taken, or nothing any more. */
  readonly changed: (words: string | undefined) => void;
}

export interface PricesPreview {
  readonly element: HTMLElement;
  /** What is taken as it is shown now; undefined where nothing is. */
  plan(): PricePlan | undefined;
}

/** Most lines of a kind that are shown; those below are taken or left as the list above says. */
const SHOWN = 100;
const YEAR_DAYS = 365;

export function pricesPreview({ file, name, book, today, heading, changed }: PricesAsked): PricesPreview {
  const known = supplierNames(book);
  const supplier = make("input", {
    id: "prices-supplier",
    className: "pane-input desk-input",
    value: known.length === 1 ? known[0]! : "",
    autocomplete: "off",
  });
  const suppliersKnown = make(
    "datalist",
    { id: "prices-suppliers" },
    ...known.map((value) => make("option", { value })),
  );
  supplier.setAttribute("list", suppliersKnown.id);
  const until = make("input", {
    id: "prices-until",
    className: "pane-input desk-input",
    value: isoDate(today + YEAR_DAYS),
  });
  const results = make("div", { className: "prices-results" });
  const status = make("p", { role: "status", className: "prices-status" });
  let answers: PriceAnswers = {};
  let found: PricesFound | undefined;
  let taken = new Map<number, boolean>();
  let placed = new Map<number, NewPlace>();
  let ended = new Set<string>();
  let pinned = new Set<number>();
  let opened = false;
  const names = book.parts.map((part) => part.name);
  const written = writingOf(book.inputs.fields?.[WRITING_FIELD])?.decimal ?? ".";
  const columns = mappingTable(COLUMN_MEANINGS, (column, { key }) => {
    const chosen = new Map<number, ColumnKey | "">(
      found!.list.columns.map((one) => [one.index, one.key ?? ""]),
    );
    // One column alone is the article, the unit, the pack.
    const several = COLUMN_MEANINGS.find((meaning) => meaning.key === key)?.several;
    if (!several)
      for (const [index, other] of chosen) if (other !== "" && other === key) chosen.set(index, "");
    chosen.set(column, (key ?? "") as ColumnKey | "");
    opened = true;
    answer({ columns: chosen });
  });

  const plan = (): PricePlan | undefined => {
    if (!found || waits(found.list.questions)) return undefined;
    const { list, comparison } = found;
    const made = planPrices(
      book,
      comparison,
      { taken, placed, pinned, ended, until: dateOf(until.value) ?? today + YEAR_DAYS },
      {
        supplier: supplier.value.trim(),
        file: name,
        today,
        columns: rememberedText(list.columns, found.answers),
        ...(list.currency !== undefined && { currency: list.currency }),
        ...(list.from !== undefined && { from: list.from }),
      },
    );
    return made.written + made.ended > 0 ? made : undefined;
  };
  const partChanges = make("div", {});
  const tell = (): void => {
    const made = plan();
    const refused = made?.refused ?? [];
    partChanges.replaceChildren(
      ...listed(
        heading,
        "Prices on Parts then",
        made
          ? partChangesInWords(made.parts).map((words) =>
              sentenceInSigns(words.replace(/^Parts, /, ""), written),
            )
          : [],
      ),
      ...listed(heading, "Another supplier stays in use", made ? othersInWords(made.others) : []),
      ...listed(
        heading,
        "Can't be put in",
        refused.map(({ line, said }) => `line ${line}: ${said}`),
      ),
    );
    const words =
      supplier.value.trim() === ""
        ? "Say whose list it is."
        : found && waits(found.list.questions)
          ? "Answer what is asked first; then prices can be taken."
          : made
            ? `${made.said} Nothing is written yet.`
            : "No price of the list is taken.";
    if (status.textContent !== words) status.textContent = words;
    changed(made && `Take ${made.written === 1 ? "1 price" : `${made.written} prices`}`);
  };
  const answer = (more: PriceAnswers): void => {
    // Another sheet is another list.
    answers = more.sheet === undefined ? { ...answers, ...more } : more;
    read();
  };
  const read = (): void => {
    taken = new Map();
    placed = new Map();
    ended = new Set();
    pinned = new Set();
    found = undefined;
    results.replaceChildren();
    if (supplier.value.trim() !== "") {
      found = pricesOf(file, book, supplier.value.trim(), answers, today);
      results.replaceChildren(...parts(found));
    }
    tell();
  };

  const parts = (now: PricesFound): HTMLElement[] => {
    const { list, comparison, notes } = now;
    columns.show(mappedColumns(list, now.table));
    const asked = list.questions.some(({ id }) => id === "columns");
    const details = make(
      "details",
      { open: opened || asked },
      make("summary", {}, "Columns of the list"),
      scrolled("Columns", columns.element),
    );
    details.addEventListener("toggle", () => (opened = details.open));
    return [
      make("p", {}, `${name}, read as ${list.source}. ${summaryOf(now)}`),
      ...list.questions.map((question) => questionControl(question, now, file, answer)),
      details,
      ...listed(heading, "Notes", [...notes, ...list.notes]),
      ...KINDS.filter(([kind]) => kind !== "same").flatMap(([kind, words]) => {
        const all = linesOf(now, kind);
        if (all.length === 0) return [];
        const shown = all.slice(0, SHOWN).map(lineInWords);
        return [
          make(heading, {}, `${all.length} ${all.length === 1 ? "line" : "lines"} ${words}`),
          scrolled(words, kind === "new" ? newTable(shown) : lineTable(shown)),
          ...(all.length > SHOWN
            ? [
                make(
                  "p",
                  {},
                  kind === "new"
                    ? `and ${all.length - SHOWN} more, which are left out.`
                    : `and ${all.length - SHOWN} more of the kind, which are ${all[SHOWN]!.taken ? "taken" : "left out"}.`,
                ),
              ]
            : []),
        ];
      }),
      ...endings(
        "Not in the list any more: end their offers?",
        comparison.gone.map(({ offer, said }) => [offer.part, offer.article, said]),
      ),
      ...endings(
        "In the list without a price: end their offers?",
        comparison.ended.map(({ offer, said }) => [offer.part, offer.article, said]),
      ),
      ...(list.lines.some((line) => line.until === undefined && line.left === undefined)
        ? [
            make("label", { htmlFor: until.id }, "Prices for which the list names no last day hold until"),
            until,
          ]
        : []),
      partChanges,
    ];
  };

  const tick = (label: string, checked: boolean, chosen: (on: boolean) => void): HTMLInputElement => {
    const box = make("input", { type: "checkbox", checked, ariaLabel: label });
    box.addEventListener("change", () => {
      chosen(box.checked);
      tell();
    });
    return box;
  };
  const pinTick = ({ name: called, line }: WordedLine): HTMLInputElement =>
    tick(`Pin ${called}`, false, (on) => (on ? pinned.add(line) : pinned.delete(line)));
  const lineTable = (lines: readonly WordedLine[]): HTMLTableElement =>
    tableOf(
      [
        "Take",
        ...(book.hasOffers ? ["Pin"] : []),
        "Line",
        "Article",
        "Part",
        "Price",
        "Change",
        "What to know",
      ],
      lines.map((line) => [
        line.open ? tick(`Take ${line.name}`, line.taken, (on) => taken.set(line.line, on)) : "",
        ...(book.hasOffers ? [line.open ? pinTick(line) : ""] : []),
        String(line.line),
        line.name === `line ${line.line}` ? "" : line.name,
        line.part || line.description,
        sentenceInSigns(line.price, written),
        sentenceInSigns(line.change, written),
        line.said,
      ]),
    );
  const newTable = (lines: readonly WordedLine[]): HTMLTableElement =>
    tableOf(
      ["Line", "Article", "In the supplier's words", "Price", "For which part", "What to know"],
      lines.map((line) => [
        String(line.line),
        line.name === `line ${line.line}` ? "" : line.name,
        line.description,
        sentenceInSigns(line.price, written),
        newPlaceChoice(
          {
            label: line.name,
            names,
            nearest: nearestParts(line.description, names),
            list: likelyList(line.description),
            name: line.description,
          },
          (place) => {
            if (place) placed.set(line.line, place);
            else placed.delete(line.line);
            taken.set(line.line, place !== undefined);
            tell();
          },
        ),
        line.said,
      ]),
    );
  const endings = (
    title: string,
    rows: readonly (readonly [part: string, article: string, said: string])[],
  ): HTMLElement[] =>
    rows.length === 0
      ? []
      : [
          make(heading, {}, title),
          scrolled(
            title,
            tableOf(
              ["End", "Part", "Article", "Why"],
              rows
                .slice(0, SHOWN)
                .map(([part, article, said]) => [
                  tick(`End the offer of ${part}`, false, (on) =>
                    on ? ended.add(part) : ended.delete(part),
                  ),
                  part,
                  article,
                  said,
                ]),
            ),
          ),
        ];

  supplier.addEventListener("change", read);
  until.addEventListener("change", () => {
    // What is no day gives way to the one that is used.
    until.value = isoDate(dateOf(until.value) ?? today + YEAR_DAYS);
    tell();
  });
  const element = make(
    "div",
    { className: "prices" },
    make("label", { htmlFor: supplier.id }, "Supplier, as this workbook names it"),
    supplier,
    suppliersKnown,
    results,
    status,
  );
  read();
  return { element, plan };
}

/** As it is typed; undefined for what is no day. */
function dateOf(text: string): number | undefined {
  const read = readDate(text, DATES, {});
  return "refused" in read ? undefined : read.value;
}

const listed = (heading: "h2" | "h3", title: string, lines: readonly string[]): HTMLElement[] =>
  lines.length === 0
    ? []
    : [
        make(heading, {}, title),
        make(
          "ul",
          { className: "survey-list" },
          ...lines.slice(0, SHOWN).map((text) => make("li", {}, text)),
        ),
      ];

/** A wide table scrolls by itself, and by the keyboard too. */
const scrolled = (label: string, content: Node): HTMLElement =>
  make("div", { className: "survey-scrolled", tabIndex: 0, role: "region", ariaLabel: label }, content);

const tableOf = (heads: readonly string[], rows: readonly (readonly (string | Node)[])[]): HTMLTableElement =>
  make(
    "table",
    { className: "survey-table" },
    make("thead", {}, make("tr", {}, ...heads.map((text) => make("th", { scope: "col" }, text)))),
    make(
      "tbody",
      {},
      ...rows.map((cells) =>
        make(
          "tr",
          {},
          ...cells.map((cell, index) =>
            make("td", { className: index === cells.length - 1 ? "prices-said" : "" }, cell),
          ),
        ),
      ),
    ),
  );
