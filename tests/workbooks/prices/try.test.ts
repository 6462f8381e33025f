import { readdirSync, writeFileSync } from "node:fs";
import { casesIn, play } from "./played";
const FOLDER = process.env.CASES ?? "/work/cases/prices";
test("cases", async () => {
  const names = readdirSync(FOLDER)
    .filter((n) => n.endsWith(".json"))
    .sort();
  const out: string[] = [];
  const sum = {
    lines: 0,
    right: 0,
    asked: 0,
    left: 0,
    wrong: 0,
    met: 0,
    missed: 0,
    words: 0,
    previewOk: 0,
    cases: 0,
  };
  for (const one of casesIn(FOLDER, names)) {
    const played = await play(FOLDER, one, process.env.ANSWERED === "1").catch((e: unknown) =>
      String((e as Error).stack),
    );
    sum.cases++;
    sum.lines += one.lines.length;
    if (typeof played === "string") {
      out.push(`## ${one.file} (${one.why}) FAILED ${played}`);
      sum.asked += one.lines.length;
      continue;
    }
    sum.right += played.right.length;
    sum.asked += played.asked.length;
    sum.left += played.left.length;
    sum.wrong += played.wrong.length;
    sum.met += played.asksMet;
    sum.missed += played.asksMissed.length;
    sum.words += played.otherWords.length;
    if (played.previewWrong.length === 0) sum.previewOk++;
    out.push(
      `## ${one.file} (${one.why}) heads ${one.heads}\n  lines ${one.lines.length} right ${played.right.length} asked [${played.asked.join(",")}] mayAsk [${(one.mayAsk ?? []).join(",")}] met ${played.asksMet}`,
    );
    out.push(
      ...played.left.map((x) => `  LEFT ${x}`),
      ...played.wrong.map((x) => `  WRONG ${x}`),
      ...played.asksMissed.map((x) => `  MISSED ${x}`),
      ...played.otherWords.map((x) => `  words ${x.slice(0, 300)}`),
      ...played.previewWrong.map((x) => `  PREVIEW ${x}`),
      ...played.list.questions.map((q) => `  QUESTION ${q.id}: ${q.sentence}`),
    );
  }
  writeFileSync("/tmp/prices-played.txt", out.join("\n"));
  console.log(JSON.stringify(sum));
});
