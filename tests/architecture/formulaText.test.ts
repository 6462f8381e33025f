/**
 * Formula text is read in one room, `src/formula`, and there by a tree or by
 * tokens. A regular expression over it elsewhere is a second opinion of what a
 * formula is, which goes wrong in texts, sheet names and other programs' ways of
 * writing. Found by two signs: a pattern that describes a piece of a formula (a
 * cell's address, a quoted text, our namespace, a stored prefix), and a pattern
 * that is put to something called a formula.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { sourceFiles } from "../support/sourceFiles";

const source = path.join(__dirname, "../../src");

const PIECES = [
  "[A-Z]{1,3}",
  "[a-z]{1,3}",
  '(?:[^"]|"")',
  "(?:[^']|'')",
  "xldudf",
  "xlfn",
  "xlws",
  "RIG",
  "ISERROR",
];
const PUT_TO_TEXT = new Set(["match", "matchAll", "replace", "replaceAll", "search", "split"]);
const PUT_BY_PATTERN = new Set(["test", "exec"]);
const CALLED_FORMULA = /formula|condition/i;

/** Patterns that look like one over formulas and are none, with the reason. */
const NONE_OVER_FORMULAS: Readonly<Record<string, string>> = {
  "review/sheetWords.ts": "takes places out of a sentence for people",
};

/** What in a file reads formula text with a pattern, each as it is written. */
function scannersIn(text: string): string[] {
  const file = ts.createSourceFile("one.ts", text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const isPattern = (node: ts.Node | undefined): boolean =>
    node !== undefined &&
    (ts.isRegularExpressionLiteral(node) ||
      (ts.isNewExpression(node) && node.expression.getText() === "RegExp"));
  const visit = (node: ts.Node): void => {
    if (isPattern(node) && PIECES.some((piece) => node.getText().includes(piece))) found.push(node.getText());
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { expression: of, name } = node.expression;
      const [first] = node.arguments;
      const putToText = PUT_TO_TEXT.has(name.text) && isPattern(first) && CALLED_FORMULA.test(of.getText());
      const putByPattern = PUT_BY_PATTERN.has(name.text) && CALLED_FORMULA.test(first?.getText() ?? "");
      if (putToText || putByPattern) found.push(node.getText());
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

test("no regular expression over formula text outside its room", () => {
  const outside = sourceFiles(source).filter((file) => !file.startsWith(path.join(source, "formula")));
  expect(outside.length).toBeGreaterThan(300);
  const found = outside.flatMap((file) => {
    const name = path.relative(source, file).split(path.sep).join("/");
    if (Object.hasOwn(NONE_OVER_FORMULAS, name)) return [];
    return scannersIn(readFileSync(file, "utf8")).map((scanner) => `${name}: ${scanner}`);
  });
  expect(found).toEqual([]);
});

test("every exception still holds such a pattern", () => {
  for (const name of Object.keys(NONE_OVER_FORMULAS))
    expect([name, scannersIn(readFileSync(path.join(source, name), "utf8")).length]).not.toEqual([name, 0]);
});

/** The scanners that this room replaced, as they stood. */
test.each([
  String.raw`const CALL = /\bRIG\.[A-Z0-9]+\(/;`,
  String.raw`const bare = formula.replace(/x/g, "");`,
  String.raw`new RegExp("_xldudf_RIG[_.]", "gi")`,
  String.raw`const at = /\$?[A-Z]{1,3}\$?\d+/.exec(text);`,
  String.raw`TAKES_OFF.test(cell.formula)`,
  String.raw`/^"((?:[^"]|"")*)"$/.exec(text)`,
  String.raw`COUNTED.exec(condition)`,
])("such a one would be found: %s", (text) => expect(scannersIn(text)).toHaveLength(1));

test.each(['formula.replace("a", "b")', "/[A-Z]+/.exec(name)", 'formula.startsWith("=")'])(
  "and this is none: %s",
  (text) => expect(scannersIn(text)).toEqual([]),
);
