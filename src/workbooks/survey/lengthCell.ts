/** The cell of a run as people fill it: a length, a range of two, one give or take another, or an estimate. */
import { textOf, type ImportedCell } from "../imported/table";
import type { Reading } from "../typed/reading";
import { rounded } from "../typed/units";
import { bareLength } from "./bareLength";
import type { ColumnReader } from "./columnReader";

export interface LengthRead {
  readonly run: number;
  readonly shortest?: number;
  readonly longest?: number;
  /** Written as an estimate. */
  readonly approximate?: boolean;
}

const LONGEST = 80;
const MISSING =
  /^(?:t\.?b\.?[dacm]\.?|n\/?a|n\. ?a\.|k\.? ?a\.?|\?+|[-‒–—.…_]+|x+|unknown|unbekannt|inconnu|to be .*|open|offen|later|not .*|pending|missing|none|nil|fehlt|noch .*|see .*|à mesurer|a mesurer|por medir)$/i;
const GIVE_OR_TAKE = /^(.*?\d[^+±]*?) ?(?:\+ ?\/ ?-|±|\+-) ?(\d.*)$/;
const BETWEEN = /^(?:between|from|von|zwischen|de|entre|da|tra|fra) (?=\d)/i;
/** What may stand between the ends of a range. */
const TO =
  / ?(?:-{1,2}|[‒–—]|\.{2,3}|…|\/) ?| (?:to|bis|till|til|until|up to|à|a|au|al|and|und|et|y|e|hasta|tot) /gi;
const UNIT = /[\d.,] ?([a-z]+\.?|'|")$/i;
const BOUND =
  /^(?:max(?:imum)?|min(?:imum)?|up to|at least|at most|less than|more than|over|under|mind(?:estens)?|höchstens|bis|[<>≤≥])/i;

const SEVERAL = /^\d+(?:[.,]\d+)?(?: ?\/ ?\d+(?:[.,]\d+)?){2,}(?![\d/])/;
const BOTH_ENDS = /^min(?:imum)?\.?:? ?(\d.*?),? ?(?:[-/] ?)?max(?:imum)?\.?:? ?(\d.*)$/i;

/** @returns undefined for a blank cell */
export function readLength(cell: ImportedCell, reader: ColumnReader): Reading<LengthRead | undefined> {
  if (typeof cell === "object") {
    if (cell.shown === undefined)
      return {
        refused:
          "the file holds a date here, into which a workbook program turns ranges such as 5-8. Type the length itself",
      };
    return single(reader.read(cell), false);
  }
  const shown = textOf(cell);
  if (shown === "") return { value: undefined };
  if (MISSING.test(shown))
    return { refused: `“${shown}” is no length yet. Enter it, or an estimate such as ca. 12.` };
  if (shown.length > LONGEST) return single(reader.read(cell), false);
  const { text, approximate } = bareLength(shown);
  const both = BOTH_ENDS.exec(text);
  if (both) return readLength(`${both[1]} - ${both[2]}`, reader);
  if (BOUND.test(text))
    return {
      refused: `“${shown}” is only one end of what the run may be. Enter the run, or both ends: 12 - 18.`,
    };
  if (SEVERAL.test(text))
    return { refused: `“${shown}” has more than two lengths. Enter the run, or both ends: 12 - 18.` };
  const whole = reader.read(text);
  if (!("refused" in whole)) {
    const fraction = /^(\d+)\/(\d+)$/.exec(text);
    if (!fraction) return single(whole, approximate);
    const [over, under] = [fraction[1]!, fraction[2]!];
    const share = rounded(Number(over) / Number(under));
    return {
      refused: `“${shown}” can be a fraction or two ends of a range. Write ${share}, or ${over} - ${under}.`,
    };
  }
  const found = giveOrTake(text, reader) ?? rangeIn(text, reader, shown);
  if (found && "refused" in found) return found;
  if (found) return { value: { ...found, ...(approximate && { approximate }) } };
  // The sentence names what stands in the cell.
  const refused = reader.read(cell);
  return "refused" in refused ? refused : whole;
}

const single = (
  reading: Reading<number | undefined>,
  approximate: boolean,
): Reading<LengthRead | undefined> =>
  "refused" in reading || reading.value === undefined
    ? (reading as { refused: string })
    : { value: { run: reading.value, ...(approximate && { approximate }) } };

type Range = Required<Omit<LengthRead, "approximate">>;

function giveOrTake(text: string, reader: ColumnReader): Range | undefined {
  const [, middle, doubt] = GIVE_OR_TAKE.exec(text) ?? [];
  if (middle === undefined || doubt === undefined) return undefined;
  const unit = UNIT.exec(middle)?.[1] ?? UNIT.exec(doubt)?.[1];
  const run = valueOf(withUnit(middle, unit), reader);
  const share = /^(\d+(?:[.,]\d+)?) ?%$/.exec(doubt)?.[1]?.replace(",", ".");
  const by =
    share === undefined ? valueOf(withUnit(doubt, unit), reader) : run && (run * Number(share)) / 100;
  if (run === undefined || by === undefined || by >= run) return undefined;
  return { run, shortest: rounded(run - by), longest: rounded(run + by) };
}

function rangeIn(text: string, reader: ColumnReader, shown: string): Range | { refused: string } | undefined {
  const plain = text.replace(BETWEEN, "");
  for (const found of plain.matchAll(TO)) {
    const [one, other] = [plain.slice(0, found.index), plain.slice(found.index + found[0].length)];
    if (!/^\d/.test(one) || !/^(?:ca\.? ?|~ ?)?\d/.test(other)) continue;
    const [a, b] = [bareLength(one).text, bareLength(other).text];
    const unit = UNIT.exec(b)?.[1] ?? UNIT.exec(a)?.[1] ?? (/'/.test(b) ? "'" : undefined);
    const shortest = valueOf(withUnit(a, unit), reader);
    const longest = valueOf(withUnit(b, unit), reader);
    if (shortest === undefined || longest === undefined) continue;
    if (shortest > longest)
      return {
        refused: `“${shown}” goes down: if it is a range, write its shorter end first: ${other} - ${one}.`,
      };
    return { run: rounded((shortest + longest) / 2), shortest, longest };
  }
  return undefined;
}

/** A bare number takes the unit of the other end. */
const withUnit = (text: string, unit: string | undefined): string =>
  unit !== undefined && /\d$/.test(text) && !/['"]/.test(text) ? `${text} ${unit}` : text;

function valueOf(text: string, reader: ColumnReader): number | undefined {
  const reading = reader.read(text);
  return "refused" in reading ? undefined : reading.value;
}
