import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { inputsIn } from "../inputsIn";
import type { Finding } from "../finding";
import { deceives, hasOtherBlanks, seenAs } from "../lookAlike";
import { filledCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";
import { lettersApart } from "../spelling";

export const looksAlike: Rule = {
  id: "text that looks like another",
  reason: "A letter of another alphabet or a character that nobody sees makes a name another name.",
  example: "A cable named trunk with a Cyrillic k is no cable of Parts.",
  find: ({ read, definition }) => {
    const inputs = inputsIn(read, definition);
    const names = new Set(
      inputs
        .filter(({ namesRows }) => namesRows)
        .flatMap(({ cells }) => cells.flatMap(({ value }) => (typeof value === "string" ? [value] : []))),
    );
    const strange = inputs.flatMap(({ label, input, namesRows, cells }) =>
      cells.flatMap(({ place, value, typed }): Finding[] => {
        if (!typed || typeof value !== "string") return [];
        const deceiving = deceives(value);
        const isName = namesRows || input.rule.kind === "named" || input.rule.kind === "choice";
        // In a sentence another blank is a matter of setting.
        const blank =
          isName && hasOtherBlanks(value) ? "a blank of another kind (a no-break space)" : undefined;
        const what = deceiving ?? blank;
        if (what === undefined) return [];
        const meant = seenAs(value).trim();
        const known = names.has(meant) && meant !== value;
        return [
          {
            weight: isName ? (known && !namesRows ? "wrong" : "doubtful") : "worth knowing",
            place,
            message: `${label} “${value}” holds ${what}.`,
            expected: `“${meant}”${known ? ", as it stands on its list" : ""}.`,
            ...(isName && { meant }),
            effect: known
              ? namesRows
                ? "Two entries look alike and are two: which one counts hangs on the keyboard."
                : "It looks like it and is another name: it is not found on its list (Parts, Site)."
              : "It is not found again under what it looks like.",
            remedy: "Type it again by hand.",
          },
        ];
      }),
    );
    return [...strange, ...spacedOtherwise(read), ...oneLetterOff(read)];
  },
};

/** So many rows of one spelling leave no doubt. */
const FEWEST_ALIKE = 3;

/** A floor in one row that others spell with a blank or a stroke more: “floor3” among “floor 3”. */
function spacedOtherwise(read: Book): Finding[] {
  const floors = filledCells(read, estimate.rooms.floor.name);
  const spellings = new Map<string, Map<string, NamedCell[]>>();
  for (const cell of floors) {
    const bare = plainWord(cell.value).replace(/[^\p{L}\p{N}]+/gu, "");
    const group = spellings.get(bare) ?? new Map<string, NamedCell[]>();
    group.set(plainWord(cell.value), [...(group.get(plainWord(cell.value)) ?? []), cell]);
    spellings.set(bare, group);
  }
  return [...spellings.values()].flatMap((group): Finding[] => {
    if (group.size < 2) return [];
    const [most, ...others] = [...group.values()].sort((a, b) => b.length - a.length);
    if (most!.length < FEWEST_ALIKE) return [];
    return others.flatMap((cells) =>
      cells.map(({ place, value }): Finding => ({
        weight: "doubtful",
        place,
        message: `The floor is written “${String(value)}”, and “${String(most![0]!.value)}” in ${most!.length} other rows.`,
        expected: `“${String(most![0]!.value)}”.`,
        meant: String(most![0]!.value),
        effect: "It counts as a floor of its own: what is said of the other does not reach it.",
        remedy: "Write it as in the other rows.",
      })),
    );
  });
}

/** So many letters make a word of which one can be missing. */
const FEWEST_LETTERS = 5;

const digitsOf = (word: string): string => word.replace(/\D+/g, " ");

/** A floor of one row whose name is that of many rows but for a letter; one with another number is another. */
function oneLetterOff(read: Book): Finding[] {
  const rows = new Map<string, NamedCell[]>();
  for (const cell of filledCells(read, estimate.rooms.floor.name))
    rows.set(plainWord(cell.value), [...(rows.get(plainWord(cell.value)) ?? []), cell]);
  return [...rows].flatMap(([word, [only, ...more]]): Finding[] => {
    if (!only || more.length > 0 || word.length < FEWEST_LETTERS) return [];
    const meant = [...rows].find(
      ([other, cells]) =>
        cells.length >= FEWEST_ALIKE &&
        digitsOf(other) === digitsOf(word) &&
        /\d/.test(word) &&
        lettersApart(word, other, 1) === 1 &&
        word.replace(/[^\p{L}\p{N}]+/gu, "") !== other.replace(/[^\p{L}\p{N}]+/gu, ""),
    )?.[1];
    if (!meant) return [];
    return [
      {
        weight: "doubtful",
        place: only.place,
        message: `The floor is written “${String(only.value)}” in this row alone, and “${String(meant[0]!.value)}” in ${meant.length} others.`,
        expected: `“${String(meant[0]!.value)}”.`,
        meant: String(meant[0]!.value),
        effect: "It counts as a floor of its own: it is set up once more.",
        remedy: "Write it as in the other rows.",
      },
    ];
  });
}
