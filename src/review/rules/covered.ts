import { columnLetters } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import type { SavedDrawing } from "../../workbooks/savedFile";
import type { Finding } from "../finding";
import { isBlank } from "../namedCells";
import type { Rule } from "../rule";
import { tellsPath } from "../tellsInside";
import { isForCustomer, templateSheets, type TemplateCell, type TemplateSheet } from "../templateCells";

export const covered: Rule = {
  id: "drawn over",
  reason: "What lies on the cells is what the page shows; no formula knows of it.",
  example: "A text box of 9,900.00 lies on the total.",
  find: ({ read, definition }) => {
    const file = read.saved?.file;
    if (!definition || !file) return [];
    const sheets = templateSheets(read, definition);
    return file.sheets.flatMap(({ name, drawings }) => {
      const sheet = sheets.find((one) => one.sheet.name === name);
      return sheet ? drawings.flatMap((drawing) => ofDrawing(drawing, sheet, read)) : [];
    });
  },
};

function ofDrawing(drawing: SavedDrawing, sheet: TemplateSheet, read: Book): Finding[] {
  const { kind, top, left, bottom, right, text } = drawing;
  const name = sheet.sheet.name;
  const forCustomer = isForCustomer(sheet);
  const at = `${columnLetters(left)}${top + 1}`;
  if (kind === "object")
    return [
      {
        weight: "doubtful",
        place: { sheet: name, cell: at },
        message: `Another document is embedded in the sheet ${name} (an OLE object, ${drawing.name || "of no name"}).`,
        effect: "Whoever gets the file can open it and read what is in it.",
        remedy: "Look what it holds, and delete it before the file goes out.",
      },
    ];
  if (kind === "picture" && tellsPath(text))
    return [
      {
        weight: "worth knowing",
        place: { sheet: name, cell: at },
        message: `The alternative text of a picture at ${at} holds a path of the office's disc: ${text.slice(0, 100)}.`,
        effect: "Whoever gets the file can read it; it tells names of folders and people.",
        remedy: "Change it: right-click the picture, Edit Alt Text.",
      },
    ];
  const under = sheet.cells.filter(
    ({ place: { row, column }, value }) =>
      row >= top && row <= bottom && column >= left && column <= right && !isBlank(value),
  );
  const figures = under.filter(({ value }) => typeof value === "number");
  const what =
    kind === "picture"
      ? "A picture"
      : kind === "chart"
        ? "A chart"
        : kind === "text box"
          ? "A text box"
          : "A shape";
  const said = text === "" ? "" : ` with the text “${text.slice(0, 100)}”`;
  if (kind === "text box" && /\d/.test(text) && forCustomer) {
    // Its own figure, unless it is one that the sheet shows as well.
    const own = numbersIn(text).filter((figure) => !shownOn(read, name, figure));
    if (own.length > 0 && figures.length > 0)
      return [
        {
          weight: "wrong",
          place: { sheet: name, cell: figures[0]?.at ?? at },
          message: `A text box (a drawing)${said} ${under.length > 0 ? `covers ${listed(under)}` : `lies at ${at}`}: the page shows a figure that no cell holds.`,
          effect: "The customer reads a figure that does not follow from the job.",
          remedy: "Delete the text box; give a discount in its own cells on Terms.",
        },
      ];
  }
  if (under.length === 0 || drawing.clear) return [];
  // One that only touches the words above a block hides nothing of weight on a sheet of the office.
  if (!forCustomer && figures.length === 0) return [];
  return [
    {
      weight: forCustomer && figures.length > 0 ? "wrong" : "doubtful",
      place: { sheet: name, cell: (figures[0] ?? under[0]!).at },
      message: `${what} (a drawing)${said} covers ${listed(under)} of the sheet ${name}.`,
      effect: "What lies under it counts and is not seen, on screen or on paper.",
      remedy: "Move it away, or delete it.",
    },
  ];
}

const listed = (under: readonly TemplateCell[]): string =>
  under.length === 1
    ? under[0]!.at
    : `${under[0]!.at} and ${under.length - 1} more filled ${under.length === 2 ? "cell" : "cells"}`;

/** As a page writes them, with groups. */
const numbersIn = (text: string): number[] =>
  (text.match(/\d[\d,' ]*(?:\.\d+)?/g) ?? [])
    .map((one) => Number(one.replace(/[,' ]/g, "")))
    .filter((one) => one >= 100);

const HALF_A_CENT = 0.005;
const shownOn = (read: Book, sheet: string, figure: number): boolean => {
  const found = read.sheets.find(({ name }) => name === sheet);
  return [
    ...Object.values(found?.results ?? {}),
    ...Object.values(found?.cells ?? {}).map(({ value }) => value),
  ].some((value) => typeof value === "number" && Math.abs(value - figure) < HALF_A_CENT);
};
