/**
 * Calls of ours that native formulas can stand in for, so that an office copy
 * goes on pricing where Rigsheet is not installed. Only whole formulas have an
 * equivalent; an input that the function would refuse gives `#N/A` natively.
 *
 * Functions used: those that Excel and LibreOffice 7.4 both have.
 */
import { treeOf } from "../../../formula/parse";
import { callIn } from "../../../formula/callIn";

type Equivalent = (...args: string[]) => string | undefined;

/** A digit that the function takes, or a name or cell that holds one; left out, it is 2. */
const isDecimals = (written: string): boolean =>
  written === "" ||
  (written.length === 1 && written >= "0" && written <= "6") ||
  NAMED_KINDS.has(treeOf(written)?.kind ?? "");
const NAMED_KINDS: ReadonlySet<string> = new Set(["name", "reference"]);

/** Decimals to which an amount is set right before it is rounded, beyond those that are kept. */
const NOISE_DECIMALS = 6;

/**
 * A native rounding takes a tie away from zero; for the even digit it is taken back where the digit is odd. A
 * product is binary here too, so it is first rounded to a few decimals more: a tie is then told to a millionth
 * of the last digit kept, and not exactly as the function tells it.
 */
function roundedEquivalent(amount: string, decimals: string, rule: string): string {
  const settled = `ROUND(${amount},${decimals}+${NOISE_DECIMALS})`;
  const rounded = `ROUND(${settled},${decimals})`;
  if (rule === "") return rounded;
  const scale = `10^${decimals}`;
  const tie = `(ROUND(MOD(ABS(${settled})*${scale},1),5)=0.5)`;
  const odd = `(MOD(ROUND(ABS(${rounded})*${scale},0),2)=1)`;
  return `${rounded}-(${rule}="half even")*${tie}*${odd}*SIGN(${settled})/${scale}`;
}

const EQUIVALENTS: Readonly<Record<string, Equivalent>> = {
  SELLPRICE: (cost, margin) => cost && margin && `IF(${cost}="","",${cost}/(1-${margin}))`,

  ROUNDMONEY: (value, decimals = "2", rule = "", times, dividedBy) => {
    if (!value || !isDecimals(decimals)) return undefined;
    // Of columns, a blank row stays blank, and a blank share or count is 1.
    const given = (factor: string): string => `IF(${factor}="",1,${factor})`;
    const product = times ? `${value}*${given(times)}` : value;
    const amount = dividedBy ? `${product}/${given(dividedBy)}` : product;
    return `IF(${value}="","",${roundedEquivalent(amount, decimals || "2", rule)})`;
  },

  ADDMONEY: (...columns) => {
    if (columns.length === 0 || columns.includes("")) return undefined;
    const sums = columns.map((column) => `SUM(${column})`);
    const places = columns.map((_, index) => index + 1);
    return sums.length === 1 ? sums[0] : `CHOOSE({${places.join(";")}},${sums.join(",")})`;
  },

  // The tax of all classes is rounded together: where there are several it can be a cent off for each.
  TOTALSWITH: (sum, names, rates, amounts, taxed, untaxed, usual, inClass = "", on = "", ...more) => {
    if (!sum || !names || !rates || !amounts || !taxed || !untaxed || !usual) return undefined;
    const [off = "", share = "", rule = "", decimals = "2"] = more;
    if (!isDecimals(decimals)) return undefined;
    const before = `(SUM(${amounts})+${taxed}+${untaxed}+${sum})`;
    const byShare = share === "" ? "" : roundedEquivalent(`${before}*${share}`, decimals || "2", rule);
    const bySum = off === "" ? "0" : off;
    const discount = byShare === "" ? bySum : `IF(${share}="",${bySum},${byShare})`;
    const usualOn = on === "" ? usual : `${usual}*(${on}<>"labour only")`;
    const rate =
      inClass === "" ? usualOn : `IF(${inClass}="",${usualOn},INDEX(${rates},MATCH(${inClass},${names},0)))`;
    const bears = `SUMPRODUCT(${amounts},${rates})+${taxed}*${usual}+${sum}*${rate}`;
    const left = `(1-IF(${before}=0,0,${discount}/${before}))`;
    return `IF(${sum}="","",${before}-${discount}+${roundedEquivalent(`(${bears})*${left}`, decimals || "2", rule)})`;
  },

  // Within 1e-9 a level counts as equal to its limit, as in the function.
  WINDOW: (level, low, high) => {
    if (!level || !low || !high) return undefined;
    const known = `ISNUMBER(${level})*ISNUMBER(${low})*ISNUMBER(${high})*(${low}<=${high})`;
    const verdict = `IF(${level}<${low}-1E-9,"low",IF(${level}>${high}+1E-9,"high","ok"))`;
    return `IF(${known},${verdict},IF(${level}="","",NA()))`;
  },
};

/** A name, a cell, a number or a text needs no brackets of its own; anything else gets them. */
function bracketed(arg: string): string {
  const tree = treeOf(arg);
  const isPlain = tree?.kind === "reference" ? !tree.cells.to : tree && PLAIN_KINDS.has(tree.kind);
  return arg === "" || isPlain ? arg : `(${arg})`;
}

const PLAIN_KINDS: ReadonlySet<string> = new Set(["name", "number", "text"]);

/** @returns the native formula that computes the same; undefined where there is none */
export function nativeEquivalent(formula: string): string | undefined {
  const call = callIn(formula);
  return call?.whole && Object.hasOwn(EQUIVALENTS, call.name)
    ? EQUIVALENTS[call.name]!(...call.args.map(bracketed))
    : undefined;
}
