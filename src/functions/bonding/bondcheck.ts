import { bondCheck } from "../../engine/bonding/bondCheck";
import { BOND_RULES } from "../../engine/bonding/constants";
import { isFault } from "../../engine/faults";
import { LENGTH_UNITS, toMetres } from "../../engine/signal/lengthUnits";
import { declare } from "../core/declare";
import { choice, number, optional } from "../core/parameters";

const kind = choice({
  name: "kind",
  help: "What the conductor is for and of which metal; the choices that end in NEC and the communications bonds are of the US code.",
  choices: BOND_RULES.map((rule) => rule.kind),
});

const size = number({
  name: "size_mm2",
  help: "Cross-section of the conductor; 10 AWG is 5.26 mm², 14 AWG 2.08 mm².",
  unit: "mm²",
  min: 0,
  aboveMin: true,
  max: 1000,
  advice: "Give the cross-section, not the gauge number",
});

const length = number({
  name: "length",
  help: "Length of the conductor; needed where the clause limits it.",
  min: 0,
  max: 10_000,
});

export const bondcheck = declare({
  name: "BONDCHECK",
  group: "Bonding and mounting",
  summary: "Flags an earthing or bonding conductor to look at, with the clause to read.",
  parameters: [
    kind,
    size,
    optional(length),
    optional(choice({ name: "unit", help: "Unit of the length.", choices: LENGTH_UNITS }), "m"),
  ],
  result: {
    shape: "row",
    help: 'Two cells: "look closer" or "no flag", and the clause to read. "No flag" is no certificate.',
    columns: ["word", "clause to read"],
  },
  equation: "The size against the least of the clause, the length against its greatest where it has one.",
  source:
    "IEC/EN 60728-11 from works that quote it; NEC 810.21(H) from summaries (aluminium from memory); NEC 800.100(A), text seen",
  accuracy:
    "Size and length only. Route, joints, electrodes, clearances and lightning protection are not looked at, and local rules differ.",
  tasks: [
    "Is the earth wire of the mast thick enough?",
    "Is the bond of the cable screen too long?",
    "Which clause do I read before I bond this?",
  ],
  examples: [
    {
      formula: 'RIG.BONDCHECK("mast earthing, copper",16)',
      result: [
        [
          "no flag",
          "IEC/EN 60728-11 (from works that quote it; national annexes differ): mast earthing conductor of copper 16 mm² or more",
        ],
      ],
      source: "IEC/EN 60728-11, from works that quote it",
    },
  ],
  seeAlso: ["WINDLOAD", "MASTSTRESS"],
  faultsWhen: ["The clause limits the length and none is given."],
  caution:
    "Defer to the local code and a licensed electrician. This flags, it does not certify. Earthing a mast is no lightning protection. Keep away from overhead lines; do not bond to gas pipes.",
  compute: (kind, size, length, unit) => {
    const rule = BOND_RULES.find((one) => one.kind === kind)!;
    const found = bondCheck(rule, size, length === undefined ? undefined : toMetres(length, unit));
    return isFault(found) ? found : [found.word, found.clause];
  },
});
