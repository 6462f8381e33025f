/**
 * Calls of ours that native formulas can stand in for, so that an office copy
 * goes on pricing where Rigsheet is not installed. Only whole formulas have a
 * twin; an input that the function would refuse gives `#N/A` natively.
 *
 * Functions used: those that Excel and LibreOffice 7.4 both have.
 */
import { callIn } from "../../../review/callIn";

type Twin = (...args: string[]) => string | undefined;

const TWINS: Readonly<Record<string, Twin>> = {
  SELLPRICE: (cost, margin) => cost && margin && `${cost}/(1-${margin})`,

  // A native rounding takes a tie away from zero; for the even digit it is taken back where the digit is odd.
  ROUNDMONEY: (value, decimals = "2", rule = "") => {
    if (!value || !/^[0-6]?$/.test(decimals)) return undefined;
    const digits = decimals || "2";
    const rounded = `ROUND(${value},${digits})`;
    if (rule === "") return rounded;
    const scale = `10^${digits}`;
    const tie = `(ROUND(MOD(ABS(${value})*${scale},1),7)=0.5)`;
    const odd = `(MOD(ROUND(ABS(${rounded})*${scale},0),2)=1)`;
    return `${rounded}-(${rule}="half even")*${tie}*${odd}*SIGN(${value})/${scale}`;
  },

  // Within 1e-9 a level counts as equal to its limit, as in the function.
  WINDOW: (level, low, high) => {
    if (!level || !low || !high) return undefined;
    const known = `ISNUMBER(${level})*ISNUMBER(${low})*ISNUMBER(${high})*(${low}<=${high})`;
    const verdict = `IF(${level}<${low}-1E-9,"low",IF(${level}>${high}+1E-9,"high","ok"))`;
    return `IF(${known},${verdict},IF(${level}="","",NA()))`;
  },
};

/** A name, a number, a text or a call needs no brackets of its own; anything else does. */
const bracketed = (arg: string): string =>
  arg === "" || /^(?:[\p{L}_][\p{L}\p{N}_.]*|[\d.]+|"[^"]*")$/u.test(arg) ? arg : `(${arg})`;

/** @returns the native formula that computes the same; undefined where there is none */
export function nativeTwin(formula: string): string | undefined {
  const call = callIn(formula);
  return call?.whole && Object.hasOwn(TWINS, call.name)
    ? TWINS[call.name]!(...call.args.map(bracketed))
    : undefined;
}
