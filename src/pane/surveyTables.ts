/** The tables and lists in which a survey is shown. */
import { make } from "./dom";

/** A wide table scrolls by itself, and by the keyboard too. */
export const scrolled = (label: string, content: Node): HTMLElement =>
  make("div", { className: "survey-scrolled", tabIndex: 0, role: "region", ariaLabel: label }, content);

export const tableOf = (heads: readonly string[], rows: readonly (readonly string[])[]): HTMLTableElement =>
  make(
    "table",
    { className: "survey-table" },
    make("thead", {}, make("tr", {}, ...heads.map((text) => make("th", { scope: "col" }, text)))),
    make("tbody", {}, ...rows.map((cells) => make("tr", {}, ...cells.map((text) => make("td", {}, text))))),
  );

export const list = (heading: "h2" | "h3", title: string, lines: readonly string[]): HTMLElement[] =>
  lines.length === 0
    ? []
    : [
        make(heading, {}, title),
        make("ul", { className: "survey-list" }, ...lines.map((text) => make("li", {}, text))),
      ];
