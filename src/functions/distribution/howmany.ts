import { isFault } from "../../engine/faults";
import { nameKey } from "../../engine/signal/nameKey";
import { declare } from "../core/declare";
import { choice, list, text } from "../core/parameters";
import { exampleFormula, TWO_OUTLETS } from "./exampleFormula";
import { NEEDED_KINDS, neededLines } from "./neededLines";
import { solved } from "./solved";
import { TABLE_FAULTS, tables } from "./tables";

export const howmany = declare({
  name: "HOWMANY",
  group: "Distribution",
  summary: "How many of each name a distribution takes: parts, lengths of cable or route, or pieces of work.",
  parameters: [
    choice({ name: "kind", help: "What the names are.", choices: NEEDED_KINDS }),
    list(
      text({
        name: "names",
        help: "Names of parts, cables, routes or pieces of work, as one list; see NEEDED for those of work.",
        wanted: "a list of names",
      }),
    ),
    ...tables,
  ],
  result: {
    shape: "column",
    unit: "pieces, or the job's unit of length",
    help: "For each name how many; 0 of what the distribution has none of, blank for a blank name.",
  },
  equation: "As NEEDED.",
  source: "Counting; end resistors on ports of splitters: common practice, no source",
  accuracy: "Exact. Lengths are as typed: slack, waste and reels come after (REELS).",
  tasks: ["How many connectors does this job take?", "How many metres run in the riser?"],
  examples: [
    {
      formula: exampleFormula("HOWMANY", TWO_OUTLETS, ['"work"', '{"connector";"dish";"tap"}']),
      result: [[8], [1], [0]],
      source:
        "by hand: two cables off the dish, each with two connectors and a grounding block with two more; one dish; no tap",
    },
  ],
  seeAlso: ["NEEDED", "REELS"],
  faultsWhen: TABLE_FAULTS,
  compute: (kind, names, ...given) => {
    const found = solved(given);
    if (isFault(found)) return found;
    const quantities = new Map(
      (found === null ? [] : neededLines(found)).flatMap((line) =>
        line.kind === kind ? [[nameKey(line.name), line.quantity] as const] : [],
      ),
    );
    return names.map((name) =>
      name === null || isFault(name) ? name : (quantities.get(nameKey(name)) ?? 0),
    );
  },
});
