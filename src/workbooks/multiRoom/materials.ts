import { f, type Formula } from "../../formula/build";
import type { Block, SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { countOf, sumOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import {
  cablesBought,
  fittingsBought,
  passivesBought,
  platesBought,
  suppliesBought,
  unitsBought,
  count,
} from "./names/materials";
import { cables, fittings, passives, plates, supplies, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { site } from "./names/site";

type Bought = typeof unitsBought;
type Listed =
  typeof units | typeof cables | typeof passives | typeof supplies | typeof plates | typeof fittings;

/** A list of the bill of materials: the parts of one list on Parts, counted and priced. */
function bill(
  bought: Bought,
  of: Listed,
  heading: string,
  prepared: number,
  counts: { readonly needed: Formula; readonly quantity: Formula },
): Block {
  const present = (formula: Formula): Formula => f`IF(${of.name}="","",${formula})`;
  return blockPart(bought, {
    heading,
    prepared,
    mirrors: of,
    formulas: {
      name: present(f`${of.name}`),
      ...counts,
      price: present(f`${of.price}`),
      sum: present(f`${bought.quantity}*${of.price}`),
    },
  });
}

/** What is needed is bought. */
const counted = (of: Listed, formula: Formula): { readonly needed: Formula; readonly quantity: Formula } => {
  const needed = f`IF(${of.name}="","",${formula})`;
  return { needed, quantity: needed };
};

export const materialsSheet: SheetDefinition = {
  name: "Materials",
  kind: "workings",
  intro: "What to buy: a line for each part, with runs packed into whole reels and packs rounded up.",
  print: { orientation: "portrait" },
  parts: [
    fieldsPart("Counted", [
      worked(count.outlets, f`SUMPRODUCT(--(${rooms.outlet}<>""))`),
      worked(count.branches, f`SUMPRODUCT(--(${branches.id}<>""))`),
      worked(count.heads, f`SUMPRODUCT(--(${heads.id}<>""))`),
    ]),
    bill(cablesBought, cables, "Cable", 6, {
      needed: f`IF(${cables.name}="","",${sumOf(rooms.run, rooms.cable_key, cables.name)}+${sumOf(branches.length, branches.cable_key, cables.name)}+${sumOf(heads.length, heads.cable_key, cables.name)})`,
      quantity: f`RIG.REELS(${rooms.run},${cables.reel},${site.slack},${site.waste},${rooms.cable},${cables.name},${branches.length},${branches.cable},${heads.length},${heads.cable})`,
    }),
    bill(
      passivesBought,
      passives,
      "Splitters and taps",
      8,
      counted(passives, countOf(branches.device_key, passives.name)),
    ),
    bill(unitsBought, units, "Head units", 4, counted(units, countOf(heads.type_key, units.name))),
    bill(
      suppliesBought,
      supplies,
      "Power supplies and inserters",
      4,
      // A head unit that shares another's supply buys none.
      counted(supplies, sumOf(heads.bought, heads.supply_key, supplies.name)),
    ),
    bill(platesBought, plates, "Outlets", 4, counted(plates, countOf(rooms.plate_key, plates.name))),
    bill(fittingsBought, fittings, "Fittings and sundries", 10, {
      needed: f`IF(${fittings.name}="","",${fittings.per_outlet}*${count.outlets}+${fittings.per_branch}*${count.branches}+${fittings.per_head}*${count.heads}+${fittings.fixed})`,
      // 0.55 for each of 100 outlets is 55.00000000000001 in binary: no 56th piece is bought for that.
      quantity: f`IF(${fittings.name}="","",ROUNDUP(ROUND(${fittingsBought.needed}/${fittings.pack},9),0))`,
    }),
  ],
};
