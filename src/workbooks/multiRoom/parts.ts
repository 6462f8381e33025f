import { chain, f, type Formula } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, type BesideOthers } from "../parts";
import { crew, kinds, labour, work } from "./names/labour";
import {
  cablesBought,
  fittingsBought,
  passivesBought,
  platesBought,
  suppliesBought,
  unitsBought,
} from "./names/materials";
import { cables, cableTypes, fittings, passives, plates, receivers, supplies, units } from "./names/parts";

/** A price of 0 matters where the part is bought. */
const whereBought = ({ quantity }: typeof unitsBought | typeof work): BesideOthers => ({
  zeroWhere: f`IFERROR(${quantity}>0,TRUE)`,
});
/** A splitter has no line that goes on. */
const ofATap: BesideOthers = { required: f`(${passives.kind}="tap")` };

/** With one of the three the others are wanted too: half a formula gives half a loss. */
const withTheOthers: BesideOthers = {
  required: f`(${chain(
    "+",
    [cables.k1, cables.k2, cables.k0].map((one): Formula => f`(${one}<>"")`),
  )}>0)`,
};

/** The names that CABLELOSS knows without a table. */
export const BUILT_IN_CABLES = ["series 59", "series 6", "series 7", "series 11"].flatMap((series) => [
  series,
  `${series}, copper`,
  `${series}, copper-clad steel`,
]);

export const partsSheet: SheetDefinition = {
  name: "Parts",
  kind: "parts",
  intro: "Your parts, prices and labour units. Every name used on the other sheets stands here once.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(cables, {
      heading: "Cables",
      prepared: 6,
      formulas: { each: f`IF(${cables.name}="","",${cables.price}/${cables.reel})` },
      others: {
        like: { required: f`(${cables.k1}="")` },
        k1: withTheOthers,
        k2: withTheOthers,
        k0: withTheOthers,
        price: whereBought(cablesBought),
      },
    }),
    blockPart(passives, {
      heading: "Splitters and taps",
      prepared: 8,
      formulas: {
        pass: f`IF(${passives.name}="","",IF(${passives.through}="",${passives.port},${passives.through}))`,
      },
      others: { through_low: ofATap, through_high: ofATap, price: whereBought(passivesBought) },
    }),
    blockPart(units, {
      heading: "Head units",
      prepared: 4,
      formulas: {},
      others: { price: whereBought(unitsBought) },
    }),
    blockPart(supplies, {
      heading: "Power supplies and inserters",
      prepared: 4,
      formulas: {},
      others: { price: whereBought(suppliesBought) },
    }),
    blockPart(plates, {
      heading: "Outlets",
      prepared: 4,
      formulas: {},
      others: { price: whereBought(platesBought) },
    }),
    blockPart(fittings, {
      heading: "Fittings and sundries",
      prepared: 10,
      formulas: {},
      others: { price: whereBought(fittingsBought) },
    }),
    blockPart(receivers, { heading: "Receivers", prepared: 5, formulas: {} }),
    blockPart(labour, {
      heading: "Labour units",
      prepared: 10,
      formulas: {},
      others: { minutes: whereBought(work) },
    }),
    blockPart(kinds, {
      heading: "Price groups, for the price of each group of rooms",
      prepared: 5,
      formulas: {},
    }),
    fieldsPart("Crew", [crew.rate]),
    {
      kind: "words",
      heading: "Cable types that are built in (from memory of the usual tables; ±5 % beyond 1000 MHz)",
      name: cableTypes.name,
      words: BUILT_IN_CABLES,
    },
  ],
};
