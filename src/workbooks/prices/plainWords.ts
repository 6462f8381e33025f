/** Words of heads and titles brought to one form: small letters, no accents, one blank between them. */
export const plainWords = (text: string): string =>
  ASCII.test(text) ? text.toLowerCase().replace(BLANKS, " ").trim() : withoutAccents(text);

const ASCII = /^[\x20-\x7e]*$/;
const BLANKS = /[_ ]+/g;

const withoutAccents = (text: string): string =>
  text
    .toLowerCase()
    .replace(/ß/g, "ss")
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replace(/[_\s]+/g, " ")
    .trim();
