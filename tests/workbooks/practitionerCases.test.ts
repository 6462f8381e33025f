/**
 * What 40 situations on the sheets of the demonstration say: wrong input, wrong design, and what is right and must not
 * be accused. They were written by a practitioner who had not seen the code, before any was tried; 35 were said as he
 * wanted then. What must be said of a row, as words, is ours, taken from his words; `wanted` is his.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../src/workbooks/named";

interface Case {
  readonly id: number;
  readonly kind: "wrong input" | "wrong design" | "right";
  readonly title: string;
  readonly edits: readonly {
    readonly name: string;
    readonly row?: number;
    readonly value: number | string | null;
  }[];
  readonly says?: readonly { readonly at: readonly string[]; readonly words: string }[];
}
const CASES = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/distribution/practitionerCases.json"), "utf8"),
) as Case[];

type Row = Record<string, number | string>;
function edited({ edits }: Pick<Case, "edits">): Book {
  const job = structuredClone(guestHouse) as unknown as { fields: Row; blocks: Record<string, Row[]> };
  for (const { name, row, value } of edits) {
    const [block, key] = [name.slice(0, name.indexOf("_")), name.slice(name.indexOf("_") + 1)];
    if (row !== undefined) job.blocks[block]![row] ??= {};
    const into = row === undefined ? job.fields : job.blocks[block]![row]!;
    const at = row === undefined ? name : key;
    if (value === null) delete into[at];
    else into[at] = value;
  }
  return recalculate(layOut(multiRoom, job as unknown as JobInputs));
}

/** Rows and the column with the sentence of what is wrong in each. */
const SAID = [
  ["rooms_outlet", "rooms_check_trouble"],
  ["branches_id", "branches_check_trouble"],
  ["heads_id", "heads_check_trouble"],
  ["dishes_name", "dishes_seen_trouble"],
  ["feeders_to", "feeders_check_trouble"],
] as const;
const sentencesIn = (book: Book): { at: string; sentence: string }[] =>
  SAID.flatMap(([name, trouble]) => {
    const said = namedColumn(book, trouble);
    return namedColumn(book, name).flatMap((at, row) => {
      const sentence = said[row];
      const words = isBookError(sentence) ? (sentence.message ?? sentence.error) : sentence;
      return at !== undefined && typeof words === "string" && words !== ""
        ? [{ at: String(at), sentence: words }]
        : [];
    });
  });
const failing = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "look" || result === "error")
    .map(({ what }) => what);

const base = edited({ edits: [] });
const usual = new Set(sentencesIn(base).map(({ at, sentence }) => `${at}: ${sentence}`));

test.each(CASES.map((one) => [one.id, one.title, one] as const))("%i: %s", (_, __, one) => {
  const book = edited(one);
  const said = sentencesIn(book).filter(({ at, sentence }) => !usual.has(`${at}: ${sentence}`));
  if (one.kind === "right") {
    expect(said).toEqual([]);
    expect(failing(book)).toEqual(failing(base));
    return;
  }
  const unsaid = one.says!.filter(
    ({ at, words }) => !said.some((one) => at.includes(one.at) && new RegExp(words).test(one.sentence)),
  );
  expect({ unsaid, said: unsaid.length > 0 ? said : [] }).toEqual({ unsaid: [], said: [] });
  // Nobody who looks at the heads of the sheets alone is told that all is well.
  expect(summarise(book).verdict).not.toBe("all checks pass");
});
