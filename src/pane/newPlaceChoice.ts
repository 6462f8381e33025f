/** Where a new line of a price list goes: to a part that is there, into a list of Parts as a new one, or nowhere. */
import type { NewPlace } from "../workbooks/prices/planPrices";
import { PART_LISTS } from "../workbooks/prices/priceBook";
import { make } from "./dom";

const LIST_WORDS: Readonly<Record<string, string>> = {
  cables: "Cables",
  passives: "Devices of the distribution",
  units: "Head units",
  supplies: "Power supplies and inserters",
  plates: "Wall plates",
  feeds: "Feeds",
  resistors: "End resistors",
  fittings: "Fittings and sundries",
};

export interface NewLine {
  readonly label: string;
  /** Of all parts. */
  readonly names: readonly string[];
  readonly nearest: readonly string[];
  /** The list in which it most likely belongs. */
  readonly list: string;
  /** A new part is called so at first. */
  readonly name: string;
}

/** @param chosen undefined for "left out" */
export function newPlaceChoice(
  { label, names, nearest, list, name }: NewLine,
  chosen: (place: NewPlace | undefined) => void,
): HTMLElement {
  const select = make(
    "select",
    { className: "mapping-choice", ariaLabel: `Part of ${label}` },
    make("option", { value: "" }, "left out"),
    ...nearest.map((part) => make("option", { value: `part:${part}` }, `offer of ${part}`)),
    make("option", { value: "another" }, "offer of another part…"),
    make("option", { value: "new" }, "a new part…"),
  );
  const lists = make(
    "select",
    { className: "mapping-choice", ariaLabel: `List of ${label}`, value: list, hidden: true },
    ...PART_LISTS.map((value) => make("option", { value, selected: value === list }, LIST_WORDS[value]!)),
  );
  const called = make("input", { ariaLabel: `Name of the new part of ${label}`, value: name, hidden: true });
  // Filled when it is wanted: a long list of lines has as many of these.
  const others = make("select", {
    className: "mapping-choice",
    ariaLabel: `Other part of ${label}`,
    hidden: true,
  });
  const tell = (): void => {
    const isNew = select.value === "new";
    const isOther = select.value === "another";
    lists.hidden = !isNew;
    called.hidden = !isNew;
    others.hidden = !isOther;
    if (isOther && others.options.length === 0)
      others.append(
        make("option", { value: "" }, "Choose…"),
        ...names.map((value) => make("option", { value }, value)),
      );
    if (select.value.startsWith("part:")) chosen({ part: select.value.slice(5) });
    else if (isOther && others.value !== "") chosen({ part: others.value });
    else if (isNew && called.value.trim() !== "") chosen({ list: lists.value, name: called.value.trim() });
    else chosen(undefined);
  };
  for (const control of [select, lists, called, others]) control.addEventListener("change", tell);
  return make("div", { className: "prices-place" }, select, lists, called, others);
}
