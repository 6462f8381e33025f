/** What guards a workbook and is gone or loosened: protection, locks, rules of entry, marks; and modes of the file. */
import { isInside, parseRange } from "../../formula/address";
import type { BookValidation } from "../../workbooks/book";
import type { Finding } from "../finding";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets, type TemplateSheet } from "../templateCells";

export const guardsGone: Rule = {
  id: "guard removed",
  reason: "A sheet without its protection, rules and marks takes any slip without a word.",
  example: "The margin's rule now takes 22 for 22 %.",
  find: (reviewed) => {
    const { read, definition, earlier } = reviewed;
    const file = read.saved?.file;
    if (!file) return [];
    const modes: Finding[] = [
      ...(file.macros
        ? [
            {
              weight: "wrong" as const,
              message: "By its content type the file is a macro workbook (.xlsm), and it comes as .xlsx.",
              effect: "Excel refuses to open it: format and extension do not match.",
              remedy: "Save it anew as an Excel workbook (.xlsx) without macros.",
            },
          ]
        : []),
      ...(file.dates1904
        ? [
            {
              weight: "wrong" as const,
              message: "The file counts its dates from 1904: every date reads four years and a day later.",
              effect: "The quote's date, its validity and those of prices are not what was entered.",
              remedy:
                "Switch off “Use 1904 date system” in the options for this workbook, and look at all dates.",
            },
          ]
        : []),
    ];
    if (!definition || earlier) return modes;
    const sheets = templateSheets(read, definition);
    return [
      ...modes,
      ...unprotected(sheets),
      ...sheets.flatMap((sheet) => [
        ...unlocked(sheet, reviewed),
        ...rulesOf(sheet, reviewed),
        ...silent(sheet, reviewed),
        ...marks(sheet, reviewed),
      ]),
    ];
  },
};

function unprotected(sheets: readonly TemplateSheet[]): Finding[] {
  const open = sheets.filter(({ sheet, fresh }) => fresh.protected && !sheet.protected);
  if (open.length === 0) return [];
  const all = open.length === sheets.length;
  const names = open.map(({ sheet }) => sheet.name);
  return [
    {
      weight: "worth knowing",
      ...(!all && { place: { sheet: names[0]!, cell: "A1" } }),
      message: all
        ? "No sheet is protected any more."
        : `The protection of ${names.slice(0, 4).join(", ")}${names.length > 4 ? ` and ${names.length - 4} more ${names.length === 5 ? "sheet" : "sheets"}` : ""} is removed.`,
      effect: "A stray key can overwrite formulas.",
      remedy: "Protect them again, without a password: Review, Protect Sheet.",
    },
  ];
}

function unlocked(sheet: TemplateSheet, { labelAt }: Reviewed): Finding[] {
  const open = sheet.cells.filter(
    ({ cell, own, look, ownLook }) =>
      own?.formula !== undefined &&
      cell?.formula !== undefined &&
      look.locked === false &&
      ownLook.locked !== false,
  );
  const [first] = open;
  if (!first) return [];
  return [
    {
      weight: "worth knowing",
      place: { sheet: sheet.sheet.name, cell: first.at },
      message: `${labelAt(sheet.sheet.name, first.place)} is calculated and its cell is unlocked${open.length > 1 ? `, and ${open.length - 1} more of this sheet` : ""}.`,
      effect: "It can be typed over in spite of the sheet's protection.",
      remedy: "Lock it again: Format Cells, Protection.",
    },
  ];
}

const asText = ({ rule }: BookValidation): string => JSON.stringify(rule);

function rulesOf(sheet: TemplateSheet, { labelAt }: Reviewed): Finding[] {
  const { name, validations } = sheet.sheet;
  const here = validations.flatMap((one) => {
    const zone = parseRange(one.range);
    return zone ? [{ one, zone, own: sheet.ownPlaceOf({ row: zone.top, column: zone.left }) }] : [];
  });
  const gone: BookValidation[] = [];
  const found: Finding[] = [];
  for (const own of sheet.fresh.validations) {
    const zone = parseRange(own.range)!;
    // A column's first cell lies in the thin row above it; what is ruled there is ruled below.
    const now = here.filter(
      ({ own: at, zone: there }) => at.column === zone.left && covers(at.row, there, zone),
    );
    if (now.length === 0) {
      gone.push(own);
      continue;
    }
    const same = now.some(({ one }) => asText(one) === asText(own) || one.rule.kind !== own.rule.kind);
    const looser = now.find(({ one }) => (one.warnOnly && !own.warnOnly) || isLooser(one.rule, own.rule));
    if (!looser || (same && !looser.one.warnOnly)) continue;
    const { zone: at } = looser;
    const row = at.top === at.bottom ? at.top : at.top + 1;
    found.push({
      weight: "worth knowing",
      place: { sheet: name, cell: looser.one.range.split(":")[0]! },
      message: `The rule (data validation) of ${labelAt(name, { row, column: at.left })} was loosened${looser.one.warnOnly ? ": it only warns" : ""}.`,
      expected: own.refusal ?? own.prompt,
      effect: "It takes what the template refuses.",
      remedy: "Set it again as in the template, or copy the cell from a new workbook.",
    });
  }
  if (gone.length === 0) return found;
  const [first] = gone;
  return [
    ...found,
    {
      weight: "worth knowing",
      place: { sheet: name, cell: first!.range.split(":")[0]! },
      message: `${gone.length} of ${sheet.fresh.validations.length} rules of entry (data validation) of ${name} are gone.`,
      effect: "Words in numbers, shares over 100 % and wrong dates can be typed there unchecked.",
      remedy: "Copy the sheet's cells from a new workbook with Paste Special, Validation.",
    },
  ];
}

const covers = (
  row: number,
  there: { top: number; bottom: number },
  own: { top: number; bottom: number },
): boolean => row <= own.bottom && row + (there.bottom - there.top) >= own.top;

function isLooser(now: BookValidation["rule"], own: BookValidation["rule"]): boolean {
  if (now.kind !== "number" || own.kind !== "number") return false;
  const [low, high] = [now.min ?? -Infinity, now.max ?? Infinity];
  return low < (own.min ?? -Infinity) || high > (own.max ?? Infinity);
}

function silent(sheet: TemplateSheet, { read, labelAt }: Reviewed): Finding[] {
  const name = sheet.sheet.name;
  const rules =
    read.saved!.file!.sheets.find((one) => one.name === name)?.rules.filter((one) => one.silent) ?? [];
  // Programs that never write the mark have none anywhere; then nothing was unticked.
  const all = read.saved!.file!.sheets.flatMap((one) => one.rules);
  const [first] = rules;
  if (!first || all.every((one) => one.silent)) return [];
  const zone = parseRange(first.ranges[0]!);
  if (!zone || !sheet.fresh.validations.some(({ range }) => isAround(range, sheet, zone))) return [];
  return [
    {
      weight: "worth knowing",
      place: { sheet: name, cell: first.ranges[0]!.split(":")[0]! },
      message: `The rule (data validation) of ${labelAt(name, { row: Math.min(zone.bottom, zone.top + 1), column: zone.left })} shows no alert when it is broken${rules.length > 1 ? `, nor ${rules.length === 2 ? "does" : "do"} ${rules.length - 1} more of ${name}` : ""}.`,
      effect: "It is there and takes everything.",
      remedy: "Tick “Show error alert” in Data Validation again.",
    },
  ];
}

function isAround(range: string, sheet: TemplateSheet, zone: { top: number; left: number }): boolean {
  const own = parseRange(range)!;
  const at = sheet.ownPlaceOf({ row: zone.top, column: zone.left });
  return isInside(own, at.row, at.column);
}

function marks(sheet: TemplateSheet, { read }: Reviewed): Finding[] {
  const name = sheet.sheet.name;
  const saved = read.saved!.file!.sheets.find((one) => one.name === name);
  if (!saved || saved.marked || sheet.fresh.marks.length === 0 || isForCustomer(sheet)) return [];
  return [
    {
      weight: "worth knowing",
      place: { sheet: name, cell: "A1" },
      message: `The conditional formats of ${name} are removed.`,
      effect: "Words that need attention no longer stand out.",
      remedy: "Copy the sheet's formats from a new workbook (Paste Special, Formats).",
    },
  ];
}
