/**
 * How a document's people write numbers and dates: what `1.234` and `05/11/2026` mean, which is not the same
 * everywhere, and how the desk shows them. The choice is a field of the workbook, so that it travels with it and is
 * undone like any other.
 *
 * Source: Unicode CLDR 48, the locales' decimal and grouping signs, the least digits that are grouped, and dates of
 * two digits for day and month; what is read beside it (dates with points where strokes are usual, the Swiss and the
 * Canadian habits) is common practice, no source.
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

/** One that may be chosen: it says how things are shown, too. */
export interface ShownWriting extends Writing {
  /** The very sign that is shown between thousands. */
  readonly groupShown: string;
  /** 1234 stands unparted, 12 345 does not. */
  readonly groupsFive?: true;
  /** A date, in the letters of a number format. */
  readonly date: string;
}

const NO_BREAK = "\u00a0";
const NARROW = "\u202f";
const COMMA_AND_POINT = { decimal: ".", group: ",", groupShown: "," } as const;
const POINT_AND_COMMA = { decimal: ",", group: ".", groupShown: "." } as const;
const BLANK_AND_COMMA = { decimal: ",", group: " ", groupShown: NO_BREAK } as const;
const NARROW_AND_COMMA = { decimal: ",", group: " ", groupShown: NARROW } as const;
const APOSTROPHE_AND_POINT = { decimal: ".", group: "'", groupShown: "'" } as const;
const FROM_FIVE = { groupsFive: true } as const;
const DAY_FIRST = { order: "dmy", points: true } as const;
const STROKES = { ...DAY_FIRST, date: "dd/mm/yyyy" } as const;
const POINTS = { ...DAY_FIRST, date: "dd.mm.yyyy" } as const;
const POINTS_APART = { ...DAY_FIRST, date: "dd. mm. yyyy" } as const;
const YEAR_FIRST = { date: "yyyy-mm-dd" } as const;

/** Their labels fill the 255 characters that Excel has for a list of choices. */
export const WRITINGS: readonly ShownWriting[] = [
  { label: "English (UK)", tag: "en-GB", ...COMMA_AND_POINT, ...STROKES },
  {
    label: "English (US)",
    tag: "en-US",
    ...COMMA_AND_POINT,
    order: "mdy",
    points: false,
    date: "mm/dd/yyyy",
  },
  { label: "English (Australia)", tag: "en-AU", ...COMMA_AND_POINT, ...STROKES },
  { label: "English (Canada)", tag: "en-CA", ...COMMA_AND_POINT, points: false, ...YEAR_FIRST },
  { label: "Czech", tag: "cs-CZ", ...BLANK_AND_COMMA, ...POINTS_APART },
  { label: "Danish", tag: "da-DK", ...POINT_AND_COMMA, ...POINTS },
  { label: "Dutch", tag: "nl-NL", ...POINT_AND_COMMA, ...DAY_FIRST, date: "dd-mm-yyyy" },
  { label: "Finnish", tag: "fi-FI", ...BLANK_AND_COMMA, ...POINTS },
  { label: "French", tag: "fr-FR", ...NARROW_AND_COMMA, ...STROKES, o: "W" },
  { label: "French (Switzerland)", tag: "fr-CH", ...NARROW_AND_COMMA, ...POINTS, o: "W" },
  { label: "German", tag: "de-DE", ...POINT_AND_COMMA, ...POINTS, o: "E" },
  { label: "German (Austria)", tag: "de-AT", ...BLANK_AND_COMMA, ...POINTS, o: "E" },
  { label: "German (Switzerland)", tag: "de-CH", ...APOSTROPHE_AND_POINT, ...POINTS, o: "E" },
  {
    label: "Hungarian",
    tag: "hu-HU",
    ...BLANK_AND_COMMA,
    ...FROM_FIVE,
    points: false,
    date: "yyyy. mm. dd.",
  },
  { label: "Italian", tag: "it-IT", ...POINT_AND_COMMA, ...FROM_FIVE, ...STROKES, o: "W" },
  { label: "Norwegian", tag: "nb-NO", ...BLANK_AND_COMMA, ...POINTS },
  { label: "Polish", tag: "pl-PL", ...BLANK_AND_COMMA, ...FROM_FIVE, ...POINTS },
  { label: "Portuguese (Brazil)", tag: "pt-BR", ...POINT_AND_COMMA, ...STROKES, o: "W" },
  { label: "Portuguese", tag: "pt-PT", ...BLANK_AND_COMMA, ...FROM_FIVE, ...STROKES, o: "W" },
  { label: "Slovak", tag: "sk-SK", ...BLANK_AND_COMMA, ...POINTS_APART },
  { label: "Spanish", tag: "es-ES", ...POINT_AND_COMMA, ...FROM_FIVE, ...STROKES, o: "W" },
  { label: "Swedish", tag: "sv-SE", ...BLANK_AND_COMMA, points: true, ...YEAR_FIRST },
];

/** @param iso year, month and day, parted by dashes */
export function dateAsWritten(iso: string, writing: ShownWriting | undefined): string {
  const [year, month, day] = iso.split("-");
  return writing ? writing.date.replace("yyyy", year!).replace("mm", month!).replace("dd", day!) : iso;
}

/** Name and label of the field in every template that has one. */
export const WRITING_FIELD = "written_as";
export const WRITING_LABEL = "Numbers and dates typed as in";

/** @param chosen what stands in the field, or a locale's tag; undefined where nobody has chosen */
export function writingOf(chosen: unknown): ShownWriting | undefined {
  const wanted = typeof chosen === "string" ? chosen.trim().toLowerCase() : "";
  return WRITINGS.find(({ label, tag }) => label.toLowerCase() === wanted || tag.toLowerCase() === wanted);
}
