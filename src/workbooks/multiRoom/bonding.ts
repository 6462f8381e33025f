import { BOND_RULES } from "../../engine/bonding/constants";
import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { bondKinds, bonds } from "./names/bonding";
import { site } from "./names/site";

export const bondingSheet: SheetDefinition = {
  name: "Bonding",
  kind: "input",
  intro:
    "Earthing and bonding conductors, each with the clause to read. This flags; the local code and a licensed electrician decide.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(bonds, {
      heading: "Earthing and bonding conductors",
      prepared: 8,
      formulas: {
        flag: f`RIG.BONDCHECK(${bonds.kind},${bonds.size},${bonds.length},${site.unit})`,
      },
    }),
    {
      kind: "words",
      heading: "Kinds of conductor",
      name: bondKinds.name,
      words: BOND_RULES.map(({ kind }) => kind),
    },
    {
      kind: "text",
      heading: "Caution",
      lines: [
        "Lightning, mains and bonding can kill. What must be bonded, with what and where, is decided by the local code and by licensed practice.",
        "Earthing a mast is no lightning protection. Keep masts, ladders and cables well clear of overhead lines. A word here is no certificate.",
      ],
    },
  ],
};
