/** Number formats under which a page shows another figure than the cell holds. */
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding, Weight } from "../finding";
import { figure } from "../namedCells";
import { shownNumber, type ShownNumber } from "../numberFormat";
import type { Reviewed, Rule } from "../rule";
import { isForCustomer, templateSheets, type TemplateCell, type TemplateSheet } from "../templateCells";

const GENERAL = "General";

interface Told {
  readonly weight: Weight;
  readonly message: string;
  readonly effect: string;
}

export const otherFigure: Rule = {
  id: "shown otherwise",
  reason: "The customer is asked for what the page shows, not for what the cell holds.",
  example: "A total of 42,426.30 under the format #,##0, prints as 42.",
  find: (reviewed) => {
    const { read, definition, earlier } = reviewed;
    if (!definition || earlier || !read.saved?.file) return [];
    const currency = String(namedValue(read, estimate.site.currency.name) ?? "");
    return templateSheets(read, definition).flatMap((sheet) => ofSheet(sheet, currency, reviewed));
  },
};

function ofSheet(sheet: TemplateSheet, currency: string, { labelAt }: Reviewed): Finding[] {
  // One format painted over many cells is one mistake.
  const found = new Map<string, { first: TemplateCell; told: Told; count: number }>();
  for (const cell of sheet.cells) {
    const { value, look, ownLook, own } = cell;
    if (typeof value !== "number" || !own) continue;
    const format = look.format ?? GENERAL;
    const meant = ownLook.format ?? GENERAL;
    if (format === meant) continue;
    const told = compared(value, format, meant, currency, isForCustomer(sheet));
    if (!told) continue;
    const key = `${format} ${told.effect}`;
    const before = found.get(key);
    if (before) before.count += 1;
    else found.set(key, { first: cell, told, count: 1 });
  }
  return [...found.values()].map(({ first: { at, place, ownLook }, told, count }): Finding => ({
    weight: told.weight,
    place: { sheet: sheet.sheet.name, cell: at },
    message: `${labelAt(sheet.sheet.name, place)} ${told.message}${count > 1 ? `, and ${count - 1} more ${count === 2 ? "cell" : "cells"}` : ""}.`,
    expected: `The number format of the template: ${ownLook.format ?? GENERAL}.`,
    effect: told.effect,
    remedy: "Give the cell the template's number format again (Format cells, Number).",
  }));
}

function compared(
  value: number,
  format: string,
  meant: string,
  currency: string,
  forCustomer: boolean,
): Told | undefined {
  const now = shownNumber(format, value);
  const before = shownNumber(meant, value);
  if (plain(now.text) === plain(before.text)) return undefined;
  const shows = `shows “${now.text}” by its number format ${format}, and holds ${before.kind === "date" ? before.text : figure(value)}`;
  const misread = (effect: string, weight: Weight = "wrong"): Told => ({ weight, message: shows, effect });
  if (now.kind === "nothing")
    return {
      weight: "wrong",
      message: `is blank on the page: the number format ${format} hides ${before.text}`,
      effect: "The figure counts and is not shown; the page looks empty there.",
    };
  if (before.kind === "date") return ofDate(now, shows, forCustomer);
  if (now.kind === "words") return misread("A fixed text stands in the figure's place and follows nothing.");
  if (now.kind === "date") return misread("A date stands in the place of a figure.");
  if (now.percent && !before.percent)
    return misread("A percent sign stands behind a figure that is no share.");
  if (now.thousandsAway > before.thousandsAway)
    return misread("The format scales thousands away: a reader takes the figure for so much less.");
  if (now.exponent && !before.exponent)
    return misread("The scientific writing (E+) drops digits, and customers do not read it.");
  if (/\d/.test(now.beside) && !/\d/.test(before.beside))
    return misread(
      "Digits of the format itself, a literal text, stand with the figure: it reads as another.",
    );
  if (!now.percent && before.percent) return misread("The share is shown as a plain rounded number.");
  if (now.currency !== "" && now.currency !== before.currency && isOther(now.currency, currency))
    return misread(
      `The currency sign ${now.currency} of the format is not the job's currency${currency === "" ? "" : ` (${currency})`}.`,
      "doubtful",
    );
  if (!forCustomer) return undefined;
  if (/\p{L}{2}/u.test(now.beside) && !isCurrency(now.beside, currency))
    return misread("A text of the format stands beside the figure, whatever the cell means.", "doubtful");
  const hidden =
    now.decimals < before.decimals &&
    Number(before.text.replace(/[^\d.-]/g, "")) !== Number(now.text.replace(/[^\d.-]/g, ""));
  if (hidden)
    return misread(
      "It is rounded on the page, with fewer decimals than the figures around it: printed lines no longer add up.",
      "doubtful",
    );
  if (now.decimals > before.decimals + 1)
    return misread(
      "It is shown with more decimals than money has: a format code in files is written in English marks, whatever the locale.",
      "doubtful",
    );
  return undefined;
}

function ofDate(now: ShownNumber, shows: string, forCustomer: boolean): Told | undefined {
  if (now.kind !== "date")
    return {
      weight: forCustomer ? "wrong" : "doubtful",
      message: shows,
      effect: "A day is shown as something else.",
    };
  if (!forCustomer) return undefined;
  const lacks = (["year", "month", "day"] as const).filter((part) => !now.shows.has(part));
  if (lacks.length > 0)
    return {
      weight: "doubtful",
      message: shows,
      effect: `The ${lacks.join(" and ")} of the date ${lacks.length > 1 ? "are" : "is"} not shown.`,
    };
  const [first, second] = now.text.split(/\D+/).map(Number);
  const twoWays =
    /^\d{1,2}\D\d{1,2}\D\d{2,4}$/.test(now.text) && first! <= 12 && second! <= 12 && first !== second;
  return twoWays
    ? {
        weight: "worth knowing",
        message: shows,
        effect: "Day and month of such a date can be taken for each other.",
      }
    : undefined;
}

/** Blanks, brackets and groups are a matter of taste. */
const plain = (text: string): string => text.replace(/[\s,'’]/g, "").replace(/^\((.*)\)$/, "-$1");

/** Signs and letters of currencies, and words by which a job may name them (ISO 4217 and common names, from memory). */
const CURRENCIES: readonly (readonly [sign: RegExp, named: RegExp])[] = [
  [/€|eur/i, /€|eur/i],
  [/£|gbp/i, /£|gbp|pound|sterling/i],
  [/\$|usd|cad|aud|nzd/i, /\$|usd|cad|aud|nzd|sgd|hkd|dollar|peso|mxn|brl/i],
  [/¥|jpy|cny/i, /¥|yen|yuan|jpy|cny|renminbi/i],
  [/chf|fr\.?/i, /chf|franc/i],
  [/kr|sek|nok|dkk/i, /kr|sek|nok|dkk|krona|krone/i],
];

/** A sign that is known to be another's; of what is not known nothing is said. */
const isOther = (sign: string, currency: string): boolean =>
  CURRENCIES.some(([one]) => one.test(sign)) &&
  CURRENCIES.some(([, named]) => named.test(currency)) &&
  !isCurrency(sign, currency);

function isCurrency(sign: string, currency: string): boolean {
  const own = currency.trim().toLowerCase();
  if (own === "") return false;
  const shown = sign.trim().toLowerCase();
  return (
    own.includes(shown) ||
    shown.includes(own) ||
    CURRENCIES.some(([one, named]) => one.test(sign) && named.test(currency))
  );
}
