/**
 * The checks of what was entered: every input of a template is held to its own
 * rule and marks, by a formula that counts and one that names the first place
 * of every kind. So a pasted value is held to
 * what a typed one is refused by, and a blank to what its cell asks for.
 */
import { chain, f, text, type Formula, type Named } from "../formula/build";
import { countedInAll, NONE_FOUND } from "./checkPlaces";
import type { Block, Check, Column, Fields, InputRule, Part, SheetDefinition } from "./definition";
import { DATES } from "./typed/typedKind";

/** The column in which a template lists what is 0 on purpose; its rows give their reason. */
const ON_PURPOSE: Named = { name: "onpurpose_what" };
const NONE = "none: each cell says what it wants";

/** An input as formulas see it. */
interface Entry {
  readonly of: Named;
  readonly input: InputRule;
  /** True where the input is looked at. */
  readonly filled?: Formula;
  /** What the list of zeros calls it. */
  readonly called: Named | Formula;
  /** A name with a blank at an end looks like another and is none. */
  readonly namesRows?: boolean;
  /** Adds its place to the text of the places; `bad` is 1 where it is at fault. */
  readonly placed: (bad: Formula) => Formula;
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
      id: `entries of ${of}`,
      what: `Entries missing or out of bounds: ${of}`,
      limit: NONE,
      found: countOf(faults),
      passes: NONE_FOUND,
      where,
      places: placesIn(faults),
      entriesOf: where,
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
    id: "zeros",
    what: "Figures of 0 without a reason",
    limit: "advisory: list them on Terms with their reason",
    found: countOf(zeros),
    passes: NONE_FOUND,
    where,
    places: placesIn(zeros),
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
            of: { name },
            input,
            called: text(label),
            placed: (bad) => f`IF(${bad},${text(`; ${label}`)},"")`,
          },
        ]
      : [],
  );

function rowEntries(block: Block): Entry[] {
  const inputs = block.columns.filter((column): column is Column & { input: InputRule } => !!column.input);
  const key = inputs.find((column) => column.key === block.rowName) ?? inputs[0];
  if (!key) return [];
  const columnOf = (column: Column): Named => ({ name: `${block.name}_${column.key}` });
  const rows = columnOf(key);
  const others = inputs.filter((column) => column !== key).map((column) => f`(${columnOf(column)}<>"")`);
  const at = (bad: Formula): Formula => f`MATCH(1,(${bad})*1,0)`;
  return inputs.map((column): Entry => {
    const { head, input } = column;
    const of = columnOf(column);
    return column === key
      ? {
          of,
          input: { ...input, required: others.length > 0 ? f`(0+${chain("+", others)}>0)` : undefined },
          called: rows,
          namesRows: true,
          // A row without its name is told by its number.
          placed: (bad) => f`IFERROR(${text(`; ${head} of row `)}&(${at(bad)}+MIN(ROW(${rows}))-1),"")`,
        }
      : {
          of,
          input,
          filled: f`(${rows}<>"")`,
          called: rows,
          placed: (bad) => f`IFERROR(${text(`; ${head} of `)}&INDEX(${rows},${at(bad)}),"")`,
        };
  });
}

/** A formula that is more than 0 where an entry is at fault; undefined for one that cannot be. */
function faultOf(entry: Entry): Formula | undefined {
  const { of, input, filled, namesRows } = entry;
  const missing =
    input.required && product([input.required === true ? undefined : input.required, blank(entry)]);
  const unfit = unfitOf(input, of);
  const faults = [
    missing,
    unfit && product([f`(${of}<>"")`, unfit]),
    input.zero === "reason" && zeroOf(entry),
    namesRows && input.rule.kind === "text" && f`(LEFT(${of},1)=" ")+(RIGHT(${of},1)=" ")`,
  ].filter((fault): fault is Formula => !!fault);
  if (faults.length === 0) return undefined;
  // From 0 on, because a truth value by itself counts as more than any number.
  return f`${product([filled, f`(0+${chain("+", faults)})`])}>0`;
}

/** Blanks alone are no text; looking for them in every row of a long list would cost more than it is worth. */
const blank = ({ of, input, filled }: Entry): Formula =>
  input.rule.kind === "text" && !filled ? f`(TRIM(${of})="")` : f`(${of}="")`;

/** True where what is entered is not what the rule asks for; a blank counts for nothing here. */
function unfitOf({ rule }: InputRule, of: Named): Formula | undefined {
  switch (rule.kind) {
    case "number": {
      const { min, max, integer, atLeast, atMost, orWords = [] } = rule;
      const fits = [
        min !== undefined && f`(${of}>=${min})`,
        max !== undefined && f`(${of}<=${max})`,
        integer && f`IFERROR(${of}=INT(${of}),FALSE)`,
        atLeast && f`((${atLeast}="")+${beyond(of, atLeast.orEqual ? ">=" : ">", atLeast)}>0)`,
        atMost && f`((${atMost}="")+${beyond(of, atMost.orEqual ? "<=" : "<", atMost)}>0)`,
      ].filter((fit): fit is Formula => !!fit);
      // Text counts as more than any number, so a greatest value refuses it.
      const number = chain("*", [...(max === undefined ? [f`ISNUMBER(${of})`] : []), ...fits]);
      return f`(${chain("-", [f`1`, number, ...orWords.map((word) => f`(${of}=${text(word)})`)])})`;
    }
    case "date":
      return f`(1-(${of}>=${DATES.min})*(${of}<=${DATES.max}))`;
    case "choice":
      return f`(${chain(
        "+",
        rule.choices.map((choice) => f`(${of}=${text(choice)})`),
      )}=0)`;
    case "named":
      return f`ISERROR(MATCH(${of},${{ name: rule.name }},0))`;
    case "text":
    case "slot":
      return undefined;
  }
}

const beyond = (of: Named, operator: ">" | ">=" | "<" | "<=", limit: Named): Formula =>
  f`(${chain(operator, [of, limit])})`;

/** True where a 0 matters and no reason is listed for it. */
const zeroOf = ({ of, input, called }: Entry): Formula =>
  product([f`(${of}=0)*(${of}<>"")`, input.zeroWhere, f`ISERROR(MATCH(${called},${ON_PURPOSE},0))`]);

const product = (factors: readonly (Formula | undefined)[]): Formula =>
  chain(
    "*",
    factors.filter((factor): factor is Formula => factor !== undefined),
  );

interface Placed {
  readonly placed: (bad: Formula) => Formula;
  readonly bad: Formula;
}

const countOf = (all: readonly Placed[]): Formula => countedInAll(all.map(({ bad }) => bad));

const placesIn = (all: readonly Placed[]): Formula =>
  chain(
    "&",
    all.map(({ placed, bad }) => placed(bad)),
  );
