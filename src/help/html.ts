/** HTML out of text: whatever is filled in is escaped, unless it is HTML of ours already. */

export class Html {
  constructor(readonly markup: string) {}
}

type Filling = string | number | Html | readonly (Html | undefined)[] | undefined;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);

function markupOf(filling: Filling): string {
  if (filling === undefined) return "";
  if (filling instanceof Html) return filling.markup;
  if (typeof filling === "string" || typeof filling === "number") return escaped(String(filling));
  return filling.map(markupOf).join("");
}

/** html`<p>${text}</p>`: text is escaped, HTML and lists of HTML are put in as they are. */
export const html = (words: TemplateStringsArray, ...fillings: Filling[]): Html =>
  new Html(words.reduce((markup, word, index) => markup + markupOf(fillings[index - 1]) + word));
