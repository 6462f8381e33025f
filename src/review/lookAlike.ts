/** Letters that look like others, and characters that nobody sees (Unicode's confusables, the common ones, from memory). */

const ALIKE: Readonly<Record<string, string>> = Object.fromEntries(
  [
    ["аеорсухіјѕԁӏһԛԝгкмтвн", "aeopcyxijsdlhqwrkmtbh"],
    ["АВЕКМНОРСТУХІЈЅ", "ABEKMHOPCTYXIJS"],
    ["αορνικτυχε", "aopviktuxe"],
    ["ΑΒΕΖΗΙΚΜΝΟΡΤΥΧ", "ABEZHIKMNOPTYX"],
  ].flatMap(([strange, plain]) => [...strange!].map((letter, index) => [letter, plain![index]!] as const)),
);

/** Zero-width blanks and joiners, marks of direction, soft hyphens. */
const UNSEEN = /[\u00AD\u200B-\u200F\u202A-\u202E\u2060-\u2064\uFEFF]/g;
/** Blanks of other kinds than the space bar's. */
const OTHER_BLANKS = /[\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000\t\r\n]/g;

/** What a reader takes the text for, in Latin letters and plain blanks. */
export const seenAs = (text: string): string =>
  [...text.replace(UNSEEN, "").replace(OTHER_BLANKS, " ")].map((letter) => ALIKE[letter] ?? letter).join("");

/** @returns what of the text is not what it looks like, in a few words; undefined for nothing */
export function deceives(text: string): string | undefined {
  UNSEEN.lastIndex = 0;
  if (UNSEEN.test(text)) {
    UNSEEN.lastIndex = 0;
    return "an unseen character (a zero-width space or the like)";
  }
  // A word of one script is somebody's language; one of two is a slip.
  for (const word of text.match(/[\p{L}\p{N}_]+/gu) ?? []) {
    const strange = [...word].find((letter) => letter in ALIKE);
    if (strange !== undefined && /[A-Za-z]/.test(word))
      return `a ${/[Ͱ-Ͽ]/.test(strange) ? "Greek" : "Cyrillic"} letter ${strange} that looks like ${ALIKE[strange]!}`;
  }
  return undefined;
}

export const hasOtherBlanks = (text: string): boolean => {
  OTHER_BLANKS.lastIndex = 0;
  return OTHER_BLANKS.test(text);
};
