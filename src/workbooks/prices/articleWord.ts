import { asWord } from "../typed/plainText";

/** An article number as it is compared: neither case, blanks nor the kind of dash part two of them. */
export const articleWord = (article: string): string =>
  asWord(article)
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/\s/g, "");
