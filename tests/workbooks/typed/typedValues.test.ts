import { readTyped } from "../../../src/workbooks/typed/readTyped";
import { writingOf } from "../../../src/workbooks/typed/writing";
import { kindFor, typedCases, verdictOf } from "./outsiders";
test("all", () => {
  const t: any = { right: 0, soft: 0, wrong: 0, never: 0 };
  const lines: string[] = [];
  for (const c of typedCases) {
    const a = readTyped(c.typed, kindFor(c), {
      writing: writingOf(c.locale),
      currency: c.currency,
      lengths: c.column === "length_ft" ? "ft" : "m",
    });
    const v = verdictOf(c, a);
    t[v]++;
    if (v !== "right")
      lines.push(
        `${v} ${c.id} ${c.locale} ${JSON.stringify(c.typed)} -> ${JSON.stringify(a)} want ${JSON.stringify(c.expect)} also ${JSON.stringify(c.alsoAcceptable)} # ${c.why}`,
      );
  }
  console.log(t, lines.join("\n"));
});
