/** What percentages invite. They are read in percent. */
import type { Family, Misreading } from "../exercise";

/** From factors that a trainee works with to what the percentage would have to be. */
type Turned = (factor: number) => number;
const readAs =
  (turned: Turned) =>
  (name: string, factor: number, seldom = false): Misreading => ({ name, as: turned(factor), seldom });

/** What is added: the whole is multiplied by 1 + x. */
export const percentAdded: Family = (percent, what) => {
  const x = percent / 100;
  const as = readAs((times) => 100 * (times - 1));
  return [
    as(`${what} left out`, 1),
    as(`${what} not divided by 100`, 1 + percent),
    as(`${what} subtracted instead of added`, 1 - x),
    as(`${what} as a division, /(1 − ${what})`, 1 / (1 - x)),
    as(`only the ${what} given`, x),
    as(`divided by 1 + ${what} instead of multiplied`, 1 / (1 + x), true),
    as(`${what} reckoned twice`, (1 + x) ** 2, true),
    as(`${what} ten times too small`, 1 + x / 10, true),
  ];
};

/** What is taken off: the whole is multiplied by 1 − x. */
export const percentOff: Family = (percent, what) => {
  const x = percent / 100;
  const as = readAs((times) => 100 * (1 - times));
  return [
    as(`${what} left out`, 1),
    as(`${what} added instead of subtracted`, 1 + x, true),
    as(`${what} as a division, /(1 + ${what})`, 1 / (1 + x), true),
    as(`${what} not divided by 100`, 1 - percent, true),
  ];
};

/** A margin, as a share of the price: the cost is divided by 1 − x. */
export const marginOfPrice: Family = (percent) => {
  const x = percent / 100;
  const as = readAs((times) => 100 * (1 - 1 / times));
  return [
    as("margin taken as markup", 1 + x),
    as("margin left out", 1),
    as("margin taken off the cost", 1 - x),
    as("margin not divided by 100", 1 / (1 - percent)),
    as("only the margin given", x),
    as("only the margin given", x / (1 - x)),
    as("divided by 1 + margin", 1 / (1 + x), true),
    as("divided by the margin", 1 / x, true),
    as("margin reckoned twice", 1 / (1 - x) ** 2, true),
  ];
};
