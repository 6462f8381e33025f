import type { Block, Column, SheetDefinition } from "../definition";
import { countOf, sumOf } from "./nameKeys";

/** A block of the bill of materials: the parts of one block on Parts, counted and priced. */
function bill(spec: {
  readonly name: string;
  readonly of: string;
  readonly heading: string;
  readonly prepared: number;
  readonly quantity: readonly Column[];
  /** The column that is multiplied by the price. */
  readonly counted: string;
}): Block {
  const present = (formula: string): string => `IF(${spec.of}_name="","",${formula})`;
  return {
    kind: "block",
    name: spec.name,
    heading: spec.heading,
    prepared: spec.prepared,
    mirrors: spec.of,
    columns: [
      { key: "name", head: "Part", width: 34, formula: present(`${spec.of}_name`) },
      ...spec.quantity,
      {
        key: "price",
        head: "Price",
        unit: "money",
        width: 12,
        format: "money",
        formula: present(`${spec.of}_price`),
      },
      {
        key: "sum",
        head: "Sum",
        unit: "money",
        width: 14,
        format: "money",
        formula: present(`${spec.name}_${spec.counted}*${spec.of}_price`),
      },
    ],
  };
}

const counted = (formula: string, of: string): Column[] => [
  {
    key: "needed",
    head: "Needed",
    unit: "pieces",
    width: 20,
    format: "general",
    formula: `IF(${of}_name="","",${formula})`,
  },
  {
    key: "quantity",
    head: "To buy",
    unit: "pieces",
    width: 12,
    format: "integer",
    formula: `IF(${of}_name="","",${formula})`,
  },
];

export const materials: SheetDefinition = {
  name: "Materials",
  kind: "workings",
  intro: "What to buy: a line for each part, with runs packed into whole reels and packs rounded up.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "Counted",
      fields: [
        {
          name: "count_outlets",
          label: "Outlets",
          format: "integer",
          formula: 'SUMPRODUCT(--(rooms_outlet<>""))',
        },
        {
          name: "count_branches",
          label: "Splitters and taps",
          format: "integer",
          formula: 'SUMPRODUCT(--(branches_id<>""))',
        },
        {
          name: "count_heads",
          label: "Head units",
          format: "integer",
          formula: 'SUMPRODUCT(--(heads_id<>""))',
        },
      ],
    },
    bill({
      name: "buycables",
      of: "cables",
      heading: "Cable",
      prepared: 6,
      quantity: [
        {
          key: "needed",
          head: "All runs",
          unit: "m or ft",
          width: 20,
          format: "one",
          formula: `IF(cables_name="","",${sumOf("rooms_run", "rooms_cable", "cables_name")}+${sumOf("branches_length", "branches_cable", "cables_name")}+${sumOf("heads_length", "heads_cable", "cables_name")})`,
        },
        {
          key: "quantity",
          head: "To buy",
          unit: "reels",
          width: 12,
          format: "integer",
          formula:
            "RIG.REELS(rooms_run,cables_reel,site_slack,site_waste,rooms_cable,cables_name,branches_length,branches_cable,heads_length,heads_cable)",
        },
      ],
      counted: "quantity",
    }),
    bill({
      name: "buypassives",
      of: "passives",
      heading: "Splitters and taps",
      prepared: 8,
      quantity: counted(countOf("branches_device", "passives_name"), "passives"),
      counted: "quantity",
    }),
    bill({
      name: "buyunits",
      of: "units",
      heading: "Head units",
      prepared: 4,
      quantity: counted(countOf("heads_type", "units_name"), "units"),
      counted: "quantity",
    }),
    bill({
      name: "buysupplies",
      of: "supplies",
      heading: "Power supplies and inserters",
      prepared: 4,
      // A head unit that shares another's supply buys none.
      quantity: counted(sumOf("heads_bought", "heads_supply", "supplies_name"), "supplies"),
      counted: "quantity",
    }),
    bill({
      name: "buyplates",
      of: "plates",
      heading: "Outlets",
      prepared: 4,
      quantity: counted(countOf("rooms_plate", "plates_name"), "plates"),
      counted: "quantity",
    }),
    bill({
      name: "buyfittings",
      of: "fittings",
      heading: "Fittings and sundries",
      prepared: 10,
      quantity: [
        {
          key: "needed",
          head: "Needed",
          unit: "pieces",
          width: 20,
          format: "general",
          formula:
            'IF(fittings_name="","",fittings_per_outlet*count_outlets+fittings_per_branch*count_branches+fittings_per_head*count_heads+fittings_fixed)',
        },
        {
          key: "quantity",
          head: "To buy",
          unit: "packs",
          width: 12,
          format: "integer",
          // 0.55 for each of 100 outlets is 55.00000000000001 in binary: no 56th piece is bought for that.
          formula: 'IF(fittings_name="","",ROUNDUP(ROUND(buyfittings_needed/fittings_pack,9),0))',
        },
      ],
      counted: "quantity",
    }),
  ],
};
