/** How the pages come out: what of a sheet prints, how large, and what stands at head and foot. */
import { readAreas } from "../../formula/readAreas";
import { address, isInside, parseRange } from "../../formula/address";
import { estimate } from "../../workbooks/multiRoom/names";
import { printFootOf } from "../../workbooks/printFoot";
import type { SavedMargin, SavedSheet } from "../../workbooks/savedFile";
import type { Finding } from "../finding";
import { strangeNames } from "../knownWords";
import { isBlank, namedCells } from "../namedCells";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets, type TemplateSheet } from "../templateCells";
import { tellsInside, tellsPath } from "../tellsInside";

const AREA = "_xlnm.Print_Area";
const TITLES = "_xlnm.Print_Titles";
/** Percent of scale between which a page is read with ease, more or less. */
const SMALL_SCALE = 40;
const STAMP_SCALE = 20;
const LARGE_SCALE = 200;
/** A4 less its margins and foot, in points, upright. */
const PAGE_POINTS = { portrait: 720, landscape: 480 };
const ROW_POINTS = 15;
/** Smaller than so much of its size a list is not read. */
const LEAST_FIT = 0.3;

/** What is longer is no such text, and a pattern takes its time over it. */
const MOST_LETTERS = 300;

export const printedPage: Rule = {
  id: "page",
  reason: "The customer gets the page, and the page may leave out, cut or add.",
  example: "The print area ends above the total; the foot names another quote.",
  find: (reviewed) => {
    const { read, definition, earlier } = reviewed;
    const file = read.saved?.file;
    if (!definition || earlier || !file) return [];
    return templateSheets(read, definition).flatMap((sheet) => {
      const saved = file.sheets.find(({ name }) => name === sheet.sheet.name);
      if (!saved) return [];
      const named = (name: string): string | undefined =>
        file.names.find((one) => one.name === name && one.sheet === saved.name)?.text;
      return [
        ...area(sheet, named(AREA), reviewed),
        ...titles(sheet, named(TITLES)),
        ...size(sheet, saved),
        ...breaks(sheet, saved, reviewed),
        ...settings(sheet, saved),
        ...saved.margins.flatMap((margin) => atMargin(sheet, margin, reviewed)),
      ];
    });
  },
};

function area(sheet: TemplateSheet, text: string | undefined, { read, labelAt }: Reviewed): Finding[] {
  const name = sheet.sheet.name;
  // Without one all of the sheet prints.
  if (text === undefined || text === "") return [];
  if (text.includes("#REF!"))
    return [
      {
        weight: "doubtful",
        place: { sheet: name, cell: "A1" },
        message: `The print area of ${name} (the name ${AREA}) is lost: it leads to #REF!.`,
        effect: "What is printed is then the program's choice.",
        remedy: "Set the print area again: choose the cells, Page Layout, Print Area.",
      },
    ];
  const own = sheet.fresh.print?.area && parseRange(sheet.fresh.print.area);
  const printed = readAreas(read, name, text).map(({ zone }) => zone);
  if (!own || printed.length === 0) return [];
  const out = sheet.cells.filter(
    ({ value, own: cell, place, ownPlace, cell: here }) =>
      !isBlank(value) &&
      (cell !== undefined || here?.look !== undefined) &&
      isInside(own, ownPlace.row, ownPlace.column) &&
      !printed.some((zone) => isInside(zone, place.row, place.column)),
  );
  if (out.length === 0) return [];
  const first = out.find(({ value }) => typeof value === "number") ?? out[0]!;
  const what = typeof first.value === "string" ? `“${first.value.slice(0, 50)}”` : labelAt(name, first.place);
  return [
    {
      weight: isForCustomer(sheet) ? "wrong" : "worth knowing",
      place: { sheet: name, cell: first.at },
      message: `The print area of ${name}, ${text.replace(/\$|'[^']*'!|^[^!]*!/g, "")}, leaves ${out.length} filled ${out.length === 1 ? "cell" : "cells"} outside, among them ${what} (${first.at}).`,
      expected: `As far as the sheet is filled, the template's ${sheet.fresh.print!.area}.`,
      effect: "They are not printed; what is on the page no longer is what is quoted.",
      remedy: "Set the print area again over all that is filled: Page Layout, Print Area.",
    },
  ];
}

function titles(sheet: TemplateSheet, text: string | undefined): Finding[] {
  const found = /\$(\d+):\$(\d+)/.exec(text ?? "");
  if (!found) return [];
  const [from, to] = [Number(found[1]), Number(found[2])];
  const { repeatFrom = 1, repeatTo = 1 } = sheet.fresh.print ?? {};
  const repeated = sheet.cells.filter(({ place: { row } }) => row + 1 >= from && row + 1 <= to);
  const figure = repeated.find(
    ({ value, ownPlace: { row } }) =>
      typeof value === "number" && (row + 1 < repeatFrom || row + 1 > repeatTo),
  );
  if (!figure) return [];
  return [
    {
      weight: "doubtful",
      place: { sheet: sheet.sheet.name, cell: `A${from}` },
      message: `Rows ${from} to ${to} of ${sheet.sheet.name}, which hold figures, are set as print titles: they repeat on every page.`,
      effect: "A reader of the second page takes them as charged again.",
      remedy: "Set “Rows to repeat at top” to the row of the sheet's title: Page Layout, Print Titles.",
    },
  ];
}

function size(sheet: TemplateSheet, { page }: SavedSheet): Finding[] {
  const place = { sheet: sheet.sheet.name, cell: "A1" };
  const forCustomer = isForCustomer(sheet);
  const remedy = `Set the scaling back to fit ${sheet.fresh.print?.onePage ? "one page" : "one page wide"}: Page Layout.`;
  const { scale, fit } = page;
  if (scale !== undefined && (scale < SMALL_SCALE || scale > LARGE_SCALE))
    return [
      {
        weight: forCustomer ? (scale < STAMP_SCALE ? "wrong" : "doubtful") : "worth knowing",
        place,
        message: `${sheet.sheet.name} prints at a scale of ${scale} % (${scale}%).`,
        effect:
          scale < SMALL_SCALE
            ? "Its letters come out too small to read."
            : "It falls apart over many pages, the figures away from what they are for.",
        remedy,
      },
    ];
  if (fit && fit.tall > 0 && !sheet.fresh.print?.onePage) {
    const orientation = sheet.sheet.print?.orientation ?? "portrait";
    const rows =
      1 +
      sheet.cells.reduce(
        (last, { place: { row }, value }) => (isBlank(value) ? last : Math.max(last, row)),
        0,
      );
    const share = (PAGE_POINTS[orientation] * fit.tall) / (rows * ROW_POINTS);
    if (share < LEAST_FIT)
      return [
        {
          weight: "worth knowing",
          place,
          message: `${sheet.sheet.name} is fitted on ${fit.tall === 1 ? "one page" : `${fit.tall} pages`}: its ${rows} rows come out at a scale of some ${Math.round(share * 100)} %, too small to read.`,
          remedy: "Set it to one page wide and any number tall: Page Layout, Height automatic.",
        },
      ];
  }
  return [];
}

function breaks(sheet: TemplateSheet, { page }: SavedSheet, { read }: Reviewed): Finding[] {
  // What is fitted on one page knows no breaks.
  if (!isForCustomer(sheet) || page.rowBreaks.length === 0 || page.fit?.tall === 1) return [];
  const row = (name: string): number | undefined => {
    const at = namedCells(read, name)[0]?.place;
    return at && at.sheet === sheet.sheet.name ? Number(/\d+/.exec(at.cell)?.[0]) : undefined;
  };
  const first = row(estimate.quote.reception.name);
  const last = row(estimate.quote.total.name);
  const within = page.rowBreaks.find(
    (after) => first !== undefined && last !== undefined && after >= first && after < last,
  );
  return within === undefined
    ? []
    : [
        {
          weight: "worth knowing",
          place: { sheet: sheet.sheet.name, cell: address(within, 0) },
          message: `A page break below row ${within} parts the total from the lines that it adds.`,
          effect: "The total stands on another page and can be left behind.",
          remedy: "Take the page break out: Page Layout, Breaks, Reset.",
        },
      ];
}

function settings(
  sheet: TemplateSheet,
  { page, notes, showsFormulas, zerosHidden, rowsHidden }: SavedSheet,
): Finding[] {
  const name = sheet.sheet.name;
  const forCustomer = isForCustomer(sheet);
  const place = { sheet: name, cell: "A1" };
  const found: Finding[] = [];
  const say = (weight: Finding["weight"], message: string, effect: string, remedy: string): void =>
    void found.push({ weight, place, message, effect, remedy });
  if (showsFormulas)
    say(
      forCustomer ? "wrong" : "doubtful",
      `${name} is set to show formulas instead of their values.`,
      "On screen and on paper the formulas stand in the place of the figures.",
      "Switch Show Formulas off (Formulas, or Ctrl and the key left of 1).",
    );
  if (rowsHidden)
    say(
      "doubtful",
      `${name} hides every row without a height of its own.`,
      "What stands there counts without being seen.",
      "Choose all rows and show them again.",
    );
  if (zerosHidden)
    say(
      "worth knowing",
      `${name} does not show zeros.`,
      "A price or a length of 0 looks like an empty cell.",
      "Tick “Show a zero in cells that have zero value” in the options for this sheet.",
    );
  if (!forCustomer) return found;
  if (page.notesPrinted && notes.length > 0)
    found.push({
      weight: "wrong",
      place: { sheet: name, cell: notes[0]!.cell },
      message: `The notes (comments) of ${name} are printed: “${notes[0]!.text.slice(0, 80)}”${notes.length > 1 ? ` and ${notes.length - 1} more` : ""}.`,
      effect: "The customer reads them with the quote.",
      remedy: "Set comments to “(None)” in the page setup, and delete the notes.",
    });
  if (page.firstNumber !== undefined && page.firstNumber !== 1)
    say(
      "worth knowing",
      `The first page number of ${name} is set to ${page.firstNumber}: the foot says page ${page.firstNumber} of 1.`,
      "A reader takes pages as missing.",
      "Set the first page number to automatic in the page setup.",
    );
  const paper = page.otherPaper === undefined ? undefined : SMALL_PAPERS[page.otherPaper];
  if (paper)
    say(
      "doubtful",
      `${name} is set to paper of the size ${paper}: a whole page of A4 is made that small.`,
      "Its letters come out too small to read.",
      "Set the size of the paper to A4 or Letter: Page Layout, Size.",
    );
  if (page.headings || page.gridLines)
    say(
      "worth knowing",
      `${name} prints ${[page.headings && "the headings of rows and columns", page.gridLines && "the gridlines"].filter(Boolean).join(" and ")}.`,
      "Nothing is false by that; it looks like a working print.",
      "Take the tick away: Page Layout, Sheet Options.",
    );
  if (page.errorsAs)
    say(
      "worth knowing",
      `${name} prints errors as ${page.errorsAs}.`,
      "A sum that cannot be computed would print as nothing.",
      "Let cell errors be printed as displayed (page setup, sheet).",
    );
  return found;
}

/** Papers much smaller than A4, by the format's numbers (ECMA-376 part 1, 18.3.1.63, from memory), envelopes and postcards. */
const SMALL_PAPERS: Readonly<Record<number, string>> = {
  6: "Statement",
  11: "A5",
  13: "B5",
  19: "envelope #9",
  20: "envelope #10",
  27: "envelope DL",
  28: "envelope C5",
  31: "envelope C6",
  43: "postcard",
  61: "A5",
  70: "A6",
};

/** Codes of a page's head and foot: fonts, sizes, colours, sides. */
const CODE = /&(?:"[^"]*"|K[0-9A-F]{6}|K\d\d[+-]\d{3}|\d+|[LCRBIUESXYPNDTA+-])/gi;

function atMargin(sheet: TemplateSheet, { at, pages, text }: SavedMargin, { read }: Reviewed): Finding[] {
  const name = sheet.sheet.name;
  const forCustomer = isForCustomer(sheet);
  const which = `${pages === "odd" ? "" : `${pages} page's `}${at}`;
  // Two ampersands are one that prints.
  const words = text
    .split("&&")
    .map((part) => part.replace(/&[ZF]/gi, " ").replace(CODE, " "))
    .join("&")
    .trim();
  const say = (weight: Finding["weight"], message: string, effect: string): Finding[] => [
    {
      weight,
      place: { sheet: name, cell: "A1" },
      message,
      effect,
      remedy: `Change the ${at}: Page Layout, Page Setup, Header/Footer.`,
    },
  ];
  if (tellsInside(words))
    return say(
      forCustomer ? "wrong" : "doubtful",
      `The ${which} of ${name} prints “${words}”: cost or other internal words.`,
      "Whoever gets the page reads it.",
    );
  if (/&[Z]/i.test(text.replace(/&&/g, "")) || tellsPath(words))
    return say(
      forCustomer ? "doubtful" : "worth knowing",
      `The ${which} of ${name} prints a path or file name of the office's disc (${text.replace(/\s+/g, " ").slice(0, 80)}).`,
      "Names of folders tell names, other jobs and more.",
    );
  if (!forCustomer) return [];
  const own = printFootOf(read);
  const number = /\b[\p{L}\p{N}][\p{L}\p{N}./-]*\d[\p{L}\p{N}./-]*(?=,? *revision| *,)/iu.exec(
    words.slice(0, MOST_LETTERS),
  )?.[0];
  if (at === "footer" && own !== "" && /revision \d|\d{4}-\d\d-\d\d/.test(words) && !words.includes(own)) {
    // The sheet's own name stands at its left, the page's number in the middle.
    const shown = words
      .replace(name, "")
      .replace(/Page\s+of/i, "")
      .trim();
    return say(
      number !== undefined && own.includes(number) ? "worth knowing" : "wrong",
      `The footer of ${name} says “${shown}”, and the quote's own number, revision and date are “${own}”.`,
      "Head and foot of one page name two quotes.",
    );
  }
  const strange = [...new Set(strangeNames(read, words))];
  return strange.length >= 2
    ? say(
        "doubtful",
        `The ${which} of ${name} prints “${words}”: ${strange.slice(0, 4).join(", ")} stand nowhere else in this workbook.`,
        "It may name another customer or job than the quote.",
      )
    : [];
}
