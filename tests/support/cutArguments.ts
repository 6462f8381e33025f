/**
 * What Excel cuts down to one cell in a plain formula ("implicit
 * intersection"): a static check after the classes of Excel's parameters, see
 * tests/fixtures/excel. Shares nothing with the product.
 */
import { readFileSync } from "node:fs";
import path from "node:path";

interface Parameter {
  readonly class: "value" | "reference" | "value-array";
  readonly conversion: "own" | "always" | "array" | "repeats" | "repeats-array";
}

interface FunctionClass {
  readonly least: number;
  readonly most: number;
  readonly returns: "value" | "reference" | "array";
  readonly parameters: readonly Parameter[];
  readonly repeats?: "the last" | "the last two";
}

interface Classes {
  readonly usedByTheTemplates: Readonly<Record<string, FunctionClass>>;
  readonly forLaterUse: Readonly<Record<string, FunctionClass>>;
  readonly workedExamples: readonly { readonly formula: string; readonly cut: readonly string[] }[];
}

export const CLASSES = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/excel/parameter-classes.json"), "utf8"),
) as Classes;
const FUNCTIONS = new Map(
  Object.entries({ ...CLASSES.forLaterUse, ...CLASSES.usedByTheTemplates }).map(([name, one]) => [name, one]),
);

type Node =
  | { readonly kind: "constant"; readonly text: string }
  /** A reference to cells or a name of them. */
  | { readonly kind: "cells"; readonly text: string }
  | { readonly kind: "operator"; readonly operands: readonly Node[] }
  | { readonly kind: "call"; readonly name: string; readonly args: readonly (Node | undefined)[] };

const TOKEN =
  /\s+|"(?:[^"]|"")*"|#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A)|\{[^}]*\}|(?:(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?(?![\p{L}\p{N}_.(])|\d+(?:\.\d*)?(?:E[+-]?\d+)?|\.\d+|[\p{L}_][\p{L}\p{N}_.]*|<>|<=|>=|[-+*/^&=<>%(),@]/giuy;

function tokensOf(formula: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < formula.length) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(formula);
    if (!found) throw new Error(`not understood at ${at}: ${formula.slice(at, at + 30)}`);
    if (found[0].trim() !== "") tokens.push(found[0]);
  }
  return tokens;
}

const INFIX = new Set(["+", "-", "*", "/", "^", "&", "=", "<>", "<", ">", "<=", ">="]);
const IS_CELLS = /^(?:(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::.+)?$/iu;

/** Operators all treat their operands alike here, so their order of precedence does not matter. */
function parse(formula: string): Node {
  const tokens = tokensOf(formula);
  let at = 0;
  const take = (): string => tokens[at++] ?? "";
  const expect = (wanted: string): void => {
    const found = take();
    if (found !== wanted) throw new Error(`${wanted} wanted, ${found || "the end"} found: ${formula}`);
  };
  const expression = (): Node => {
    const operands = [operand()];
    while (INFIX.has(tokens[at] ?? "")) {
      at += 1;
      operands.push(operand());
    }
    return operands.length === 1 ? operands[0]! : { kind: "operator", operands };
  };
  const operand = (): Node => {
    const token = take();
    if (token === "+" || token === "-" || token === "@") return { kind: "operator", operands: [operand()] };
    let node: Node;
    if (token === "(") {
      node = expression();
      expect(")");
    } else if (tokens[at] === "(" && /^[\p{L}_]/u.test(token)) node = call(token);
    else if (/^(?:["#{\d.]|(?:true|false)$)/i.test(token)) node = { kind: "constant", text: token };
    else if (IS_CELLS.test(token) || /^[\p{L}_]/u.test(token)) node = { kind: "cells", text: token };
    else throw new Error(`an operand wanted, ${token || "the end"} found: ${formula}`);
    while (tokens[at] === "%") {
      at += 1;
      node = { kind: "operator", operands: [node] };
    }
    return node;
  };
  const call = (name: string): Node => {
    expect("(");
    const args: (Node | undefined)[] = [];
    if (tokens[at] === ")") at += 1;
    else {
      for (let more = true; more;) {
        args.push(tokens[at] === "," || tokens[at] === ")" ? undefined : expression());
        const next = take();
        if (next !== "," && next !== ")") throw new Error(`, or ) wanted, ${next} found: ${formula}`);
        more = next === ",";
      }
    }
    return { kind: "call", name: name.toUpperCase().replace(/^_XLFN\.(?:_XLWS\.)?/, ""), args };
  };
  const node = expression();
  if (at < tokens.length) throw new Error(`the end wanted, ${tokens[at]} found: ${formula}`);
  return node;
}

function parameterAt({ parameters, repeats }: FunctionClass, index: number): Parameter {
  const known = parameters[index];
  if (known) return known;
  const last = parameters.length - 1;
  if (repeats === "the last") return parameters[last]!;
  if (repeats === "the last two") return parameters[last - 1 + ((index - last - 1) % 2)]!;
  throw new Error("more arguments than the function takes");
}

/** What surrounds an argument: whether an array is wanted of operators there, and of functions. */
interface Around {
  readonly operators: boolean;
  readonly functions: boolean;
}

const ONE_VALUE: Around = { operators: false, functions: false };
const ARRAY: Around = { operators: true, functions: true };

function aroundArgument({ conversion }: Parameter, around: Around): Around {
  switch (conversion) {
    case "array":
      return ARRAY;
    case "repeats":
      return around;
    case "repeats-array":
      return { ...around, functions: false };
    case "own":
    case "always":
      return ONE_VALUE;
  }
}

/**
 * @param formula as it is stored, without its equals sign, in a cell without an array flag
 * @param isMany whether a reference or a name stands for several cells; throws for a name that it does not know
 * @returns what is cut, in words; a formula that is not understood, or a function that is not in the table, throws
 */
export function cutArguments(formula: string, isMany: (cells: string) => boolean): string[] {
  const cut: string[] = [];
  const manyAt = (node: Node | undefined): boolean => {
    if (node?.kind === "cells") return isMany(node.text);
    return node?.kind === "call" && mayReturnMany(node);
  };
  /** A function that returns a reference: whether that may be to several cells. */
  const mayReturnMany = ({ name, args }: Node & { kind: "call" }): boolean => {
    if (FUNCTIONS.get(name)?.returns !== "reference") return false;
    if (name === "IF" || name === "CHOOSE") return args.slice(1).some(manyAt);
    if (name !== "INDEX") return true;
    const all = (arg: Node | undefined): boolean =>
      arg === undefined || (arg.kind === "constant" && Number(arg.text) === 0);
    return manyAt(args[0]) && args.slice(1).some(all);
  };
  const walk = (node: Node, wanted: "value" | "reference", around: Around): void => {
    switch (node.kind) {
      case "constant":
        return;
      case "cells": {
        const many = isMany(node.text);
        if (many && wanted === "value" && !around.operators) cut.push(node.text);
        return;
      }
      case "operator":
        for (const operand of node.operands) walk(operand, "value", around);
        return;
      case "call": {
        const known = FUNCTIONS.get(node.name);
        if (!known) throw new Error(`${node.name} is not in the table of classes`);
        node.args.forEach((arg, index) => {
          if (!arg) return;
          const parameter = parameterAt(known, index);
          const itself = { operators: around.functions, functions: around.functions };
          const inside = aroundArgument(parameter, itself);
          walk(arg, parameter.class === "reference" ? "reference" : "value", inside);
        });
        if (wanted === "value" && !around.functions && mayReturnMany(node)) {
          cut.push(`the result of ${node.name}`);
        }
      }
    }
  };
  walk(parse(formula), "value", ONE_VALUE);
  return cut;
}
