/**
 * How a document's people write numbers and dates: what `1.234` and `05/11/2026` mean, which is not the same
 * everywhere. The choice is a field of the workbook, so that it travels with it and is undone like any other.
 *
 * Source: Unicode CLDR 44, the main locales' decimal and grouping signs and short dates; the Swiss and the
 * Canadian habits beside it are common practice, no source.
 */
export interface Writing {
  /** As it stands in the field, and in its list of choices. */
  readonly label: string;
  /** Of the document's locale: `en-GB`. */
  readonly tag: string;
  readonly decimal: "." | ",";
  /** Between thousands; a blank stands for every kind of blank. */
  readonly group: "," | "." | " " | "'";
  /** Of a date with strokes; undefined where none is the rule. */
  readonly order?: "dmy" | "mdy";
  /** Dates with points are written day first there. */
  readonly points: boolean;
  /** What `O` abbreviates on a compass card. */
  readonly o?: "E" | "W";
}

const COMMA_AND_POINT = { decimal: ".", group: "," } as const;
const POINT_AND_COMMA = { decimal: ",", group: "." } as const;
const BLANK_AND_COMMA = { decimal: ",", group: " " } as const;
const DAY_FIRST = { order: "dmy", points: true } as const;

export const WRITINGS: readonly Writing[] = [
  { label: "English (UK)", tag: "en-GB", ...COMMA_AND_POINT, ...DAY_FIRST },
  { label: "English (US)", tag: "en-US", ...COMMA_AND_POINT, order: "mdy", points: false },
  { label: "English (Australia)", tag: "en-AU", ...COMMA_AND_POINT, ...DAY_FIRST },
  { label: "English (Canada)", tag: "en-CA", ...COMMA_AND_POINT, points: false },
  { label: "Danish", tag: "da-DK", ...POINT_AND_COMMA, ...DAY_FIRST },
  { label: "Dutch", tag: "nl-NL", ...POINT_AND_COMMA, ...DAY_FIRST },
  { label: "French", tag: "fr-FR", ...BLANK_AND_COMMA, ...DAY_FIRST, o: "W" },
  { label: "German", tag: "de-DE", ...POINT_AND_COMMA, ...DAY_FIRST, o: "E" },
  { label: "German (Switzerland)", tag: "de-CH", decimal: ".", group: "'", ...DAY_FIRST, o: "E" },
  { label: "Italian", tag: "it-IT", ...POINT_AND_COMMA, ...DAY_FIRST, o: "W" },
  { label: "Norwegian", tag: "nb-NO", ...BLANK_AND_COMMA, ...DAY_FIRST },
  { label: "Portuguese (Brazil)", tag: "pt-BR", ...POINT_AND_COMMA, ...DAY_FIRST, o: "W" },
  { label: "Spanish", tag: "es-ES", ...POINT_AND_COMMA, ...DAY_FIRST, o: "W" },
  { label: "Swedish", tag: "sv-SE", ...BLANK_AND_COMMA, points: true },
];

/** Name and label of the field in every template that has one. */
export const WRITING_FIELD = "written_as";
export const WRITING_LABEL = "Numbers and dates typed as in";

/** @param chosen what stands in the field, or a locale's tag; undefined where nobody has chosen */
export function writingOf(chosen: unknown): Writing | undefined {
  const wanted = typeof chosen === "string" ? chosen.trim().toLowerCase() : "";
  return WRITINGS.find(({ label, tag }) => label.toLowerCase() === wanted || tag.toLowerCase() === wanted);
}
