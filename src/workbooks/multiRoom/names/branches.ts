import { anyText, nameIn, number } from "../../asks";
import { block, entry, result, results } from "../../names";
import { CORNERS } from "../corners";
import { keyed } from "../nameKeys";
import { cables, passives } from "./parts";

export const branches = block(
  "branches",
  {
    id: entry("Branch", { width: 12 }, anyText("A short name for this splitter or tap", { example: "B1" })),
    from: entry(
      "Fed from",
      { width: 12 },
      anyText("The head unit or the branch that feeds it", { example: "H1", required: true }),
    ),
    device: entry(
      "Device",
      { width: 20 },
      nameIn(passives.name, "A splitter or tap of the Parts sheet", { required: true }),
    ),
    cable: entry(
      "Trunk cable",
      { width: 18 },
      nameIn(cables.name, "A cable of the Parts sheet", { required: true }),
    ),
    length: entry(
      "Trunk length",
      { unit: "m or ft", width: 10, format: "one" },
      number(0.1, 2000, "Length of the trunk to what feeds it, in the unit that Site names", {
        example: "6",
        required: true,
      }),
    ),
    head: result("Head unit", { width: 10 }),
    level: results("Level at a port", { unit: "dBµV", width: 9, format: "one" }, CORNERS),
    power: result("Power-passing ports", { width: 13 }),
    fed: result("Feeds", { unit: "ports used", width: 9, format: "integer" }),
    ways: result("Ports", { width: 9, format: "integer" }),
    trunk: results("Trunk loss", { unit: "dB", width: 9, format: "one" }, CORNERS),
    own: results("Loss of trunk and device", { unit: "dB", width: 9, format: "one" }, CORNERS),
    ohms: result("Trunk loop resistance, hot", { unit: "Ω", width: 11, format: "two" }),
    stops: result("Blocks power", { unit: "devices", width: 9, format: "integer" }),
    ones: result("Passes power at one port", { unit: "devices", width: 9, format: "integer" }),
    place: result("Row, if power is blocked", { unit: "row", width: 9, format: "integer" }),
    stretch: result("Extra trunk loss at longest length", { unit: "dB", width: 9, format: "one" }),
    forks: result("Passes power at one of several ports", { unit: "devices", width: 9, format: "integer" }),
    // What adds up along the tree besides the loss: for the supply, ohms and the devices that pass it to no port
    // or to one; and what lengths that turn out longer lose more.
    loss: results(
      "From the head unit",
      { unit: "dB", width: 11, format: "one" },
      {
        ...CORNERS,
        ohms: { head: "loop resistance, hot", unit: "Ω" },
        stops: { head: "devices that block power", unit: "devices", width: 20 },
        ones: { head: "devices that pass power at one port", unit: "devices", width: 20 },
        place: { head: "rows of those that block it", unit: "sum", width: 16 },
        stretch: { head: "extra trunk loss at longest lengths", unit: "dB", width: 20 },
        forks: { head: "devices that pass power at one of several ports", unit: "devices", width: 22 },
      },
    ),
    variance: result("Cost variance of its cable", { unit: "money²", width: 10, format: "two" }),
    from_key: keyed("Fed from"),
    device_key: keyed("Device"),
    cable_key: keyed("Cable"),
  },
  { sum: ["own", "forks"], loss_corners: ["loss_low_cold", "loss_high_hot"] },
);
