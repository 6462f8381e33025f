/** Formulas built from what they name: nothing is torn apart, nothing is misspelt. */
import { call, cellAt, chain, f, text, type Formula } from "../../src/formula/build";
import { sameFormula } from "../../src/formula/sameFormula";
import { block, entry, fields, OF, result, results, told } from "../../src/workbooks/names";

const a = { name: "a" };
const b = { name: "b" };
const x = { name: "x" };
const y = { name: "y" };

test("names, numbers, texts, cells and calls stand as a formula writes them", () => {
  expect(f`SUM(${a},${2.5},${f`${b}`})`).toBe("SUM(a,2.5,b)");
  expect(text('6" pipe')).toBe('"6"" pipe"');
  expect(f`${cellAt("C5")}>0`).toBe("C5>0");
  expect(call("MIN", a, 3, f`${b}+1`)).toBe("MIN(a,3,b+1)");
  expect(chain("+", [a, f`SUM(${b})`, 1])).toBe("a+SUM(b)+1");
  expect(chain("+", [])).toBe("");
});

/** What JavaScript makes of it: it binds + - * / as a spreadsheet does, and knows nothing of us. */
const valueOf = (formula: string): number =>
  (new Function("a", "b", "x", "y", `return ${formula};`) as (...given: number[]) => number)(7, 3, 11, 5);

test("a formula within another stays an operand of its own, by arithmetic", () => {
  const arithmetic = ["+", "-", "*", "/"] as const;
  for (const left of arithmetic)
    for (const inside of arithmetic)
      for (const right of arithmetic) {
        const operand = chain(inside, [x, y]);
        const built = [
          // A template can't be put together from parts, so each sign stands in one of its own.
          {
            "+": f`${a}+${operand}`,
            "-": f`${a}-${operand}`,
            "*": f`${a}*${operand}`,
            "/": f`${a}/${operand}`,
          }[left],
          {
            "+": f`${operand}+${b}`,
            "-": f`${operand}-${b}`,
            "*": f`${operand}*${b}`,
            "/": f`${operand}/${b}`,
          }[right],
        ];
        expect(valueOf(built[0]!)).toBeCloseTo(valueOf(`a${left}(x${inside}y)`), 9);
        expect(valueOf(built[1]!)).toBeCloseTo(valueOf(`(x${inside}y)${right}b`), 9);
      }
});

test.each<[Formula, string]>([
  [f`${a}^${f`${x}*${y}`}`, "a^(x*y)"],
  [f`${f`${x}*${y}`}^2`, "(x*y)^2"],
  [f`${f`${x}^${y}`}^2`, "(x^y)^2"],
  [f`2^${f`${x}^${y}`}`, "2^(x^y)"],
  [f`-${f`${x}+${y}`}`, "-(x+y)"],
  [f`${f`-${x}`}^2`, "(-x)^2"],
  [f`${f`${x}>${y}`}*1`, "(x>y)*1"],
  [f`${a}=${f`${x}=${y}`}`, "a=(x=y)"],
  [f`${f`${x}&${y}`}="ok"`, '(x&y)="ok"'],
  [f`"n: "&${f`${x}>${y}`}`, '"n: "&(x>y)'],
  [f`${f`${x}+${y}`}<>${b}`, "x+y<>b"],
])("%s means %s", (built, meant) => {
  expect(sameFormula(built, meant)).toBe(true);
});

test("brackets are not put where they would change nothing", () => {
  expect(f`IF(${f`${x}+${y}`}>0,${f`${x}+${y}`},1)`).toBe("IF(x+y>0,x+y,1)");
  expect(f`${a}-${f`SUM(${x},${y})`}`).toBe("a-SUM(x,y)");
  expect(f`${a}-${f`(${x}+${y})`}`).toBe("a-(x+y)");
  expect(f`${a}*${f`-${x}`}`).toBe("a*-x");
});

describe("columns and fields", () => {
  const runs = block(
    "runs",
    {
      from: entry("From", { width: 9 }, { what: "Where it begins", rule: { kind: "text" } }),
      length: result("Length", { unit: "m", width: 9 }),
      loss: results("Loss", { unit: "dB" }, { low: { head: "low end" }, high: { head: "high end" } }),
    },
    { both: ["loss_low", "loss_high"] },
  );
  const plan = fields("plan", { total: told("Total", { unit: "m" }) }, ["all"]);

  test("a name follows from the block and the key", () => {
    expect(
      [runs.from, runs.loss, runs.loss.high, runs.both, plan.total, plan.all].map(({ name }) => name),
    ).toEqual(["runs_from", "runs_loss", "runs_loss_high", "runs_both", "plan_total", "plan_all"]);
    expect(runs[OF].name).toBe("runs");
    expect(plan.total.words.label).toBe("Total");
  });

  test("what is not there, and a text that was not built, do not compile", () => {
    // @ts-expect-error there is no such column
    expect(() => f`${runs.lenght}`).toThrow();
    // @ts-expect-error no such end
    expect(() => f`${runs.loss.middle}`).toThrow();
    // @ts-expect-error a plain text is no formula
    const plain: Formula = "runs_length*2";
    expect(plain).toBe("runs_length*2");
    // @ts-expect-error a group begins and ends at columns of its block
    block("odd", { from: result("From", {}) }, { all: ["from", "to"] });
  });
});
