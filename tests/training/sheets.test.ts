/** The trainee's sheet and the trainer's key as workbooks. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { answerName } from "../../src/training/answerName";
import { drawFor, exampleOf, type Trainee } from "../../src/training/drawNumbers";
import { readKey } from "../../src/training/readKey";
import { trainingSets } from "../../src/training/sets/all";
import { traineeSheet } from "../../src/training/traineeSheet";
import { trainerKey } from "../../src/training/trainerKey";
import { parseRange } from "../../src/formula/address";
import { inputZone, isBookError, type Book } from "../../src/workbooks/book";
import { namedValue } from "../../src/workbooks/named";

const trainee: Trainee = { name: 'Ann "=1+1" O\'Neil', occurrence: 1 };
const texts = (book: Book): string[] =>
  book.sheets.flatMap(({ cells }) => Object.values(cells).map(({ value }) => String(value ?? "")));

describe.each(trainingSets.map((set) => [set.id, set] as const))("%s", (_, set) => {
  const sheet = traineeSheet(set, 3, trainee);

  test("counts what is still to answer, as the grid's engine does", () => {
    const key = drawFor(set, 3, trainee).key;
    const [first, second] = set.questions as [(typeof set.questions)[0], (typeof set.questions)[0]];
    for (const answers of [{}, { [first.key]: key[first.key]!, [second.key]: 0 }, key]) {
      const book = traineeSheet(set, 3, trainee, answers);
      const computed = recalculate(book);
      expect(computed.sheets[0]!.results).toEqual(book.sheets[0]!.results);
      expect(Object.values(computed.sheets[0]!.results).filter(isBookError)).toEqual([]);
    }
    expect(namedValue(sheet, "checks_verdict")).toBe(`${set.questions.length} still to answer`);
  });

  test("an input cell for each answer and no other, unlocked, on a protected sheet, with unit and precision beside it", () => {
    const [one] = sheet.sheets;
    expect(sheet.sheets).toHaveLength(1);
    expect(one!.protected).toBe(true);
    expect(one!.validations.map((rule) => inputZone(rule))).toEqual(
      set.questions.map(({ key }) =>
        parseRange(sheet.names.find(({ name }) => name === answerName(key))!.range),
      ),
    );
    const unlocked = Object.entries(one!.cells).filter(
      ([, { look }]) => sheet.looks[look!]?.locked === false,
    );
    expect(unlocked).toHaveLength(set.questions.length);
    for (const [at] of unlocked) expect(one!.cells[at]!.value).toBeUndefined();
    for (const rule of one!.validations) expect(rule.prompt).toMatch(/Your answer, |One of the list/);
  });

  test("says the cautions of its trade, and prints on A4, one page wide", () => {
    for (const caution of set.cautions) expect(texts(sheet)).toContain(`Caution: ${caution}`);
    const dangerous = /roof|ladder|mast|supply|volts|bond/i;
    const tasks = set.questions.map(({ task }) => task).join(" ");
    if (set.id !== "bad-quote" && dangerous.test(tasks)) expect(set.cautions.length).toBeGreaterThan(0);
    expect(sheet.sheets[0]!.print).toMatchObject({ paper: "a4", orientation: "landscape" });
  });

  test("has the worked example's answers, and no answer of its own", () => {
    const example = exampleOf(set);
    const own = drawFor(set, 3, trainee);
    const shown = texts(sheet);
    for (const { key, answer } of set.questions) {
      if (answer.kind === "choice" || answer.exact) continue;
      expect(shown).toContain(Number(example.key[key]).toFixed(answer.decimals));
      // In the quote two rows may come to the same sum by chance.
      if (set.id !== "bad-quote") expect(shown).not.toContain(String(own.key[key]));
    }
  });

  test("the key's workbook gives the exercises back, from the file too", async () => {
    const exercises = {
      set,
      seed: 12345,
      trainees: [trainee, { name: "Bo", occurrence: 1 }, { name: "Bo", occurrence: 2 }],
    };
    const book = trainerKey(exercises);
    expect(readKey(book)).toEqual(exercises);
    expect(readKey(await readXlsx(await writeXlsx(book)))).toEqual(exercises);
  });
});
