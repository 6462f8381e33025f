import { chain, f, type Formula, type Named } from "../../formula/build";
import type { Block, SheetDefinition, Words } from "../definition";
import { blockPart, type BesideOthers } from "../parts";
import { kinds, labour, routes, routeWork, work } from "./names/labour";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
} from "./names/materials";
import {
  cables,
  cableTypes,
  feeds,
  fittings,
  passives,
  plans,
  plates,
  receivers,
  resistors,
  supplies,
  units,
} from "./names/parts";
import { PIECES, pieceWords } from "./names/pieces";

/** A splitter has no line that goes on. */
const ofATap: BesideOthers = { required: f`(${passives.kind}="tap")` };
const ofAnAmplifier: BesideOthers = { required: f`(${passives.kind}="amplifier")` };
const ofAllButAmplifiers: BesideOthers = { required: f`(${passives.kind}<>"amplifier")` };
/** Of a switch that hands on, and of a loop-through plate, both ends or none. */
const withTheOther = (other: Named): BesideOthers => ({ required: f`(${other}<>"")` });

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

/** Where a price or the minutes of a list are held to more than their own rule. */
type Beside = Readonly<
  Partial<
    Record<
      | "cables"
      | "passives"
      | "units"
      | "supplies"
      | "plates"
      | "feeds"
      | "resistors"
      | "fittings"
      | "routes"
      | "labour",
      BesideOthers
    >
  >
>;

/** The lists of parts and of work, as a job and the firm's standards have them. */
export const partLists = (beside: Beside): Block[] => [
  blockPart(cables, {
    heading: "Cables",
    prepared: 6,
    formulas: { each: f`IF(${cables.name}="","",${cables.price}/${cables.reel})` },
    others: {
      like: { required: f`(${cables.k1}="")` },
      k1: withTheOthers,
      k2: withTheOthers,
      k0: withTheOthers,
      price: beside.cables,
    },
  }),
  blockPart(passives, {
    heading: "Devices of the distribution",
    prepared: 8,
    formulas: {},
    others: {
      port_low: ofAllButAmplifiers,
      port_high: ofAllButAmplifiers,
      through_low: ofATap,
      through_high: ofATap,
      gain_low: ofAnAmplifier,
      gain_high: ofAnAmplifier,
      noise: ofAnAmplifier,
      load: ofAnAmplifier,
      least: ofAnAmplifier,
      price: beside.passives,
    },
  }),
  blockPart(units, {
    heading: "Head units",
    prepared: 4,
    formulas: {},
    others: {
      price: beside.units,
      in_low: withTheOther(units.in_high),
      in_high: withTheOther(units.in_low),
      onward_low: withTheOther(units.onward_high),
      onward_high: withTheOther(units.onward_low),
    },
  }),
  blockPart(supplies, {
    heading: "Power supplies and inserters",
    prepared: 4,
    formulas: {},
    others: { price: beside.supplies },
  }),
  blockPart(plates, {
    heading: "Wall plates",
    prepared: 4,
    formulas: {},
    others: {
      price: beside.plates,
      through_low: withTheOther(plates.through_high),
      through_high: withTheOther(plates.through_low),
    },
  }),
  blockPart(feeds, {
    heading: "Feeds of dishes, for head units that are switches",
    prepared: 2,
    formulas: {},
    others: { price: beside.feeds },
  }),
  blockPart(plans, { heading: "Band plans: a row for each user band", prepared: 8, formulas: {} }),
  blockPart(resistors, {
    heading: "End resistors",
    prepared: 2,
    formulas: {},
    others: { price: beside.resistors },
  }),
  blockPart(fittings, {
    heading: "Fittings and sundries",
    prepared: 10,
    formulas: {},
    others: { price: beside.fittings },
  }),
  blockPart(receivers, { heading: "Receivers", prepared: 5, formulas: {} }),
  blockPart(routes, {
    heading: "Routes",
    prepared: 6,
    formulas: {},
    others: { minutes: beside.routes },
  }),
  blockPart(labour, {
    heading: "Labour units",
    prepared: 10,
    formulas: {},
    others: { minutes: beside.labour },
  }),
  blockPart(kinds, {
    heading: "Price groups, for the price of each group of rooms",
    prepared: 5,
    formulas: {},
  }),
];

/** What the lists offer to choose from. */
export const partWords: readonly Words[] = [
  {
    kind: "words",
    heading: "Cable types that are built in (from memory of the usual tables; ±5 % beyond 1000 MHz)",
    name: cableTypes.name,
    words: BUILT_IN_CABLES,
  },
  {
    kind: "words",
    heading: "What is counted in the distribution, for fittings and labour",
    name: pieceWords.name,
    words: PIECES,
  },
];

/** A price of 0 matters where the part is bought. */
const whereBought = ({ quantity }: typeof unitsBought | typeof work): BesideOthers => ({
  zeroWhere: f`IFERROR(${quantity}>0,TRUE)`,
});

export const partsSheet: SheetDefinition = {
  name: "Parts",
  kind: "parts",
  intro: "Your parts, prices and labour units. Every name used on the other sheets stands here once.",
  // What is rarer of a part stands to the right of its price.
  print: { orientation: "landscape", through: "each" },
  parts: [
    ...partLists({
      cables: whereBought(cablesBought),
      passives: whereBought(passivesBought),
      units: whereBought(unitsBought),
      supplies: whereBought(suppliesBought),
      plates: whereBought(platesBought),
      feeds: whereBought(feedsBought),
      resistors: whereBought(resistorsBought),
      fittings: whereBought(fittingsBought),
      routes: { zeroWhere: f`IFERROR(${routeWork.length}>0,TRUE)` },
      labour: whereBought(work),
    }),
    ...partWords,
  ],
};
