/** Other workbooks, programs and data bases that the file reaches for. */
import type { Book } from "../../workbooks/book";
import type { SavedLink } from "../../workbooks/savedFile";
import type { Finding, FindingPlace } from "../finding";
import type { Rule } from "../rule";

/** Calls of functions that were bound to another add-in's file are told by themselves. */
const ADD_IN = /\.xlam?$|funcres/i;

export const leadsOutside: Rule = {
  id: "leads outside",
  reason:
    "A figure from another file, program or data base stands still, or breaks, where that is not at hand.",
  example: "The price of a reel comes by DDE from the accounts program.",
  find: ({ read, differences }) => {
    const links = read.saved?.file?.links ?? [];
    // A formula that is not the template's is named in its cell.
    const named = new Set(
      differences.flatMap(({ place }) => (place ? [`${place.sheet}!${place.cell}`] : [])),
    );
    return links.flatMap((link): Finding[] => {
      if (ADD_IN.test(link.target)) return [];
      if (link.kind === "connection") return [connection(link)];
      const used = link.number === undefined ? [] : usersOf(read, link.number);
      const free = used.filter(({ sheet, cell }) => !named.has(`${sheet}!${cell}`));
      const inName = read.saved!.file!.names.find(({ text }) => text.includes(`[${link.number}]`))?.name;
      if (inName !== undefined && used.length === 0) return [];
      const rule = read.saved!.file!.sheets.flatMap(({ name, rules }) =>
        rules.flatMap(({ formulas, ranges }) =>
          formulas.some((formula) => formula.includes(`[${link.number}]`))
            ? [{ sheet: name, cell: ranges[0]!.split(":")[0]! }]
            : [],
        ),
      )[0];
      return [workbook(link, free[0] ?? used[0], rule, free.length > 0)];
    });
  },
};

function usersOf({ sheets }: Book, number: number): FindingPlace[] {
  const mark = `[${number}]`;
  return sheets.flatMap(({ name: sheet, cells }) =>
    Object.entries(cells).flatMap(([cell, { formula }]) =>
      formula?.includes(mark) ? [{ sheet, cell }] : [],
    ),
  );
}

function workbook(
  { kind, target }: SavedLink,
  used: FindingPlace | undefined,
  rule: FindingPlace | undefined,
  isFree: boolean,
): Finding {
  const what =
    kind === "workbook"
      ? "an external workbook"
      : `another program, ${kind === "OLE" ? "an" : "a"} ${kind} link`;
  const at = used ?? rule;
  return {
    weight: isFree || (kind !== "workbook" && !used) ? "doubtful" : "worth knowing",
    ...(at && { place: at }),
    message: used
      ? `A formula reads ${what}: ${target}.`
      : rule
        ? `A data validation takes its list from ${what}: ${target}.`
        : `The file keeps a link to ${what}, which no formula uses: ${target}.`,
    effect: used
      ? "Where that is not at hand the figure stands still, or is an error."
      : "The program asks whoever opens it about links, and the path tells names.",
    remedy: used
      ? "Enter the value itself, and break the link: Data, Edit Links."
      : "Break the link: Data, Edit Links.",
  };
}

const connection = ({ target, password }: SavedLink): Finding => ({
  weight: "doubtful",
  message: `The file holds a data connection: ${target || "of no name"}${password ? ", with its password" : ""}.`,
  effect: `Opening it may reach for a data base${password ? ", and whoever gets it has the password" : ""}.`,
  remedy: "Delete it: Data, Queries and Connections.",
});
