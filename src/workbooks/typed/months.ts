/**
 * The months in the languages of the writings that a document may choose (Unicode CLDR 44), and their short forms.
 * Three letters and more of a name are its short form where they begin no other month's name.
 */
const MONTHS: readonly (readonly string[])[] = [
  ["january", "januar", "janvier", "gennaio", "enero", "janeiro", "januari", "jänner"],
  ["february", "februar", "février", "fevrier", "febbraio", "febrero", "fevereiro", "februari", "feber"],
  ["march", "märz", "maerz", "mrz", "mars", "marzo", "março", "marco", "maart", "mrt", "marts"],
  ["april", "avril", "aprile", "abril"],
  ["may", "mai", "maggio", "mayo", "maio", "mei", "maj"],
  ["june", "juni", "juin", "giugno", "junio", "junho"],
  ["july", "juli", "juillet", "luglio", "julio", "julho"],
  ["august", "août", "aout", "agosto", "augustus", "augusti"],
  ["september", "septembre", "settembre", "septiembre", "setembro"],
  ["october", "oktober", "octobre", "ottobre", "octubre", "outubro"],
  ["november", "novembre", "noviembre", "novembro"],
  ["december", "dezember", "décembre", "decembre", "dicembre", "diciembre", "dezembro", "desember"],
];
const SHORTEST = 3;

/** @returns 1 to 12; undefined for what is no month, or could be two */
export function monthOf(word: string): number | undefined {
  const plain = word.toLowerCase().replace(/\.$/, "");
  if (plain.length < SHORTEST) return undefined;
  const whole = MONTHS.findIndex((names) => names.includes(plain));
  if (whole >= 0) return whole + 1;
  const begun = MONTHS.flatMap((names, index) =>
    names.some((name) => name.startsWith(plain)) ? [index + 1] : [],
  );
  return begun.length === 1 ? begun[0] : undefined;
}
