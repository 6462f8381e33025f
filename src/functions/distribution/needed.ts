import { isFault } from "../../engine/faults";
import { declare } from "../core/declare";
import { exampleFormula, TWO_OUTLETS } from "./exampleFormula";
import { neededLines } from "./neededLines";
import { solved } from "./solved";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = ["kind: part, cable, route, work", "name", "quantity: pieces, or length in the job's unit"];

export const needed = declare({
  name: "NEEDED",
  group: "Distribution",
  summary: "What a distribution takes: parts by name, cable and routes by length, and pieces of work.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A block of its own size, a line for each part, cable, route and kind of work; every kind of work has a line, also with 0.",
    columns: COLUMNS,
  },
  equation:
    "Two connectors for each piece of cable; a grounding block with two more for each cable off a dish; an end resistor for each open port and each onward port of a last switch; a lead for each receiver; a mains socket for each supply.",
  source: "Counting; end resistors on ports of splitters: common practice, no source",
  accuracy: "Exact. Lengths are as typed: slack, waste and reels come after (REELS).",
  tasks: ["What do I buy for this job?", "How many connectors and grounding blocks are there to fit?"],
  examples: [
    {
      formula: exampleFormula("NEEDED", TWO_OUTLETS),
      result: [
        ["part", "unit", 1],
        ["part", "2-way", 1],
        ["cable", "drop", 30],
        ["route", "clip", 30],
        ["work", "connector", 8],
        ["work", "grounding block", 2],
        ["work", "end resistor", 0],
        ["work", "receiver lead", 2],
        ["work", "mains socket", 0],
        ["work", "dish", 1],
        ["work", "further slot on a dish", 0],
        ["work", "feed", 0],
        ["work", "head unit on a dish", 1],
        ["work", "switch", 0],
        ["work", "splitter", 1],
        ["work", "tap", 0],
        ["work", "amplifier", 0],
        ["work", "equaliser", 0],
        ["work", "attenuator", 0],
        ["work", "filter", 0],
        ["work", "supply", 0],
        ["work", "wall plate", 0],
        ["work", "dish bonding conductor", 1],
        ["work", "outlet to measure", 2],
        ["work", "floor", 1],
        ["work", "outlet", 2],
        ["work", "device", 1],
        ["work", "head unit", 1],
      ],
      source:
        "by hand: two cables off the dish, each with two connectors and a grounding block with two more",
    },
  ],
  seeAlso: ["HOWMANY", "REELS", "FEEDERCHECKS", "OUTLETPLACES"],
  faultsWhen: TABLE_FAULTS,
  caution:
    "Dishes and their cables are bonded, and sockets fitted, as the local code has it, by those who are licensed for it.",
  compute: (...given) => {
    const found = solved(given);
    if (isFault(found)) return found;
    return found === null
      ? [[null, null, null]]
      : neededLines(found).map(({ kind, name, quantity }) => [kind, name, quantity]);
  },
});
