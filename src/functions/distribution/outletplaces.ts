import { THROUGH } from "../../engine/distribution/ports";
import { declare } from "../core/declare";
import { answersFor } from "./answers";
import { BY_HAND, TWO_OUTLETS, exampleFormula } from "./exampleFormula";
import { TABLE_FAULTS, tables } from "./tables";

const COLUMNS = [
  "head unit",
  "its output",
  'port that it is fed from, a number or "through"',
  'user bands, such as "4, 5"; "none" for a spare outlet',
  "their centres in MHz; blank without a band plan",
  "tuners",
];

export const outletplaces = declare({
  name: "OUTLETPLACES",
  group: "Distribution",
  summary: "Where each outlet hangs: its head unit, output and port, and the user bands that it gets.",
  parameters: tables,
  result: {
    shape: "table",
    help: "A row for each row of outlets; blank for a blank or bad row.",
    columns: COLUMNS,
  },
  equation:
    "Ports: the one given, else the next free one, devices before outlets; at a tap a device takes the through port. User bands: those kept first, then receivers that can use the fewest, then row order, the lowest free number.",
  source:
    "One tuner takes one user band (EN 50494). That a receiver of EN 50607 may use bands of EN 50494, not the reverse: common practice, no source",
  accuracy: "Exact.",
  tasks: [
    "Which user band and frequency do I set in each receiver?",
    "Which port of the splitter feeds this room?",
  ],
  examples: [
    {
      formula: exampleFormula("OUTLETPLACES", TWO_OUTLETS),
      result: [
        ["H1", 1, 1, "1", "", 1],
        ["H1", 1, 2, "2, 3", "", 2],
      ],
      source: BY_HAND,
    },
  ],
  seeAlso: ["OUTLETCHECKS", "DEVICELEVELS", "USERBANDS"],
  faultsWhen: TABLE_FAULTS,
  compute: (...given) =>
    answersFor("outlets", COLUMNS.length, given, ({ found: { tree, bands }, job }, row) => {
      const point = tree.pointOfOutlet[row]!;
      if (point < 0) return [];
      const output = tree.output[point]!;
      const { receiver, quantity } = job.outlets[row]!;
      const own = bands.bands[row]!;
      const centres = own.map(({ centre }) => centre);
      return [
        job.headUnits[tree.row[output]!]!.name,
        tree.port[output]!,
        tree.port[point] === THROUGH ? "through" : tree.port[point]!,
        own.length > 0 ? own.map(({ number }) => number).join(", ") : "none",
        centres.includes(null) ? null : centres.join(", "),
        receiver ? receiver.tuners * quantity : 0,
      ];
    }),
});
