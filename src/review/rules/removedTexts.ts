import { standardExclusions } from "../../workbooks/multiRoom/startingPoint";
import { layOut } from "../../workbooks/layOut";
import type { Finding } from "../finding";
import { filledCells, hasJob, namedCells } from "../namedCells";
import type { Rule } from "../rule";

export const removedTexts: Rule = {
  id: "caution, exclusion or check removed",
  reason: "Cautions and exclusions are there to be read by who signs; a check that is gone cannot fail.",
  example: "The line on overhead lines is gone from the About sheet.",
  find: ({ read, definition }) => {
    if (!definition) return [];
    const fresh = layOut(definition);
    const findings: Finding[] = [];
    for (const { name, parts } of definition.sheets) {
      const sheet = read.sheets.find((one) => one.name === name);
      if (!sheet) {
        findings.push({
          weight: "wrong",
          says: `The sheet ${name} is gone.`,
          wayOut: "Start a workbook from the template and copy the inputs over.",
        });
        continue;
      }
      const texts = new Set(Object.values(sheet.cells).map(({ value }) => value));
      const template = Object.entries(fresh.sheets.find((one) => one.name === name)!.cells);
      for (const part of parts) {
        const lines =
          part.kind === "text"
            ? part.lines
            : part.kind === "checks"
              ? part.checks.map(({ what }) => what)
              : [];
        for (const line of lines) {
          if (texts.has(line)) continue;
          findings.push({
            weight: "wrong",
            place: { sheet: name, cell: template.find(([, { value }]) => value === line)?.[0] ?? "A1" },
            says: `${part.kind === "checks" ? "A check" : "A line"} of the template is gone or changed.`,
            should: line,
            effect:
              part.kind === "checks"
                ? "What it looked for is no longer found."
                : "Who reads this sheet is not warned.",
            wayOut: "Write it there again, or copy the sheet from the template.",
          });
        }
      }
    }
    return [...findings, ...exclusions()];

    function exclusions(): Finding[] {
      if (!hasJob(read)) return [];
      const place = namedCells(read, "exclusions_text")[1]?.place;
      const there = new Set(filledCells(read, "exclusions_text").map(({ value }) => value));
      const gone = standardExclusions.filter(({ text }) => !there.has(text));
      // A firm's own list need not hold ours.
      if (!place || gone.length === 0 || (there.size > 0 && gone.length === standardExclusions.length))
        return [];
      return gone.map(({ text }) => ({
        weight: "doubtful",
        place,
        says: "An exclusion that every job starts with is gone.",
        should: text,
        effect: "The price then seems to hold it.",
        wayOut: "Write it under Terms again, or price what it left out.",
      }));
    }
  },
};
