/**
 * A formula cut into its pieces. Joined they give its exact text, so whatever is
 * changed in one piece leaves all others as they were written. The cutting is the
 * library's; no other file knows it. Its own reader is not used: it forgets
 * brackets, throws, and nests as deep as a hostile file likes.
 */
import { tokenize, type Token as LibraryToken } from "@borgar/fx";

export type TokenKind =
  | "space"
  | "number"
  | "text"
  | "boolean"
  | "error"
  | "function"
  | "name"
  | "reference"
  | "structured"
  | "operator"
  /** The equals sign that a formula may begin with. */
  | "sign of a formula"
  /** What belongs to no formula, and text whose end is missing. */
  | "unknown";

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  /** 0-based place of its first character. */
  readonly start: number;
}

const KINDS: Readonly<Record<string, TokenKind>> = {
  whitespace: "space",
  newline: "space",
  number: "number",
  string: "text",
  bool: "boolean",
  error: "error",
  func: "function",
  range_named: "name",
  range: "reference",
  range_beam: "reference",
  structured: "structured",
  operator: "operator",
  fx_prefix: "sign of a formula",
};

/** Characters of the formulas that are kept with their tokens; those of a large template have a quarter of a million. */
const MOST_KEPT = 500_000;
const kept = new Map<string, readonly Token[]>();
let keptCharacters = 0;

/** @param formula with or without its equals sign; any text gives tokens */
export function tokensOf(formula: string): readonly Token[] {
  const before = kept.get(formula);
  if (before) return before;
  if (keptCharacters + formula.length > MOST_KEPT) {
    kept.clear();
    keptCharacters = 0;
  }
  const tokens = cut(formula);
  kept.set(formula, tokens);
  keptCharacters += formula.length;
  return tokens;
}

function cut(formula: string): Token[] {
  const found = tokenize(formula, { withLocation: false, negativeNumbers: false });
  const tokens: Token[] = [];
  let start = 0;
  for (let index = 0; index < found.length; index++) {
    const text = withItsSheet(found, index);
    if (text !== found[index]!.value) index += 2;
    const { type, unterminated } = found[index]!;
    tokens.push({ kind: unterminated ? "unknown" : (KINDS[type] ?? "unknown"), text, start });
    start += text.length;
  }
  return tokens;
}

/** The library leaves `Rooms!#REF!`, a cell that is gone from its sheet, in three pieces. */
function withItsSheet(found: readonly LibraryToken[], index: number): string {
  const [sheet, mark, error] = [found[index]!, found[index + 1], found[index + 2]];
  return sheet.type.startsWith("context") && mark?.value === "!" && error?.type === "error"
    ? `${sheet.value}!${error.value}`
    : sheet.value;
}

/** Whether the token there is the name of what is called; some write a blank before the bracket. */
export function isCalled(tokens: readonly Token[], index: number): boolean {
  const kind = tokens[index]?.kind;
  if (kind !== "name") return kind === "function";
  const next = tokens[index + 1];
  return (next?.kind === "space" ? tokens[index + 2] : next)?.text === "(";
}

/** @returns the formula with the text of some tokens changed; all others as they were written */
export function withTokens(
  formula: string,
  change: (token: Token, index: number, tokens: readonly Token[]) => string,
): string {
  const tokens = tokensOf(formula);
  return tokens.map((token, index) => change(token, index, tokens)).join("");
}
