/** Tables beside one another on a sheet, and outlets beside one another on a line: a line for each outlet. */
import type { MappedColumn } from "../imported/columns";
import { isBlank, textOf, type ImportedLine } from "../imported/table";
import { isFloorHeading } from "./floorWords";
import { guessesOf } from "./headWords";
import { sameText, type Head } from "./layout";

/** A table beside another with the same heads is more of it: its lines follow those of the first. */
export function sideBySide(
  filled: readonly ImportedLine[],
  head: Head,
): { readonly filled: readonly ImportedLine[]; readonly head: Head } {
  const { texts } = head;
  const start = texts.findIndex((text) => text !== "");
  const again = texts.findIndex((text, index) => index > start + 1 && sameText(texts[start] ?? "", text));
  const width = again - start;
  const isAgain =
    head.index >= 0 &&
    start >= 0 &&
    again >= 0 &&
    texts.slice(start, again).some((text) => guessesOf(text)[0]?.key === "run") &&
    texts.slice(start, again).every((text, index) => sameText(text, texts[again + index]));
  if (!isAgain) return { filled, head };
  const parts = Math.floor((texts.length - start + 1) / width);
  // A floor's heading may stand above the heads of each.
  const above = filled[head.index - 1];
  const body = [...(above ? [above] : []), ...filled.slice(head.index + head.rows)];
  const blank = Array.from({ length: start }, () => "");
  const its = (part: number): ImportedLine[] =>
    body
      .map((line) => ({
        ...line,
        cells: [...blank, ...line.cells.slice(start + part * width, start + (part + 1) * width)],
        ...(part > 0 && { part: part + 1 }),
      }))
      .filter((line) => !isBlank(line) && (line.line !== above?.line || isPlace(line)));
  return {
    filled: [
      ...filled.slice(0, head.index + head.rows),
      ...Array.from({ length: parts }, (_, part) => its(part)).flat(),
    ],
    head: { ...head, texts: texts.slice(0, again), raw: head.raw.map((row) => row.slice(0, again)) },
  };
}

const isPlace = ({ cells }: ImportedLine): boolean => {
  const filled = cells.map(textOf).filter((text) => text !== "");
  return filled.length === 1 && isFloorHeading(filled[0]!);
};

/** Outlets that stand next to each other on a line, each with its run: a line for each. */
export function pairsOnLines(
  body: readonly ImportedLine[],
  columns: readonly MappedColumn[],
): readonly ImportedLine[] {
  const of = (key: string): number[] => columns.flatMap((one) => (one.key === key ? [one.column] : []));
  const [outlets, runs] = [of("outlet"), of("run")];
  if (outlets.length < 2 || outlets.length !== runs.length) return body;
  return body.flatMap((line) =>
    outlets.flatMap((outlet, pair): ImportedLine[] => {
      const run = runs[pair]!;
      if (pair === 0) return [line];
      if (textOf(line.cells[outlet]) === "" && textOf(line.cells[run]) === "") return [];
      const cells = Array.from(line.cells);
      cells[outlets[0]!] = line.cells[outlet] ?? "";
      cells[runs[0]!] = line.cells[run] ?? "";
      return [{ ...line, cells, part: pair + 1 }];
    }),
  );
}
