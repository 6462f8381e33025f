/**
 * The offers of all suppliers, and which one of each part is in use: the pinned
 * one, else the cheapest that holds on the date of the edition; of equal ones
 * the upper. Offers are compared by the price of one piece, metre or foot.
 */
import { call, chain, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { keysOf, sought } from "../multiRoom/nameKeys";
import {
  cables,
  feeds,
  fittings,
  passives,
  plates,
  resistors,
  supplies,
  units,
} from "../multiRoom/names/parts";
import { site } from "../multiRoom/names/site";
import { PRICED } from "../multiRoom/priceChecks";
import { blockPart } from "../parts";
import { offers, standards } from "./names";

/** Finer than any price list, and coarser than what is lost where a number becomes text and back. */
const DECIMALS = 6;

const whereFilled = (formula: Formula): Formula => f`IF(${offers.part}="","",${formula})`;
const placeIn = (names: Named): Formula => f`MATCH(${offers.part},${names},0)`;
const isIn = (names: Named): Formula => f`ISNUMBER(${placeIn(names)})`;
/** Priced by the piece. */
const PIECES = [passives, units, supplies, plates, feeds, resistors] as const;

/** What a column says of the part, in whichever list that is. */
const onParts = (column: (of: (typeof PRICED)[number]) => Named): Formula =>
  PRICED.reduceRight(
    (otherwise, of) => f`IFERROR(INDEX(${column(of)},${placeIn(of.name)}),${otherwise})`,
    f`""`,
  );

/** In the currency of the standards. */
export const sameMoney = f`((${offers.currency}="")+(${offers.currency}=${site.currency})>0)`;
const isCable = isIn(cables.name);
/** By the unit that Parts counts the part by. */
export const sameUnit = f`((${offers.unit}="")+${isCable}*(${offers.unit}=${site.unit})+(1-${isCable})*(${offers.unit}="piece")>0)`;
const holds = f`(${offers.until}<>"")*(${offers.until}>=${standards.date})`;

/** How many offers of the part are as said. */
const ofPart = (...said: readonly (Formula | Named | number)[]): Formula =>
  call("COUNTIFS", offers.key, sought(offers.part), ...said);

export const offersSheet: SheetDefinition = {
  name: "Offers",
  kind: "input",
  intro: "What suppliers ask for the firm's parts, a row for each offer, and which one is in use.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "dearer", repeatHeads: true },
  parts: [
    blockPart(offers, {
      heading: "Offers",
      prepared: 12,
      formulas: {
        word: whereFilled(
          f`IF((${offers.leads}=1)*(IFERROR(MATCH(${offers.key},IF(${offers.leads}=1,${offers.key},""),0),0)=ROW(${offers.key})-MIN(ROW(${offers.key}))+1),"in use",IF(${offers.fits}<>1,"look",IF(${holds},"not used","expired")))`,
        ),
        dearer: f`IF((${offers.fits}<>1)+(${offers.word}="in use")>0,"",IFERROR(${offers.one}/SUMIFS(${offers.one},${offers.key},${sought(offers.part)},${offers.word},"in use")-1,""))`,
        price: f`IF(${offers.word}="in use",${offers.one}*${offers.amount},"")`,
        now: whereFilled(onParts(({ price }) => price)),
        one: whereFilled(
          f`IFERROR(ROUND(IF(${offers.pack_price}="",${offers.each}/(${offers.each}<>""),${offers.pack_price}/(${offers.pack}+(${offers.pack}=""))),${DECIMALS}),"")`,
        ),
        // In the order of the lists, as the price.
        amount: whereFilled(
          f`IFERROR(INDEX(${cables.reel},${placeIn(cables.name)}),IF(${chain(
            "+",
            PIECES.map(({ name }) => isIn(name)),
          )}>0,1,IFERROR(INDEX(${fittings.pack},${placeIn(fittings.name)}),"")))`,
        ),
        fits: whereFilled(
          f`ISNUMBER(${offers.one})*(${offers.one}>0)*ISNUMBER(${offers.amount})*${sameMoney}*${sameUnit}`,
        ),
        stands: whereFilled(
          f`${offers.fits}*IF(${ofPart(offers.pinned, f`"yes"`, offers.fits, 1)}>0,(${offers.pinned}="yes")*1,${holds})`,
        ),
        leads: whereFilled(
          // By REPLACE, as with the keys.
          f`${offers.stands}*(${ofPart(offers.stands, 1, offers.one, f`REPLACE(${offers.one},1,0,"<")`)}=0)`,
        ),
        key: keysOf(offers.part),
      },
    }),
  ],
};
