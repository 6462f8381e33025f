import { call, f, text, type Formula, type Named } from "../../formula/build";
import type { Block, SheetDefinition } from "../definition";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { countOf, sought, sumOf } from "./nameKeys";
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
import { rests, site } from "./names/site";

type Bought = typeof unitsBought;
/** What is priced by the piece, and may be sold in packs. */
type ByThePiece =
  typeof units | typeof passives | typeof supplies | typeof plates | typeof feeds | typeof resistors;

/** 0.55 for each of 100 outlets is 55.00000000000001 in binary: no 56th piece is bought for that. */
const wholes = (of: Formula): Formula => f`ROUNDUP(ROUND(${of},9),0)`;

/** A share of what is needed, and so at least one of it; below 0 it is an error, not a credit. */
const sparesOf = (needed: Named, share: Named): Formula =>
  f`IF(${share}="",0,${wholes(f`${needed}*${share}`)}/(${share}>=0))`;

/** How many packs are bought of what is needed and its spares; below 0 nothing can be. */
const packsOf = ({ needed, spares }: Pick<Bought, "needed" | "spares">, pack: Named | Formula): Formula =>
  f`${wholes(f`(${needed}+${spares})/${pack}`)}/((${needed}>=0)*(${pack}>0))`;

/** By REPLACE, because the grid's library joins a whole column where & stands before it. */
const soldIn = (what: string, size: Named): Formula => f`REPLACE(${size},1,0,${text(`${what} of `)})`;

/** A list of the bill of materials: the parts of one list on Parts, counted and priced. */
function bill(
  bought: Bought,
  of: ByThePiece,
  heading: string,
  prepared: number,
  counted: { readonly needed: Formula; readonly spares: Named },
): Block {
  const present = (formula: Formula): Formula => f`IF(${of.name}="","",${formula})`;
  const pack = f`(${of.pack}+(${of.pack}=""))`;
  return blockPart(bought, {
    heading,
    prepared,
    mirrors: of,
    formulas: {
      name: present(f`${of.name}`),
      needed: present(counted.needed),
      spares: present(sparesOf(bought.needed, counted.spares)),
      quantity: present(f`${packsOf(bought, pack)}*${pack}`),
      // As many as are bought are pieces, and so is what the price is of.
      sold: present(f`IF(${pack}=1,"piece",${soldIn("piece, in packs", of.pack)})`),
      price: present(f`${of.price}`),
      sum: present(f`${bought.quantity}*${of.price}`),
    },
  });
}

/** How many runs of each cable there are, where they are longer than 0. */
const runsIn = (length: Named, keys: Named): Formula =>
  call("COUNTIFS", keys, sought(cables.name), length, text(">0"));

/** The arguments with which runs are cut: last of REELS and of CUTPLAN. */
export const CUTTING: readonly Named[] = [
  site.cut_at,
  rooms.most,
  site.run_tolerance,
  site.spare_runs,
  site.spare_runs_least,
  rests.length,
  rests.cable,
];

const ofEachCable = (formula: Formula): Formula => f`IF(${cables.name}="","",${formula})`;
const sparesByShare = wholes(f`${cablesBought.runs}*${site.spare_runs}`);

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
    blockPart(cablesBought, {
      heading: "Cable",
      prepared: 6,
      mirrors: cables,
      formulas: {
        name: ofEachCable(f`${cables.name}`),
        needed: ofEachCable(
          f`${sumOf(rooms.run_used, rooms.cable_key, cables.name)}+${sumOf(branches.length, branches.cable_key, cables.name)}+${sumOf(heads.length, heads.cable_key, cables.name)}+${sumOf(feeders.together, feeders.cable_key, cables.name)}`,
        ),
        spares: ofEachCable(
          f`IF(${cablesBought.runs}=0,0,IF(${sparesByShare}>${site.spare_runs_least},${sparesByShare},0+${site.spare_runs_least}))`,
        ),
        quantity: call(
          "RIG.REELS",
          ...[rooms.run_used, cables.reel, site.slack, site.waste, rooms.cable_used, cables.name],
          ...[branches.length, branches.cable_used, heads.length, heads.cable_used],
          ...[feeders.length, feeders.cable_used, feeders.check.cables, ...CUTTING],
        ),
        sold: ofEachCable(soldIn("reel", cables.reel)),
        price: ofEachCable(f`${cables.price}`),
        sum: ofEachCable(f`${cablesBought.quantity}*${cables.price}`),
        runs: ofEachCable(
          f`${runsIn(rooms.run_used, rooms.cable_key)}+${runsIn(branches.length, branches.cable_key)}+${runsIn(heads.length, heads.cable_key)}+SUMIFS(${feeders.check.cables},${feeders.cable_key},${sought(cables.name)},${feeders.length},">0")`,
        ),
      },
    }),
    bill(passivesBought, passives, "Devices", 8, {
      needed: f`${countOf(branches.device_key, passives.name)}+${countOf(rooms.split_key, passives.name)}`,
      spares: site.spare_devices,
    }),
    bill(unitsBought, units, "Head units", 4, {
      needed: countOf(heads.type_key, units.name),
      spares: site.spare_heads,
    }),
    bill(suppliesBought, supplies, "Power supplies and inserters", 4, {
      // At a head unit, or an inserter on Distribution.
      needed: f`${countOf(heads.supply_key, supplies.name)}+${countOf(branches.device_key, supplies.name)}`,
      spares: site.spare_heads,
    }),
    bill(platesBought, plates, "Outlets", 4, {
      needed: countOf(rooms.plate_key, plates.name),
      spares: site.spare_plates,
    }),
    bill(feedsBought, feeds, "Feeds", 2, {
      // One for each slot of a dish that has it.
      needed: sumOf(dishes.seen.count, dishes.feed_key, feeds.name),
      spares: site.spare_heads,
    }),
    bill(resistorsBought, resistors, "End resistors", 2, {
      needed: f`(${resistors.name}=${site.closes})*${piecesOf(text("end resistor"))}`,
      spares: site.spare_fittings,
    }),
    blockPart(fittingsBought, {
      heading: "Fittings and sundries",
      prepared: 10,
      mirrors: fittings,
      formulas: {
        name: f`IF(${fittings.name}="","",${fittings.name})`,
        needed: f`IF(${fittings.name}="","",${fittings.per_outlet}*${count.outlets}+${fittings.per_branch}*${count.branches}+${fittings.per_head}*${count.heads}+${fittings.fixed}+${countOf(dishes.part_key, fittings.name)}+${fittingsBought.pieces}+${sumOf(types.fitting_pieces, types.fitting_key, fittings.name)})`,
        spares: f`IF(${fittings.name}="","",${sparesOf(fittingsBought.needed, site.spare_fittings)})`,
        quantity: f`IF(${fittings.name}="","",${packsOf(fittingsBought, fittings.pack)})`,
        sold: f`IF(${fittings.name}="","",IF(${fittings.pack}=1,"piece",${soldIn("pack", fittings.pack)}))`,
        price: f`IF(${fittings.name}="","",${fittings.price})`,
        sum: f`IF(${fittings.name}="","",${fittingsBought.quantity}*${fittings.price})`,
        pieces: f`IF(${fittings.name}="","",${piecesOf(fittings.piece)})`,
      },
    }),
  ],
};
