/** What has moved in the workbooks since the outsider made the cases of tests/fixtures/quotes. */
import { BELOW } from "./suppliedBelow";

export interface Copy {
  fields: Record<string, number | string>;
  blocks: Record<string, Record<string, number | string>[]>;
}

/** Formula cells by their name, for layouts that have moved since: name, and row and column in it, 1-based. */
export const FORMULA_CELLS: Readonly<Record<string, readonly [string, number, number]>> = {
  "Quote!B6": ["quote_customer", 1, 1],
  "Quote!B10": ["quote_until", 1, 1],
  "Quote!B12": ["quote_scope", 1, 1],
  "Quote!B16": ["quote_cable", 1, 1],
  "Quote!B18": ["quote_labour", 1, 1],
  "Quote!B20": ["quote_options", 1, 1],
  "Quote!B21": ["quote_net", 1, 1],
  "Quote!B22": ["quote_tax", 1, 1],
  "Quote!B23": ["quote_total", 1, 1],
  "Quote!B24": ["quote_currency", 1, 1],
  "Quote!B25": ["price_expected", 1, 1],
  "Quote!B26": ["price_low", 1, 1],
  "Price!B8": ["price_labour", 1, 1],
  "Price!B11": ["price_direct", 1, 1],
  "Price!B12": ["price_contingency", 1, 1],
  "Price!B13": ["price_overhead", 1, 1],
  "Price!B15": ["price_sell", 1, 1],
  "Price!B22": ["price_deviation", 1, 1],
  "Price!B44": ["price_taxable", 1, 1],
  "Price!B45": ["price_tax", 1, 1],
  "Price!B46": ["price_total", 1, 1],
  "Materials!B5": ["count_outlets", 1, 1],
  "Materials!B7": ["count_heads", 1, 1],
  "Site!D52": ["corner_frequency", 1, 3],
  "Site!E52": ["corner_frequency", 1, 4],
  "Site!E53": ["corner_temperature", 1, 4],
  "Labour!B21": ["work_total_hours", 1, 1],
  "Checks!B44": ["checks_failed", 1, 1],
  "Checks!B45": ["checks_verdict", 1, 1],
};

/** Results on Checks, by the words of their check. */
export const CHECK_CELLS: Readonly<Record<string, RegExp>> = {
  "Checks!D13": /^Outlets too weak$/,
  "Checks!D15": /15 dB/,
  "Checks!D24": /short of volts/,
};

/** What a placeholder of a case came to be; one that is missing here has no cell. */
export const PLACEHOLDERS: Readonly<Record<string, (copy: Copy, value: number | string) => void>> = {
  ...Object.fromEntries(
    ["discount_sum", "discount_share", "discount_reason"].map((name) => [
      `<${name}>`,
      ({ fields }: Copy, value: number | string) => void (fields[name] = value),
    ]),
  ),
  "<a mark or supplier text: supplied by the customer>": onPurpose("weather cabinet"),
  "<included, and why>": onPurpose("measure and record an outlet"),
  "<reason for no tax>": onPurpose("Tax"),
  // Two cases have this one, of two figures; listing both excuses only the one that is 0.
  "<reason>": (copy, value) => {
    onPurpose("Margin")(copy, value);
    onPurpose("Length tolerance ±")(copy, value);
  },
};

/** A line of the zeros that are meant. */
function onPurpose(what: string): (copy: Copy, value: number | string) => void {
  return ({ blocks }, why) => void (blocks.onpurpose ??= []).push({ what, why });
}

/** The supply that the outsider's workbook had for each head unit stands for those of the higher voltage now. */
const RENAMED: Readonly<Record<string, string>> = { "inserter 24 V": BELOW };
export const renamed = <T>(name: T): T | string =>
  typeof name === "string" ? (RENAMED[name] ?? name) : name;

/** Cases about that supply: their head units are of the kind that has one. */
export const SUPPLIED_BELOW = new Set([
  "blank-supplies_price",
  "zero-supplies_price",
  "blank-supplies_amps",
  "zero-supplies_amps",
  "supply-ma",
]);

/** What the job of a case no longer is, so that the mistake in it is none any more. */
export const GONE: Readonly<Record<string, string>> = {
  "supply-short": "no supply of 22 V is on Parts",
  "price-row-supply": "no hand meter is on Parts",
  "hand-meter-as-supply": "the same",
  "slope-outlet": "the annexe's head unit lifts the high end: A-05 keeps within 15 dB",
  "slope-demo": "the same, of A-06 and A-07",
  "tap-one-demo": "the demonstration's tap passes power at all ports",
  "power-at-branch": "head units name no branch at which a supply stands",
  "shares-and-own": "head units share no supply",
  "shares-missing": "the same",
  "shares-chain": "the same",
  "shared-supply": "the same",
  "gap-rows": "the receiver at G-08 feeds H1, so that the outlet cannot be taken out",
};
