import type { Named } from "../../../formula/build";
import { anyText, nameIn, number } from "../../asks";
import { block, entry, result, results } from "../../names";
import { keyed } from "../nameKeys";

export const bondKinds: Named = { name: "bond_kinds" };

export const bonds = block("bonds", {
  where: entry(
    "Conductor",
    { width: 40 },
    anyText("Which conductor, from where to where", { example: "mast to main earth bar" }),
  ),
  kind: entry(
    "Kind",
    { width: 38 },
    nameIn(bondKinds, "What the conductor is for and of which metal", { required: true }),
  ),
  size: entry(
    "Cross-section",
    { unit: "mm²", width: 16, format: "one" },
    number(0.1, 1000, "Cross-section of the conductor", { example: "16", required: true }),
  ),
  length: entry(
    "Length",
    { unit: "m or ft", width: 12, format: "one" },
    number(0, 2000, "Length of the conductor, in the unit that Site names", { example: "5" }),
  ),
  dish: entry(
    "Dish",
    { width: 10 },
    anyText("The dish that it bonds; blank where there is one dish only, or where it bonds none", {
      example: "D1",
    }),
  ),
  flag: results(
    "Flag",
    { width: 16, lines: 2 },
    { word: { head: "word" }, clause: { head: "clause to read", width: 84 } },
  ),
  dish_key: keyed("Dish"),
});

/** Whether each dish has a conductor. */
export const bonded = block("bonded", {
  dish: result("Dish", { width: 40 }),
  conductors: result("Conductors listed for it", { width: 38, format: "integer" }),
  verdict: result("Verdict", { width: 16 }),
});
