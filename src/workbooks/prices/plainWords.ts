/** Words of heads and titles brought to one form: small letters, no accents, one blank between them. */
export const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/ß/g, "ss")
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replace(/[_\s]+/g, " ")
    .trim();
