/**
 * The checks of what was entered: every input of a template is held to its own
 * rule and marks, by a formula that counts and one that names the first place
 * of every kind. So a pasted value is held to
 * what a typed one is refused by, and a blank to what its cell asks for.
 */
import { quotedText } from "../formula/print";
import type { Block, Check, Column, Fields, InputRule, Part, SheetDefinition } from "./definition";
import { DATES } from "./typed/typedKind";

/** The column in which a template lists what is 0 on purpose; its rows give their reason. */
const ON_PURPOSE = "onpurpose_what";
const NONE = "none: each cell says what it wants";

/** An input as formulas see it. */
interface Entry {
  readonly name: string;
  readonly input: InputRule;
  /** True where the input is looked at. */
  readonly filled?: string;
  /** What the list of zeros calls it. */
  readonly called: string;
  /** A name with a blank at an end looks like another and is none. */
  readonly namesRows?: boolean;
  /** Adds its place to the text of the places; `bad` is 1 where it is at fault. */
  readonly placed: (bad: string) => string;
}

/** One check for each part of the sheets that has inputs. */
export const partEntryChecks = (sheets: readonly SheetDefinition[]): Check[] =>
  sheets.flatMap(({ name, parts }) =>
    parts.flatMap((part) => entryCheck(`${name}, ${part.heading.toLowerCase()}`, name, [part])),
  );

/** One check for each sheet that has inputs. */
export const sheetEntryChecks = (sheets: readonly SheetDefinition[]): Check[] =>
  sheets.flatMap(({ name, parts }) => entryCheck(name, name, parts));

function entryCheck(of: string, where: string, parts: readonly Part[]): Check[] {
  const faults = parts.flatMap(entriesOf).flatMap((entry) => {
    const bad = faultOf(entry);
    return bad === undefined ? [] : [{ placed: entry.placed, bad }];
  });
  if (faults.length === 0) return [];
  return [
    {
      what: `Entries missing or out of bounds: ${of}`,
      limit: NONE,
      found: faults.map(({ bad }) => `SUMPRODUCT(--(${bad}))`).join("+"),
      passes: "@=0",
      where,
      places: faults.map(({ placed, bad }) => placed(bad)).join("&"),
      entries: true,
    },
  ];
}

/** A note of every 0 that is worth a word; one for all sheets. */
export function zeroNote(sheets: readonly SheetDefinition[], where: string): Check {
  const zeros = sheets
    .flatMap(({ parts }) => parts.flatMap(entriesOf))
    .filter(({ input }) => input.zero === "note")
    .map((entry) => ({ ...entry, bad: product([entry.filled, zeroOf(entry)]) }));
  return {
    what: "Figures of 0 that are worth a word of why",
    limit: "a wish, not a rule: list them on Terms with their reason",
    found: zeros.map(({ bad }) => `SUMPRODUCT(--(${bad}))`).join("+"),
    passes: "@=0",
    where,
    places: zeros.map(({ placed, bad }) => placed(bad)).join("&"),
    advice: true,
  };
}

function entriesOf(part: Part): Entry[] {
  if (part.kind === "fields") return fieldEntries(part);
  return part.kind === "block" ? rowEntries(part) : [];
}

const fieldEntries = ({ fields }: Fields): Entry[] =>
  fields.flatMap(({ name, label, input }) =>
    input
      ? [
          {
            name,
            input,
            called: quotedText(label),
            placed: (bad) => `IF(${bad},${quotedText(`; ${label}`)},"")`,
          },
        ]
      : [],
  );

function rowEntries(block: Block): Entry[] {
  const inputs = block.columns.filter((column): column is Column & { input: InputRule } => !!column.input);
  const key = inputs.find((column) => column.key === block.rowName) ?? inputs[0];
  if (!key) return [];
  const rows = `${block.name}_${key.key}`;
  const others = inputs
    .filter((column) => column !== key)
    .map((column) => `(${block.name}_${column.key}<>"")`);
  const at = (bad: string): string => `MATCH(1,(${bad})*1,0)`;
  return inputs.map((column): Entry => {
    const { head, input } = column;
    const name = `${block.name}_${column.key}`;
    return column === key
      ? {
          name,
          input: { ...input, required: others.length > 0 ? `(0+${others.join("+")}>0)` : undefined },
          called: rows,
          namesRows: true,
          // A row without its name is told by its number.
          placed: (bad) => `IFERROR(${quotedText(`; ${head} of row `)}&(${at(bad)}+MIN(ROW(${rows}))-1),"")`,
        }
      : {
          name,
          input,
          filled: `(${rows}<>"")`,
          called: rows,
          placed: (bad) => `IFERROR(${quotedText(`; ${head} of `)}&INDEX(${rows},${at(bad)}),"")`,
        };
  });
}

/** A formula that is more than 0 where an entry is at fault; undefined for one that cannot be. */
function faultOf(entry: Entry): string | undefined {
  const { name, input, filled, namesRows } = entry;
  const missing =
    input.required && product([input.required === true ? undefined : input.required, blank(entry)]);
  const unfit = unfitOf(input, name);
  const faults = [
    missing,
    unfit && product([`(${name}<>"")`, unfit]),
    input.zero === "reason" && zeroOf(entry),
    namesRows && input.rule.kind === "text" && `(LEFT(${name},1)=" ")+(RIGHT(${name},1)=" ")`,
  ].filter((fault): fault is string => !!fault);
  if (faults.length === 0) return undefined;
  // From 0 on, because a truth value by itself counts as more than any number.
  return `${product([filled, `(0+${faults.join("+")})`])}>0`;
}

/** Blanks alone are no text; looking for them in every row of a long list would cost more than it is worth. */
const blank = ({ name, input, filled }: Entry): string =>
  input.rule.kind === "text" && !filled ? `(TRIM(${name})="")` : `(${name}="")`;

/** True where what is entered is not what the rule asks for; a blank counts for nothing here. */
function unfitOf({ rule }: InputRule, name: string): string | undefined {
  switch (rule.kind) {
    case "number": {
      const { min, max, integer, atLeast, atMost, orWords = [] } = rule;
      const fits = [
        min !== undefined && `(${name}>=${min})`,
        max !== undefined && `(${name}<=${max})`,
        integer && `IFERROR(${name}=INT(${name}),FALSE)`,
        atLeast && `((${atLeast.name}="")+(${name}>${atLeast.orEqual ? "=" : ""}${atLeast.name})>0)`,
        atMost && `((${atMost.name}="")+(${name}<${atMost.orEqual ? "=" : ""}${atMost.name})>0)`,
      ].filter((fit): fit is string => !!fit);
      // Text counts as more than any number, so a greatest value refuses it.
      const number = [...(max === undefined ? [`ISNUMBER(${name})`] : []), ...fits].join("*");
      const words = orWords.map((word) => `-(${name}=${quotedText(word)})`).join("");
      return `(1-${number}${words})`;
    }
    case "date":
      return `(1-(${name}>=${DATES.min})*(${name}<=${DATES.max}))`;
    case "choice":
      return `(${rule.choices.map((choice) => `(${name}=${quotedText(choice)})`).join("+")}=0)`;
    case "named":
      return `ISERROR(MATCH(${name},${rule.name},0))`;
    case "text":
    case "slot":
      return undefined;
  }
}

/** True where a 0 matters and no reason is listed for it. */
const zeroOf = ({ name, input, called }: Entry): string =>
  product([`(${name}=0)*(${name}<>"")`, input.zeroWhere, `ISERROR(MATCH(${called},${ON_PURPOSE},0))`]);

const product = (factors: readonly (string | undefined)[]): string =>
  factors.filter((factor) => factor !== undefined && factor !== "").join("*");
