import { f, text, type Formula } from "../../formula/build";
import type { Block, SheetDefinition } from "../definition";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { countOf, sumOf } from "./nameKeys";
import { neededOf, piecesOf } from "./needed";
import { branches } from "./names/branches";
import { dishes, feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
  count,
} from "./names/materials";
import { cables, feeds, fittings, passives, plates, resistors, supplies, units } from "./names/parts";
import { eachPiece, pieces, PIECES, pieceWords } from "./names/pieces";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { site } from "./names/site";

type Bought = typeof unitsBought;
type Listed =
  | typeof units
  | typeof cables
  | typeof passives
  | typeof supplies
  | typeof plates
  | typeof fittings
  | typeof feeds
  | typeof resistors;

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
    fieldsPart(
      "Counted in the distribution; mains sockets are by others",
      eachPiece.map((piece, index) =>
        index === 0
          ? worked(piece, neededOf("work", pieceWords), { spillRows: PIECES.length })
          : spilledInto(piece),
      ),
      { together: pieces.all },
    ),
    bill(cablesBought, cables, "Cable", 6, {
      needed: f`IF(${cables.name}="","",${sumOf(rooms.run_used, rooms.cable_key, cables.name)}+${sumOf(branches.length, branches.cable_key, cables.name)}+${sumOf(heads.length, heads.cable_key, cables.name)}+${sumOf(feeders.together, feeders.cable_key, cables.name)})`,
      quantity: f`RIG.REELS(${rooms.run_used},${cables.reel},${site.slack},${site.waste},${rooms.cable_used},${cables.name},${branches.length},${branches.cable_used},${heads.length},${heads.cable_used},${feeders.length},${feeders.cable_used},${feeders.check.cables})`,
    }),
    bill(
      passivesBought,
      passives,
      "Devices",
      8,
      counted(
        passives,
        f`${countOf(branches.device_key, passives.name)}+${countOf(rooms.split_key, passives.name)}`,
      ),
    ),
    bill(unitsBought, units, "Head units", 4, counted(units, countOf(heads.type_key, units.name))),
    bill(
      suppliesBought,
      supplies,
      "Power supplies and inserters",
      4,
      // At a head unit, or an inserter on Distribution.
      counted(
        supplies,
        f`${countOf(heads.supply_key, supplies.name)}+${countOf(branches.device_key, supplies.name)}`,
      ),
    ),
    bill(platesBought, plates, "Outlets", 4, counted(plates, countOf(rooms.plate_key, plates.name))),
    // One for each slot of a dish that has it.
    bill(
      feedsBought,
      feeds,
      "Feeds",
      2,
      counted(feeds, sumOf(dishes.seen.count, dishes.feed_key, feeds.name)),
    ),
    bill(
      resistorsBought,
      resistors,
      "End resistors",
      2,
      counted(resistors, f`(${resistors.name}=${site.closes})*${piecesOf(text("end resistor"))}`),
    ),
    blockPart(fittingsBought, {
      heading: "Fittings and sundries",
      prepared: 10,
      mirrors: fittings,
      formulas: {
        name: f`IF(${fittings.name}="","",${fittings.name})`,
        needed: f`IF(${fittings.name}="","",${fittings.per_outlet}*${count.outlets}+${fittings.per_branch}*${count.branches}+${fittings.per_head}*${count.heads}+${fittings.fixed}+${countOf(dishes.part_key, fittings.name)}+${fittingsBought.pieces}+${sumOf(types.fitting_pieces, types.fitting_key, fittings.name)})`,
        // 0.55 for each of 100 outlets is 55.00000000000001 in binary: no 56th piece is bought for that.
        quantity: f`IF(${fittings.name}="","",ROUNDUP(ROUND(${fittingsBought.needed}/${fittings.pack},9),0))`,
        price: f`IF(${fittings.name}="","",${fittings.price})`,
        sum: f`IF(${fittings.name}="","",${fittingsBought.quantity}*${fittings.price})`,
        pieces: f`IF(${fittings.name}="","",${piecesOf(fittings.piece)})`,
      },
    }),
  ],
};
