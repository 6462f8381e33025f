/**
 * The reader of formulas against the parser of the library that cuts them, which
 * is another hand's: both must see the same tree. And against formulas that were
 * written down before it: see tests/fixtures/formulas.
 */
import { parse, tokenize } from "@borgar/fx";
import { readFileSync } from "node:fs";
import path from "node:path";
import { parseFormula, treeOf } from "../../src/formula/parse";
import { printFormula } from "../../src/formula/print";
import { tokensOf } from "../../src/formula/tokens";
import { withoutBrackets, type FormulaNode } from "../../src/formula/tree";
import { blankBook } from "../../src/review/blankBook";
import { templates } from "../../src/workbooks/templates";

const written = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/formulas/asWritten.json"), "utf8"),
) as {
  fine: string[];
  broken: string[];
  reads: { formula: string }[];
  same: { one: string; other: string }[];
};

const ofTemplates = [
  ...new Set(
    templates.flatMap(({ definition, demonstration }) =>
      [blankBook(definition), demonstration()].flatMap(({ sheets }) =>
        sheets.flatMap(({ cells }) => Object.values(cells).flatMap(({ formula }) => formula ?? [])),
      ),
    ),
  ),
];
const fine = [...written.fine, ...written.reads.map(({ formula }) => formula)];

/** Both trees said in one way: an operator with what it joins. */
function said(node: FormulaNode): unknown {
  const one = withoutBrackets(node);
  switch (one.kind) {
    case "call":
      return [one.name, ...one.args.map(said)];
    case "operator":
      return [one.operator, said(one.left), said(one.right)];
    case "sign":
      // The other one reads a minus before a number as the number's.
      return one.sign === "-" && one.of.kind === "number" ? -one.of.value : [one.sign, said(one.of)];
    case "percent":
      return ["%", said(one.of)];
    case "spill":
      return ["#", said(one.of)];
    case "array":
      return ["{", ...one.rows.map((row) => row.map(said))];
    case "missing":
      return null;
    case "number":
    case "text":
    case "boolean":
      return one.value;
    case "error":
      return one.code;
    default:
      return printFormula(one).replaceAll("'", "").toUpperCase();
  }
}

interface Other {
  type: string;
  value: unknown;
  operator: string;
  callee: { name: string };
  arguments: (Other | null)[];
  elements: Other[][];
}

function saidByOther(node: Other | null): unknown {
  if (node === null) return null;
  switch (node.type) {
    case "CallExpression":
      return [node.callee.name, ...node.arguments.map(saidByOther)];
    case "BinaryExpression":
    case "UnaryExpression":
      return [node.operator, ...node.arguments.map(saidByOther)];
    case "ArrayExpression":
      return ["{", ...node.elements.map((row) => row.map(saidByOther))];
    case "ReferenceIdentifier":
      return String(node.value).replaceAll("'", "").toUpperCase();
    default:
      return node.value;
  }
}

/** What the other parser does not read, or reads with a blank that we allow. */
const BEYOND_THE_OTHER = ["LAMBDA(", "#REF!", "RIG.CABLELOSS (", "C9:B3", "B3 : C9"];

describe("the same tree as another parser's", () => {
  const both = [...ofTemplates, ...fine].filter(
    (one) => !BEYOND_THE_OTHER.some((part) => one.includes(part)),
  );
  test(`of ${both.length} formulas`, () => {
    expect(both.length).toBeGreaterThan(550);
    for (const formula of both) {
      const other = parse(tokenize(formula)) as unknown as Other;
      expect([formula, said(treeOf(formula)!)]).toEqual([formula, saidByOther(other)]);
    }
  });
});

test("printed and read again, every formula has the same tree", () => {
  const bare = (node: FormulaNode): unknown =>
    JSON.parse(
      JSON.stringify(node, (key, value: unknown) => (["start", "end"].includes(key) ? undefined : value)),
    );
  for (const formula of [...ofTemplates, ...fine]) {
    const tree = treeOf(formula)!;
    const again = printFormula(tree);
    expect([formula, parseFormula(again).trouble, bare(treeOf(again)!)]).toEqual([
      formula,
      undefined,
      bare(tree),
    ]);
  }
});

test("the tokens of any text give it back", () => {
  for (const formula of [...ofTemplates, ...fine, ...written.broken]) {
    expect(
      tokensOf(formula)
        .map(({ text }) => text)
        .join(""),
    ).toBe(formula);
  }
});

test("every node covers its own text", () => {
  const formula = ' IF( (A1+2) * rooms_run , "a""b" , RIG.X( -1 , {1;2} ) ) ';
  const covered = (node: FormulaNode): string => formula.slice(node.start, node.end);
  const tree = treeOf(formula)!;
  expect(covered(tree)).toBe(formula.trim());
  expect(tree.kind === "call" && tree.args.map(covered)).toEqual([
    "(A1+2) * rooms_run",
    '"a""b"',
    "RIG.X( -1 , {1;2} )",
  ]);
});

describe("what is no formula gives a sentence", () => {
  test.each(written.broken)("%s", (formula) => {
    const { tree, trouble } = parseFormula(formula);
    expect(tree).toBeUndefined();
    expect(trouble).toMatch(/^[^\n]{10,200}\.$/s);
  });

  test.each([
    ["SUM(A1;B2)", "; (character 7 of the formula) stands where ) is wanted."],
    ["A1+B2)", ") (character 6 of the formula) closes no bracket."],
    ["IF(A1,", "The formula ends too early: look for a bracket, a quote or a value that is missing."],
    ["  ", "There is no formula: look for a bracket, a quote or a value that is missing."],
    ["{1,2;3}", "} (character 7 of the formula) ends rows of unequal length."],
  ])("%s", (formula, trouble) => expect(parseFormula(formula)).toEqual({ trouble }));
});

describe("a hostile formula is refused, not walked into", () => {
  test.each([
    ["brackets", `${"(".repeat(16_000)}1${")".repeat(16_000)}`],
    ["calls", `${"IF(".repeat(10_000)}1${")".repeat(10_000)}`],
    ["signs", `${"-".repeat(32_000)}1`],
    ["braces", "{".repeat(32_000)],
    ["sums", `1${"+1".repeat(16_000)}`],
    ["percents", `1${"%".repeat(32_000)}`],
    ["sums of sums in brackets", `${"(".repeat(60)}1${`${"+1".repeat(200)})`.repeat(60)}`],
    ["open quotes", '"'.repeat(31_999)],
  ])("%s", (_, formula) => expect(parseFormula(formula).trouble).toMatch(/\.$/));

  test("a long one that is fine is read, and printed", () => {
    const sum = `1${"+1".repeat(900)}`;
    expect(printFormula(treeOf(sum)!)).toBe(sum);
    const list = `{${"1;".repeat(10_000)}1}`;
    expect(printFormula(treeOf(list)!)).toBe(list);
  });
});
