import type { BookResult } from "../../workbooks/book";
import type { Part } from "../../workbooks/definition";
import type { Finding } from "../finding";
import { filledCells } from "../namedCells";
import type { Rule } from "../rule";

/** Digits with a point or comma, perhaps a unit or a currency beside them. */
const NUMBER =
  /^\s*(?:[$€£]\s*)?[-+]?\d+(?:[.,]\d+)?\s*(?:m|ft|mm|mhz|ghz|v|w|a|db|min|pcs|%|°c|[$€£]|eur|usd|gbp|chf)?\s*$/i;

/** Letters that scans and hands put in the place of digits. */
const asDigits = (text: string): string => text.replace(/[Oo]/g, "0").replace(/[lI|]/g, "1");

/** @returns the text when a person would read it as a number */
export const numberInText = (value: BookResult | undefined): string | undefined =>
  typeof value === "string" && (NUMBER.test(value) || (/\d/.test(value) && NUMBER.test(asDigits(value))))
    ? value
    : undefined;

export const textNumbers: Rule = {
  id: "text that looks like a number",
  reason: "Sums and counts pass over text, so the row is priced without it and nothing shows.",
  example: "A run of “12,5”, or of “12.5 m”.",
  find: ({ read, definition }) => {
    const parts: readonly Part[] = definition?.sheets.flatMap((sheet) => sheet.parts) ?? [];
    const names = parts.flatMap((part): [string, string][] => {
      if (part.kind === "fields") {
        return part.fields.flatMap(({ name, label, input }) =>
          isNumber(input?.rule.kind) ? [[name, label]] : [],
        );
      }
      if (part.kind !== "block") return [];
      return part.columns.flatMap(({ key, head, input }): [string, string][] =>
        isNumber(input?.rule.kind) ? [[`${part.name}_${key}`, head]] : [],
      );
    });
    return names.flatMap(([name, label]) =>
      filledCells(read, name).flatMap(({ place, value }): Finding[] => {
        const text = numberInText(value);
        if (text === undefined) return [];
        const digits = NUMBER.test(text) ? text : asDigits(text);
        const plain = Number(digits.replace(",", ".").replace(/[^\d.+-]/g, ""));
        const meant = digits.includes("%") ? plain / 100 : plain;
        const letter = digits === text ? "" : " with a letter for a digit";
        return [
          {
            weight: "wrong",
            place,
            message: `${label} holds the text “${text}”${letter}, not a number.`,
            expected: `The number ${meant}, if that was meant.`,
            ...(Number.isFinite(meant) && { meant }),
            effect: "Sums pass over it; its row shows an error or is left out.",
            remedy: "Type the number again, without unit and with this program's decimal sign.",
          },
        ];
      }),
    );
  },
};

const isNumber = (kind: string | undefined): boolean => kind === "number";
