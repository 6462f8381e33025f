/** What a price list asks once of the whole list, each with the control by which a person answers. */
import type { ListQuestion, PriceAnswers, QuestionId } from "../workbooks/prices/list";
import type { PricesFound } from "../workbooks/prices/pricesOf";
import type { PriceTables } from "../workbooks/prices/priceTable";
import { button, make } from "./dom";

type Answer = (answers: PriceAnswers) => void;

export function questionControl(
  question: ListQuestion,
  found: PricesFound,
  file: PriceTables,
  answer: Answer,
): HTMLElement {
  return make(
    "div",
    { className: "prices-question", role: "group", ariaLabel: "Asked of the list" },
    make("p", {}, question.sentence),
    ...CONTROLS[question.id](found, file, answer),
  );
}

const choice = (
  label: string,
  options: readonly (readonly [value: string, words: string])[],
  chosen: (value: string) => void,
): HTMLSelectElement => {
  const select = make(
    "select",
    { className: "mapping-choice", ariaLabel: label },
    make("option", { value: "" }, "Choose…"),
    ...options.map(([value, words]) => make("option", { value }, words)),
  );
  select.addEventListener("change", () => {
    if (select.value !== "") chosen(select.value);
  });
  return select;
};

const share = (label: string, chosen: (share: number) => void): (Node | string)[] => {
  const input = make("input", {
    type: "number",
    min: "0",
    max: "99",
    step: "0.1",
    ariaLabel: `${label}, in per cent`,
    className: "prices-short",
  });
  input.addEventListener("change", () => {
    const value = Number(input.value);
    if (input.value !== "" && value >= 0 && value < 100) chosen(value / 100);
  });
  return [input, " %"];
};

const CONTROLS: Readonly<
  Record<QuestionId, (found: PricesFound, file: PriceTables, answer: Answer) => (Node | string)[]>
> = {
  // The table of columns stands below.
  columns: () => [],
  sheet: (_, { sheets }, answer) => [
    choice(
      "Sheet",
      sheets.map((sheet) => [sheet, sheet]),
      (sheet) => answer({ sheet }),
    ),
  ],
  currency: (_, __, answer) => {
    const input = make("input", { ariaLabel: "Currency of the list", className: "prices-short" });
    input.addEventListener("change", () => {
      if (input.value.trim() !== "") answer({ currency: input.value.trim().toUpperCase() });
    });
    return [input];
  },
  decimal: (_, __, answer) => [
    choice(
      "Sign before decimals",
      [
        [",", "a comma: 1,5"],
        [".", "a point: 1.5"],
      ],
      (sign) => answer({ decimal: sign as "," | "." }),
    ),
  ],
  dates: (_, __, answer) => [
    choice(
      "Order of dates",
      [
        ["dmy", "the day first"],
        ["mdy", "the month first"],
      ],
      (order) => answer({ order: order as "dmy" | "mdy" }),
    ),
  ],
  basis: (_, __, answer) => [
    choice(
      "What prices are for",
      [
        ["unit", "one metre, foot or piece"],
        ["pack", "the whole pack or reel"],
      ],
      (basis) => answer({ basis: basis as "unit" | "pack" }),
    ),
  ],
  tax: (_, __, answer) => share("Tax in the prices", (tax) => answer({ tax })),
  discount: (_, __, answer) => share("Discount", (discount) => answer({ discount })),
  surcharge: (_, __, answer) => [button("They stand as they are", () => answer({ surcharge: "none" }))],
};
