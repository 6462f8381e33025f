/** What goes out with the file and is not on its pages: notes, properties, changes kept, scenarios, names, sheets. */
import type { Finding } from "../finding";
import { strangeNames } from "../knownWords";
import { deceives, seenAs } from "../lookAlike";
import { figure } from "../namedCells";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { BookSheet } from "../../workbooks/book";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets } from "../templateCells";
import { tellsInside, tellsMoney, tellsPath } from "../tellsInside";

/** What is longer is no such text, and a pattern takes its time over it. */
const MOST_LETTERS = 300;

export const tellsMore: Rule = {
  id: "tells more than the page",
  reason: "Who gets the file reads what lies in it, seen or not.",
  example: "A note at Labour says what the office pays; the properties name another customer.",
  find: (reviewed) => {
    const { read, definition } = reviewed;
    const file = read.saved?.file;
    if (!definition || !file) return [];
    return [
      ...notes(reviewed),
      ...properties(reviewed),
      ...sheets(reviewed),
      ...file.sheets.flatMap(({ name: sheet, scenarios }): Finding[] =>
        scenarios.length === 0
          ? []
          : [
              {
                weight: "doubtful",
                place: { sheet, cell: scenarios[0]!.cell },
                message: `${sheet} keeps ${scenarios.length === 1 ? "a scenario" : `${scenarios.length} scenarios`}: ${scenarios.map(({ name }) => `“${name}”`).join(", ")}.`,
                effect: "Data, What-If Analysis shows whoever has the file what else was thought of.",
                remedy: "Delete them in the Scenario Manager before the file goes out.",
              },
            ],
      ),
      ...(file.trackedBy
        ? [
            {
              weight: "doubtful" as const,
              message: `The file keeps tracked changes (a log of revisions)${file.trackedBy.length > 0 ? `, by ${file.trackedBy.join(", ")}` : ""}.`,
              effect: "It holds who changed which figure, and from what.",
              remedy: "Stop sharing the workbook, which clears the log, and save it.",
            },
          ]
        : []),
      ...chosenTogether(reviewed),
      ...file.sheets.flatMap(({ name: sheet, hyperlinks }) =>
        hyperlinks.flatMap((link) => ofLink(sheet, link, reviewed)),
      ),
    ];
  },
};

/** A group of sheets is printed, and written into, as one. */
function chosenTogether({ read, definition }: Reviewed): Finding[] {
  const chosen = read.saved!.file!.sheets.flatMap(({ name, chosen }) => (chosen ? [name] : []));
  const customers = templateSheets(read, definition!)
    .filter(isForCustomer)
    .map(({ sheet }) => sheet.name);
  if (chosen.length < 2) return [];
  const withQuote = chosen.some((name) => customers.includes(name));
  return [
    {
      weight: withQuote ? "doubtful" : "worth knowing",
      message: `${chosen.slice(0, 5).join(", ")}${chosen.length > 5 ? " and more" : ""} were selected together as a group when the file was saved.`,
      effect: withQuote
        ? "Printing the quote prints the office's sheets with it, and what is typed into one goes into all."
        : "What is typed into one goes into all.",
      remedy: "Click one sheet's tab, so that it alone is selected, and save it.",
    },
  ];
}

/** The file writer's own notes begin so. */
const OURS = /(^|\n)Frozen: /;

function notes({ read, definition, labelAt }: Reviewed): Finding[] {
  const customers = new Set(
    templateSheets(read, definition!)
      .filter(isForCustomer)
      .map(({ sheet }) => sheet.name),
  );
  return read.saved!.file!.sheets.flatMap(({ name: sheet, notes }) =>
    notes.flatMap(({ cell, text, author, thread }): Finding[] => {
      if (OURS.test(text) || text.trim() === "") return [];
      const inside = tellsInside(text);
      const onPage = customers.has(sheet);
      if (!inside && !onPage) return [];
      const money = tellsMoney(text.replace(author, ""));
      const { row, column } = placeOf(cell);
      return [
        {
          weight: inside ? (onPage ? "wrong" : "doubtful") : money ? "doubtful" : "worth knowing",
          place: { sheet, cell },
          message: `${thread ? "A threaded comment" : "A note (comment)"}${author ? ` of ${author}` : ""} at ${labelAt(sheet, { row, column })} says “${text.replace(/\s+/g, " ").trim().slice(0, 120)}”.`,
          effect: inside
            ? "It tells cost, margin or other internal words to whoever gets the file."
            : "Whoever gets the file can read it.",
          remedy: "Delete it before the file goes out (Review, Delete).",
        },
      ];
    }),
  );
}

const placeOf = (cell: string): { row: number; column: number } => {
  const [, letters = "A", digits = "1"] = /^([A-Z]+)(\d+)/.exec(cell) ?? [];
  return {
    row: Number(digits) - 1,
    column: [...letters].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 64, 0) - 1,
  };
};

const WHAT: Readonly<Record<string, string>> = {
  title: "title",
  subject: "subject",
  creator: "author",
  lastModifiedBy: "last author",
  keywords: "keywords",
  description: "description",
  category: "category",
  Company: "company",
  Manager: "manager",
  HyperlinkBase: "hyperlink base",
};
const OUR_AUTHOR = "Rigsheet";
/** Programs that put their own name there. */
const PROGRAMS =
  /^(?:rigsheet|openpyxl|microsoft|apache|libreoffice|unknown|user|admin|owner|xlsxwriter|exceljs|sheetjs|excelts|hucre)/i;

function properties({ read, definition }: Reviewed): Finding[] {
  const found: Finding[] = [];
  const persons: string[] = [];
  for (const { name, text, own } of read.saved!.file!.properties) {
    const called = own ? `custom property ${name}` : (WHAT[name] ?? name);
    const all = own ? `${name} ${text}` : text;
    const say = (weight: Finding["weight"], effect: string): void =>
      void found.push({
        weight,
        message: `The document's properties hold ${/^[aeiou]/.test(called) ? "an" : "a"} ${called}: “${text.slice(0, 120)}”.`,
        effect,
        remedy: "Clear it: File, Info, Properties, or Inspect Document.",
      });
    if (tellsInside(all))
      say("doubtful", "It tells cost, margin or the lowest price to whoever opens File, Info.");
    else if (tellsPath(all))
      say("doubtful", "A path of the office's disc tells names of folders, and other jobs.");
    else if (name === "creator" || name === "lastModifiedBy") {
      if (text !== OUR_AUTHOR && !PROGRAMS.test(text)) persons.push(text);
    } else if (["title", "subject", "Company", "Manager"].includes(name) && text !== definition!.title) {
      const strange = strangeNames(read, text);
      if (strange.length >= (name === "Manager" ? 3 : 2))
        // A word in another language, or a firm without a letterhead, is as strange.
        say(
          "worth knowing",
          `${strange.slice(0, 3).join(", ")} stand nowhere in this workbook: it may name another ${name === "Company" ? "firm than the letterhead" : "customer or job"}, and a PDF takes it over.`,
        );
    }
  }
  if (persons.length > 0)
    found.push({
      weight: "worth knowing",
      message: `The document's properties name an author: ${[...new Set(persons)].join(", ")}.`,
      remedy: "If that is not meant to go out: File, Info, Inspect Document.",
    });
  return found;
}

/** Sheets that the template does not have. */
function sheets({ read, definition }: Reviewed): Finding[] {
  const own = new Map(definition!.sheets.map(({ name }) => [seenAs(name).toLowerCase(), name]));
  const total = namedValue(read, estimate.quote.total.name);
  return read.sheets.flatMap((sheet): Finding[] => {
    const { name } = sheet;
    if (definition!.sheets.some((one) => one.name === name)) return [];
    const place = { sheet: name, cell: "A1" };
    const alike = own.get(seenAs(name).trim().toLowerCase());
    if (alike !== undefined && read.sheets.some((one) => one.name === alike))
      return [
        {
          weight: "doubtful",
          place,
          message: `The sheet “${name}” looks like ${alike} by its name (${deceives(name) ?? "blanks or capitals"}), and is another.`,
          effect: "Sooner or later the one is printed or sent for the other.",
          remedy: "Delete it, or give it a name of its own.",
        },
      ];
    const other = secondQuote(sheet);
    return other !== undefined && typeof total === "number" && Math.abs(other - total) >= HALF_A_CENT
      ? [
          {
            weight: "doubtful",
            place,
            message: `The sheet ${name} looks like a second quote: its total is ${figure(other)}, and that of Quote ${figure(total)}.`,
            effect: "Two totals go out in one file.",
            remedy: "Delete the sheet that does not hold.",
          },
        ]
      : [];
  });
}

const HALF_A_CENT = 0.005;

/** @returns the total of a sheet that calls itself a quotation */
function secondQuote({ name, cells, results }: BookSheet): number | undefined {
  const value = (at: string) => results[at] ?? cells[at]?.value;
  const all = Object.keys(cells);
  const isQuote = /quot/i.test(name) || all.some((at) => /^quotation\b/i.test(String(value(at) ?? "")));
  if (!isQuote) return undefined;
  for (const at of all) {
    if (!/^total\b/i.test(String(value(at) ?? "").trim())) continue;
    const [, column = "A", row = "1"] = /^([A-Z]+)(\d+)$/.exec(at) ?? [];
    const beside = value(`${String.fromCharCode(column.charCodeAt(0) + 1)}${row}`);
    if (column.length === 1 && typeof beside === "number") return beside;
  }
  return undefined;
}

function ofLink(
  sheet: string,
  { cell, target }: { readonly cell: string; readonly target: string },
  { read }: Reviewed,
): Finding[] {
  const place = { sheet, cell: cell.split(":")[0]! };
  if (/^file:|^\\\\|^[A-Za-z]:[\\/]/i.test(target) || tellsPath(target))
    return [
      {
        weight: "doubtful",
        place,
        message: `A link (hyperlink) at ${cell} leads to a file of the office: ${target.slice(0, 120)}.`,
        effect: "It works for nobody outside, and its path tells names.",
        remedy: "Remove the link (right-click, Remove Hyperlink).",
      },
    ];
  const host = /^https?:\/\/([^/?#:]+)/i.exec(target)?.[1]?.toLowerCase();
  const found = read.sheets.find(({ name }) => name === sheet);
  const shown = String(found?.results[place.cell] ?? found?.cells[place.cell]?.value ?? "").toLowerCase();
  const said = /(?:[\w-]+\.)+[a-z]{2,}/.exec(shown.slice(0, MOST_LETTERS))?.[0]?.replace(/^www\./, "");
  if (
    host === undefined ||
    (said !== undefined && host.endsWith(said)) ||
    (said === undefined && !/\?.*(?:url|u)=/i.test(target))
  )
    return [];
  return [
    {
      weight: "worth knowing",
      place,
      message: `A link (hyperlink) at ${cell} leads to ${host}${said === undefined ? "" : `, and its text says ${said}`}.`,
      effect: "A mail gateway may have put its own address, which follows who clicks, into its place.",
      remedy: "Enter the link again, or remove it.",
    },
  ];
}
