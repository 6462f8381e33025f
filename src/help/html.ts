/** HTML out of text: whatever is filled in is escaped, unless it is HTML of ours already. */

export class Html {
  constructor(readonly markup: string) {}
}

type Insert = string | number | Html | readonly (Html | undefined)[] | undefined;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);

function markupOf(insert: Insert): string {
  if (insert === undefined) return "";
  if (insert instanceof Html) return insert.markup;
  if (typeof insert === "string" || typeof insert === "number") return escaped(String(insert));
  return insert.map(markupOf).join("");
}

/** html`<p>${text}</p>`: text is escaped, HTML and lists of HTML are put in as they are. */
export const html = (words: TemplateStringsArray, ...inserts: Insert[]): Html =>
  new Html(words.reduce((markup, word, index) => markup + markupOf(inserts[index - 1]) + word));
