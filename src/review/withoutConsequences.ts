/**
 * One mistake shows in many cells: the errors of what reads it, the checks that
 * count it. What only follows from a named mistake is counted, not listed, so
 * that a person finds what to put right.
 */
import { isBookError, type Book } from "../workbooks/book";
import { bondingSheet } from "../workbooks/multiRoom/bonding";
import type { EstimateCheck } from "../workbooks/multiRoom/checks";
import { dishesSheet } from "../workbooks/multiRoom/dishes";
import { distributionSheet } from "../workbooks/multiRoom/distributionSheet";
import { headUnitsSheet } from "../workbooks/multiRoom/headUnits";
import { partsSheet } from "../workbooks/multiRoom/parts";
import { roomsSheet } from "../workbooks/multiRoom/rooms";
import type { Finding, FindingPlace } from "./finding";

/** Rules whose findings are only what other mistakes lead to. */
const FOLLOWING: ReadonlySet<string> = new Set(["error", "failing check"]);
/** Rules whose findings may follow from a wrong input, and may be a fault of the design. */
export const SYMPTOMS: ReadonlySet<string> = new Set([
  ...FOLLOWING,
  "outside limits",
  "row that cannot be worked out",
]);
interface NamedBy {
  readonly check: EstimateCheck | { readonly entriesOf: string };
  readonly rule: string;
  /** Where the rule's finding is, to count. */
  readonly sheet?: string;
}

/** Checks of the estimate, and the rule that names cell by cell what they count. */
export const NAMED_BY: readonly NamedBy[] = [
  { check: "outlets unfed", rule: "feeding" },
  { check: "branches unfed", rule: "feeding" },
  ...(["outlets unfed", "branches unfed"] as const).map((check) => ({ check, rule: "too many on one feed" })),
  { check: "head units wrong", rule: "feeding", sheet: headUnitsSheet.name },
  { check: "feeders wrong", rule: "feeding", sheet: dishesSheet.name },
  ...(
    [
      ["dishes wrong", dishesSheet],
      ["feeders wrong", dishesSheet],
      ["head units wrong", headUnitsSheet],
      ["branches unfed", distributionSheet],
      ["outlets unfed", roomsSheet],
    ] as const
  ).map(([check, { name: sheet }]) => ({ check, rule: "row that cannot be worked out", sheet })),
  { check: "outlets named twice", rule: "duplicate" },
  { check: "outlets named twice", rule: "feeding" },
  { check: "outlets of head units", rule: "feeding" },
  { check: "outlets of head units", rule: "row that cannot be worked out" },
  // Of a row with a fault of its own the distribution counts nothing.
  { check: "counted again", rule: "row that cannot be worked out" },
  { check: "level too low", rule: "outside limits", sheet: roomsSheet.name },
  { check: "level too high", rule: "outside limits", sheet: roomsSheet.name },
  ...(
    [
      "slope too steep",
      "carrier to noise too low",
      "outlets dead",
      "applied volts too high",
      "connectors too few",
      "no user band",
    ] as const
  ).map((check) => ({ check, rule: "outside limits", sheet: roomsSheet.name })),
  ...(["short of volts", "feeds short of volts", "supply overloaded", "inputs out of range"] as const).map(
    (check) => ({ check, rule: "outside limits", sheet: headUnitsSheet.name }),
  ),
  ...(["amplifiers short of volts", "devices overloaded", "amplifiers overdriven"] as const).map((check) => ({
    check,
    rule: "outside limits",
    sheet: distributionSheet.name,
  })),
  { check: "through ports open", rule: "outside limits" },
  { check: { entriesOf: partsSheet.name }, rule: "price missing, expired or changed" },
  { check: "prices expired", rule: "price missing, expired or changed" },
  { check: "conductors listed", rule: "part lacking or not needed", sheet: bondingSheet.name },
  { check: "total of the quote", rule: "total that does not add" },
];
const NOT_FOUND_OUT = "could not be found out";

/**
 * @param read the workbook as it is stored
 * @param computed the same, computed anew
 * @param ifMended what the rules of SYMPTOMS would say if the inputs that these findings name were mended; absent where that cannot be computed
 */
export function withoutConsequences(
  found: readonly Finding[],
  read: Book,
  computed: Book,
  ifMended?: (causes: readonly Finding[]) => readonly Finding[] | undefined,
): Finding[] {
  const causes = found.filter(({ rule, weight }) => !FOLLOWING.has(rule!) && weight !== "worth knowing");
  const places = causes.flatMap(({ place }) => (place ? [place] : []));
  const cells = new Set(places.map(key));
  const rows = new Set(places.map(rowKey));
  const quoted = places.flatMap((place) => {
    const value = read.sheets.find(({ name }) => name === place.sheet)?.cells[place.cell]?.value;
    return typeof value === "string" && value !== "" ? [`"${value}"`, `'${value}'`] : [];
  });
  const anyError = found.some(({ rule }) => rule === "error");

  const follows = ({ rule, place, cause, message, check }: Finding): boolean => {
    if (rule === "error")
      return (
        place !== undefined && (rows.has(rowKey(place)) || quoted.some((text) => message.includes(text)))
      );
    if (rule !== "failing check") return false;
    if (
      cause &&
      (cells.has(key(cause)) || (rows.has(rowKey(cause)) && isBookError(resultAt(computed, cause))))
    )
      return true;
    const isNamed = NAMED_BY.some(
      (one) =>
        tellsOf(check, one.check) &&
        causes.some(
          (cause) => cause.rule === one.rule && (one.sheet === undefined || cause.place?.sheet === one.sheet),
        ),
    );
    return isNamed || (anyError && message.includes(NOT_FOUND_OUT));
  };
  const hanging = hangingOn(
    found.filter(({ rule, weight }) => !SYMPTOMS.has(rule!) && weight === "wrong"),
    found.filter((one) => SYMPTOMS.has(one.rule!) && !follows(one)),
    ifMended,
  );
  const rest = found.filter((one) => !follows(one) && !hanging.has(one));
  // The line that counts an error's followers goes with the last error that is listed.
  const listed = rest.some(({ rule, place }) => rule === "error" && place);
  const kept = listed ? rest : rest.filter(({ rule }) => rule !== "error");
  const count = found.length - kept.length;
  if (count === 0) return kept;
  return [
    ...kept,
    {
      weight: "worth knowing",
      message: `${count} more ${count === 1 ? "line of errors, checks or limits follows" : "lines of errors, checks and limits follow"} from what is named here.`,
      rule: "error",
      remedy: "Fix the others and review again; these should then clear, or show what is left.",
    },
  ];
}

const tellsOf = (check: Finding["check"], one: NamedBy["check"]): boolean =>
  check !== undefined && (typeof one === "string" ? check.id === one : check.entriesOf === one.entriesOf);

/** The findings that would not be made in the same words if what is wrong were mended. */
function hangingOn(
  wrong: readonly Finding[],
  symptoms: readonly Finding[],
  ifMended: ((causes: readonly Finding[]) => readonly Finding[] | undefined) | undefined,
): ReadonlySet<Finding> {
  if (wrong.length === 0 || symptoms.length === 0) return new Set();
  const left = ifMended?.(wrong);
  if (!left) return new Set();
  const said = new Set(left.map(inFull));
  return new Set(symptoms.filter((one) => one.place && !said.has(inFull(one))));
}

const inFull = ({ rule, place, message }: Finding): string => JSON.stringify([rule, place, message]);
const key = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
const rowKey = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell.replace(/^[A-Z]+/, "")}`;
const resultAt = (book: Book, { sheet, cell }: FindingPlace) =>
  book.sheets.find(({ name }) => name === sheet)?.results[cell];
