import { anyText, nameIn, number, portOf } from "../../asks";
import { block, entry, result, results } from "../../names";
import { cornersOf } from "../corners";
import { keyed } from "../nameKeys";
import { routes } from "./labour";
import { cables } from "./parts";

/** A row for each device between head units and outlets. */
export const branches = block(
  "branches",
  {
    id: entry("Device", { width: 12 }, anyText("A short name for this device", { example: "S1" })),
    from: entry(
      "Fed from",
      { width: 12 },
      anyText("The head unit or the device that feeds it", { example: "H1", required: true }),
    ),
    device: entry(
      "Part",
      { width: 20 },
      anyText("A device, or an inserter, of the Parts sheet", { example: "4-way splitter", required: true }),
    ),
    cable: entry(
      "Cable",
      { width: 18 },
      nameIn(cables.name, "A cable of the Parts sheet; blank is the usual one of Site"),
    ),
    length: entry(
      "Length",
      { unit: "m or ft", width: 10, format: "one" },
      number(
        0,
        2000,
        "Length of the cable from what feeds it, in the unit that Site names; blank where it sits right there",
        { example: "6" },
      ),
    ),
    port: entry(
      "Port",
      { width: 9 },
      portOf("Port of what feeds it: a number, or through; blank is the next free one"),
    ),
    route: entry(
      "Route",
      { width: 12 },
      nameIn(routes.name, "How the cable runs, a route of the Parts sheet; blank is the usual one of Site"),
    ),
    verdict: result("Verdict", { width: 12 }),
    level: results(
      "",
      { unit: "dBµV", width: 11, format: "one" },
      {
        head: { head: "Head unit", unit: "", width: 10, format: "text" },
        output: { head: "Output", unit: "", width: 8, format: "integer" },
        port: { head: "Port it is on", unit: "", width: 9, format: "text" },
        used: { head: "Ports used", unit: "", width: 8, format: "integer" },
        ...cornersOf("Level at a port", "dBµV"),
        greatest: { head: "Greatest output", width: 10 },
        limit: { head: "Limit of its output", width: 10 },
      },
    ),
    check: results(
      "",
      { width: 10 },
      {
        volts: { head: "Volts at an amplifier", unit: "V", format: "two" },
        amps: { head: "Greatest current", unit: "A", format: "two" },
        row: { head: "Row verdict" },
        power: { head: "Volts verdict" },
        current: { head: "Current verdict" },
        output: { head: "Output verdict" },
        port: { head: "Open port verdict" },
        trouble: { head: "What is wrong", width: 60 },
      },
    ),
    ways: result("Ports", { width: 9, format: "integer" }),
    cable_used: result("Cable used", { width: 14 }),
    variance: result("Cost variance of its cable", { unit: "money²", width: 10, format: "two" }),
    from_key: keyed("Fed from"),
    device_key: keyed("Part"),
    cable_key: keyed("Cable"),
  },
  { rows: ["id", "route"], corners: ["level_low_cold", "level_high_hot"] },
);
