import { BOND_RULES } from "../../engine/bonding/constants";
import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { countOf, keysOf } from "./nameKeys";
import { bonded, bondKinds, bonds } from "./names/bonding";
import { dishes } from "./names/dishes";
import { aims } from "./names/sightline";
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
        dish_key: keysOf(bonds.dish),
      },
    }),
    blockPart(bonded, {
      heading: "Each dish and its conductors",
      prepared: 4,
      mirrors: dishes,
      formulas: {
        dish: f`IF(${aims.dish}="","",${aims.dish})`,
        // A conductor without a dish belongs to the only one.
        conductors: f`IF(${aims.dish}="","",${countOf(bonds.dish_key, aims.dish)}+IF(SUMPRODUCT(--(${dishes.name}<>""))>1,0,SUMPRODUCT((${bonds.where}<>"")*(${bonds.dish}=""))))`,
        verdict: f`IF(${bonded.conductors}="","",IF(${bonded.conductors}=0,"look","ok"))`,
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
        "Each dish is asked for a conductor here, because each has a mast or bracket and cables of its own; which of them need one, the local code and a licensed electrician say.",
        "Earthing a mast is no lightning protection. Keep masts, ladders and cables well clear of overhead lines. A word here is no certificate.",
      ],
    },
  ],
};
