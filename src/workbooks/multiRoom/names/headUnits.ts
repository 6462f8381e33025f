import { anyText, nameIn, number } from "../../asks";
import { block, entry, fields, result, results, told } from "../../names";
import { cornersOf } from "../corners";
import { keyed } from "../nameKeys";
import { routes } from "./labour";
import { cables, supplies, units } from "./parts";

const LEVELS = cornersOf("Level at its cable's end", "dBµV");

/** What the crew measures at the end of a head unit's cable. */
const measured = (what: string, unit: string, most: number, example: string) =>
  entry(
    `Measured ${what}`,
    { unit, width: 10, format: unit === "A" ? "two" : "one" },
    number(0, most, `Measured ${what}, at the end of its cable; blank until measured`, { example }),
  );

export const heads = block(
  "heads",
  {
    id: entry("Head unit", { width: 12 }, anyText("A short name for this head unit", { example: "H1" })),
    type: entry(
      "Kind",
      { width: 22 },
      nameIn(units.name, "A head unit of the Parts sheet", { required: true }),
    ),
    dish: entry(
      "On dish",
      { width: 10 },
      anyText("The dish whose feed it is; blank is the only dish, or none for a switch that has feeders", {
        example: "D1",
      }),
    ),
    supply: entry(
      "Supply",
      { width: 17 },
      nameIn(
        supplies.name,
        "A supply of the Parts sheet, at its first output; blank where receivers, or an inserter on Distribution, feed it",
      ),
    ),
    cable: entry(
      "Cable",
      { width: 16 },
      nameIn(
        cables.name,
        "The cable from its first output to the supply or first device; blank is the usual one of Site",
      ),
    ),
    length: entry(
      "Length",
      { unit: "m or ft", width: 10, format: "one" },
      number(0, 2000, "Length of that cable, in the unit that Site names; blank for none", { example: "22" }),
    ),
    route: entry(
      "Route",
      { width: 12 },
      nameIn(routes.name, "How that cable runs, a route of the Parts sheet; blank is the usual one of Site"),
    ),
    verdict: result("Verdict", { width: 12 }),
    fed: results(
      "",
      { unit: "V", width: 10, format: "two" },
      {
        off: { head: "Volts, all receivers off" },
        alone: { head: "Volts, one receiver on alone" },
        outlet: { head: "Least at outlet", unit: "", format: "text" },
        on: { head: "Volts, all receivers on" },
        least: { head: "Least volts in use" },
        amps: { head: "Current then", unit: "A" },
        supplied: { head: "Greatest current of its supply", unit: "A" },
        tuners: { head: "Tuners on it", unit: "", width: 9, format: "integer" },
        bands: { head: "User bands", unit: "", width: 9, format: "integer" },
        ...LEVELS,
        isolation: { head: "Least isolation between outlets", unit: "dB", width: 11, format: "one" },
        pair: { head: "Those outlets", unit: "", width: 14, format: "text" },
      },
    ),
    least: result("Minimum volts", { unit: "V", width: 9, format: "one" }),
    spare: result("Spare bands", { width: 9, format: "integer" }),
    check: results(
      "",
      { width: 10 },
      {
        row: { head: "Row verdict" },
        power: { head: "Volts verdict" },
        current: { head: "Current verdict" },
        input: { head: "Input verdict" },
        feed: { head: "Feed verdict" },
        supply: { head: "Supply verdict" },
        trouble: { head: "What is wrong", width: 60 },
      },
    ),
    cable_used: result("Cable used", { width: 14 }),
    variance: result("Cost variance of its cable", { unit: "money²", width: 10, format: "two" }),
    built_volts: entry(
      "Measured at the head unit",
      { unit: "V", width: 10, format: "one" },
      number(
        0,
        100,
        "Volts measured at the head unit under load, fed as this row says; blank until measured",
        { example: "11.2" },
      ),
    ),
    built_low: measured("level at the lowest frequency", "dBµV", 140, "72.5"),
    built_high: measured("level at the highest frequency", "dBµV", 140, "69"),
    built_amps: measured("current", "A", 20, "0.24"),
    type_key: keyed("Type"),
    supply_key: keyed("Supply"),
    cable_key: keyed("Cable"),
  },
  { rows: ["id", "route"] },
);

export const headsNeeded = fields("heads", {
  wanted: told("Tuners of all outlets", { format: "integer" }),
  fewest: told("Fewest head units for them", {
    format: "integer",
    note: "With the head unit of most user bands on Parts, if every band could be used.",
  }),
});
