import { BOND_RULES } from "../../engine/bonding/constants";
import type { SheetDefinition } from "../definition";

export const bonding: SheetDefinition = {
  name: "Bonding",
  kind: "input",
  intro:
    "Conductors to look at, each with the clause to read. This flags; the local code and a licensed electrician decide.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "block",
      name: "bonds",
      heading: "Earthing and bonding conductors",
      prepared: 8,
      columns: [
        {
          key: "where",
          head: "Conductor",
          width: 40,
          input: {
            what: "Which conductor, from where to where",
            example: "mast to main earth bar",
            rule: { kind: "text" },
          },
        },
        {
          key: "kind",
          head: "Kind",
          width: 38,
          input: {
            what: "What the conductor is for and of which metal",
            required: true,
            rule: { kind: "named", name: "bond_kinds" },
          },
        },
        {
          key: "size",
          head: "Cross-section",
          unit: "mm²",
          width: 16,
          format: "one",
          input: {
            what: "Cross-section of the conductor",
            example: "16",
            required: true,
            rule: { kind: "number", min: 0.1, max: 1000 },
          },
        },
        {
          key: "length",
          head: "Length",
          unit: "m or ft",
          width: 12,
          format: "one",
          input: {
            what: "Length of the conductor, in the unit that Site names",
            example: "5",
            rule: { kind: "number", min: 0, max: 2000 },
          },
        },
        {
          key: "flag",
          head: "Flag",
          width: 16,
          lines: 2,
          across: [
            { key: "word", head: "word" },
            { key: "clause", head: "clause to read", width: 84 },
          ],
          formula: "RIG.BONDCHECK(bonds_kind,bonds_size,bonds_length,site_unit)",
        },
      ],
    },
    {
      kind: "words",
      heading: "Kinds of conductor",
      name: "bond_kinds",
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
