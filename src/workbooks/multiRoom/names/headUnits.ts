import { anyText, nameIn, number } from "../../asks";
import { block, entry, fields, result, results, told } from "../../names";
import { CORNERS } from "../corners";
import { keyed } from "../nameKeys";
import { cables, supplies, units } from "./parts";

export const heads = block(
  "heads",
  {
    id: entry("Head unit", { width: 12 }, anyText("A short name for this head unit", { example: "H1" })),
    type: entry(
      "Kind",
      { width: 22 },
      nameIn(units.name, "A head unit of the Parts sheet", { required: true }),
    ),
    supply: entry("Supply", { width: 17 }, nameIn(supplies.name, "A supply of the Parts sheet")),
    cable: entry(
      "Cable",
      { width: 16 },
      nameIn(cables.name, "The cable from the supply and first branch up to the head unit", {
        required: true,
      }),
    ),
    length: entry(
      "Length",
      { unit: "m or ft", width: 10, format: "one" },
      number(0.1, 2000, "Length of that cable, in the unit that Site names", {
        example: "22",
        required: true,
      }),
    ),
    at: entry(
      "Supply connected at",
      { width: 12 },
      anyText(
        "Blank when the supply is at the lower end of that cable; else the branch whose port it is connected to, or the outlet whose receiver feeds it: the one with the most cable, for it may be on alone",
        { example: "A-07" },
      ),
    ),
    tuners: result("Tuners on it", { width: 9, format: "integer" }),
    bands: result("User bands", { width: 9, format: "integer" }),
    spare: result("Spare bands", { width: 9, format: "integer" }),
    capacity: result("Tuner verdict", { width: 9 }),
    volts: result("Volts at the head unit", { unit: "V", width: 9, format: "two" }),
    least: result("Minimum volts", { unit: "V", width: 9, format: "one" }),
    power: result("Volts verdict", { width: 9 }),
    stopped: result("Power blocked at", { width: 9 }),
    longest: result("Longest cable allowed, supply at lower end", {
      unit: "m or ft",
      width: 10,
      format: "one",
    }),
    shares: entry(
      "Shares the supply of",
      { width: 12 },
      anyText("Blank when it has a supply of its own; else the head unit whose supply feeds this one too", {
        example: "H1",
      }),
    ),
    common: entry(
      "Loop resistance of the shared lead",
      { unit: "Ω", width: 10, format: "two" },
      number(
        0,
        1000,
        "On the row that has the supply: loop resistance of the lead shared by these head units; blank = 0",
        { example: "0.8" },
      ),
    ),
    source: result("Supply in use", { width: 16 }),
    bought: result("Supplies to buy", { unit: "pieces", width: 9, format: "integer" }),
    feed: result("Fed by the supply of", { width: 9 }),
    shared: result("Shared loop resistance", { unit: "Ω", width: 11, format: "two" }),
    greatest: result("Current at minimum volts", { unit: "A", width: 9, format: "two" }),
    offered: result("Volts after other loads", { unit: "V", width: 9, format: "two" }),
    shared_end: result("Volts at the shared lead's end", { unit: "V", width: 9, format: "two" }),
    supplied: result("Supply volts", { unit: "V", width: 9, format: "one" }),
    draw: result("Load", { unit: "A or W", width: 9, format: "two" }),
    kind: result("Unit of the load", { width: 9 }),
    via: result("Supply connected at branch", { width: 11 }),
    lead_cable: result("Its own cable", { width: 14 }),
    run_cable: result("Cable of that outlet", { width: 14 }),
    lead_length: result("Its own length", { unit: "m or ft", width: 9, format: "one" }),
    run_length: result("Run of that outlet", { unit: "m or ft", width: 9, format: "one" }),
    ohms: results(
      "Loop resistance, hot",
      { unit: "Ω", width: 11, format: "two" },
      { lead: { head: "its own cable" }, run: { head: "that run" } },
    ),
    along: result("Loop resistance of the branches between, hot", { unit: "Ω", width: 11, format: "two" }),
    path: result("Loop resistance of the whole path, hot", { unit: "Ω", width: 11, format: "two" }),
    stops: result("Devices in the path that block power", { width: 12, format: "integer" }),
    place: result("Their rows on Branches", { unit: "sum", width: 9, format: "integer" }),
    current: result("Current", { unit: "A", width: 9, format: "two" }),
    together: result("Current of all that its supply feeds", { unit: "A", width: 9, format: "two" }),
    amps: result("Maximum supply current", { unit: "A", width: 9, format: "two" }),
    legs: result("Volts on legs without a load", { unit: "V", width: 9, format: "one" }),
    lead: results("Loss of its cable", { unit: "dB", width: 9, format: "one" }, CORNERS),
    level: results("Level at the cable's end", { unit: "dBµV", width: 9, format: "one" }, CORNERS),
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
    type_key: keyed("Type"),
    supply_key: keyed("Supply"),
    cable_key: keyed("Cable"),
    feed_key: keyed("Feed"),
  },
  { cables: ["lead_cable", "run_cable"], lengths: ["lead_length", "run_length"] },
);

export const headsNeeded = fields("heads", {
  wanted: told("Tuners of all outlets", { format: "integer" }),
  fewest: told("Fewest head units for them", {
    format: "integer",
    note: "With the head unit of most user bands on Parts, if every band could be used.",
  }),
});
