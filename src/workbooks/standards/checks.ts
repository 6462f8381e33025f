/** The checks of the firm's standards. */
import { chain, f, type Formula, type Named } from "../../formula/build";
import { countedInAll, inLists, lookAt, NONE_FOUND as none } from "../checkPlaces";
import { checksOf, checksSheet } from "../checksSheet";
import type { Block, CheckWords } from "../definition";
import { partEntryChecks, sheetEntryChecks, zeroNote } from "../entryChecks";
import { belowOf } from "../layOutBlock";
import { twice, wild } from "../multiRoom/designChecks";
import { labour, routes } from "../multiRoom/names/labour";
import { cables, receivers } from "../multiRoom/names/parts";
import { assumptions, exclusions } from "../multiRoom/names/terms";
import { ofParts, PRICED, priceChecks } from "../multiRoom/priceChecks";
import { offers, standards, suppliers } from "./names";
import { offersSheet, sameMoney, sameUnit } from "./offers";
import {
  crewSheet,
  logSheet,
  partsSheet,
  rangesSheet,
  standardsSheet,
  suppliersSheet,
  termsSheet,
} from "./sheets";

const LONG_SHEETS = [standardsSheet, partsSheet];
const OTHER_SHEETS = [crewSheet, suppliersSheet, offersSheet, termsSheet, rangesSheet, logSheet];

/** Lists in which a name is looked up. */
const NAMED_ONCE: readonly Named[] = [
  ...PRICED.map(({ name }) => name),
  labour.name,
  routes.name,
  receivers.kind,
  suppliers.name,
];

/** Offers that are at fault. */
const ofOffers = (bad: Formula): Pick<CheckWords, "found"> => ({ found: { of: offers.part, bad } });

/** A part that stands in a list further down as well: an offer goes to the first. */
const inTwoLists = PRICED.slice(0, -1).map((of, index) => ({
  of: of.name,
  bad: f`(${of.name}<>"")*(${chain(
    "+",
    PRICED.slice(index + 1).map((later) => f`ISNUMBER(MATCH(${of.name},${later.name},0))`),
  )})>0`,
}));

/** Half a cent a unit, because a list prints rounded prices. */
const ROUNDED = 0.005;

const ofTheFirm = {
  "rows below a block": {
    what: "Cells filled at or below the closing row of a block",
    limit: "none: rows there are not looked at; add rows and move them up",
    found: countedInAll(
      [...LONG_SHEETS, ...OTHER_SHEETS]
        .flatMap(({ parts }) => parts)
        .filter((part): part is Block => part.kind === "block")
        .map((block) => f`${belowOf(block)}<>""`),
    ),
    passes: none,
    where: "The ends of the blocks that you fill",
  },
  "names twice": {
    what: "Names that stand twice in one list: jobs take the first",
    limit: "none",
    ...inLists(NAMED_ONCE.map((of) => ({ of, bad: twice(of) }))),
    passes: none,
    where: "Parts, Suppliers",
  },
  "names with wildcards": {
    what: "Names with *, ? or ~",
    limit: "none: a lookup takes them for other names; rename them",
    ...inLists(NAMED_ONCE.map((of) => ({ of, bad: wild(of) }))),
    passes: none,
    where: "Parts, Suppliers",
  },
  "names in two lists": {
    what: "Parts that stand in two lists: offers go to the first",
    limit: "none",
    ...inLists(inTwoLists),
    passes: none,
    where: "Parts",
  },
  "prices expired": {
    what: "Prices that do not hold on the date of the edition",
    limit: "none",
    ...ofParts((of) => f`${of.until}<${standards.date}`),
    passes: none,
    where: lookAt("Parts", cables.until),
  },
  "prices of the future": {
    what: "Prices dated after the edition",
    limit: "none",
    ...ofParts((of) => f`(${of.priced}<>"")*(${of.priced}>${standards.date})`),
    passes: none,
    where: lookAt("Parts", cables.priced),
  },
  "prices by other offers": {
    what: "Parts whose price is not that of the offer in use",
    limit: "none",
    ...ofOffers(f`(${offers.word}="in use")*IFERROR(ABS(${offers.price}-${offers.now})>${ROUNDED},TRUE)`),
    passes: none,
    where: lookAt("Offers", offers.price, offers.now),
  },
  "offers in use expired": {
    what: "Offers in use that do not hold on the date of the edition",
    limit: "none: they are pinned",
    ...ofOffers(f`(${offers.word}="in use")*(${offers.until}<${standards.date})`),
    passes: none,
    where: lookAt("Offers", offers.until),
  },
  "offers of no part": {
    what: "Offers of a part that is not on Parts",
    limit: "none",
    ...ofOffers(f`(${offers.amount}="")`),
    passes: none,
    where: lookAt("Offers", offers.part),
  },
  "offers in other money": {
    what: "Offers in another currency than that of the standards",
    limit: "none: they are not compared",
    ...ofOffers(f`1-${sameMoney}`),
    passes: none,
    where: lookAt("Offers", offers.currency),
  },
  "offers by another unit": {
    what: "Offers by another unit than Parts has: cables by the unit of length, all else by the piece",
    limit: "none: they are not compared",
    ...ofOffers(f`(${offers.amount}<>"")*(1-${sameUnit})`),
    passes: none,
    where: lookAt("Offers", offers.unit),
  },
  "offers without a price": {
    what: "Offers without a price of a unit or of a pack",
    limit: "none",
    ...ofOffers(f`(${offers.one}="")`),
    passes: none,
    where: lookAt("Offers", offers.each, offers.pack_price),
  },
  "offers that disagree": {
    what: "Offers whose pack does not cost its units",
    limit: "none, but for half a cent a unit",
    ...ofOffers(
      f`(${offers.each}<>"")*(${offers.pack_price}<>"")*IFERROR(ABS(${offers.each}*(${offers.pack}+(${offers.pack}=""))-${offers.pack_price})>${ROUNDED}*(1+${offers.pack}),FALSE)`,
    ),
    passes: none,
    where: lookAt("Offers", offers.each, offers.pack, offers.pack_price),
  },
  "offers pinned twice": {
    what: "Offers pinned that are not in use: two of one part, or not comparable",
    limit: "none",
    ...ofOffers(f`(${offers.pinned}="yes")*(${offers.word}<>"in use")`),
    passes: none,
    where: lookAt("Offers", offers.pinned),
  },
  "minutes out of range": priceChecks["minutes out of range"],
  "terms empty": {
    what: "Assumptions and exclusions: lists that are empty",
    limit: "advisory: quotes would say none",
    found: f`(SUMPRODUCT(--(${assumptions.text}<>""))=0)+(SUMPRODUCT(--(${exclusions.text}<>""))=0)`,
    passes: none,
    where: "Terms",
    advice: true,
  },
} satisfies Readonly<Record<string, CheckWords>>;

export const standardsChecksSheet = checksSheet([
  ...partEntryChecks(LONG_SHEETS),
  ...sheetEntryChecks(OTHER_SHEETS),
  ...checksOf(ofTheFirm),
  zeroNote([...LONG_SHEETS, ...OTHER_SHEETS], "Standards, Parts"),
]);
