import type { Block, Check, CountedRows } from "../definition";
import { checksSheet } from "../checksSheet";
import { partEntryChecks, sheetEntryChecks, zeroNote } from "../entryChecks";
import { belowOf } from "../layOut";
import { alignment } from "./alignment";
import { bonding } from "./bonding";
import { branches } from "./branches";
import { causes } from "./causes";
import { commissioning } from "./commissioning";
import { headUnits } from "./headUnits";
import { log } from "./log";
import { moneyChecks } from "./moneyChecks";
import { parts } from "./parts";
import { PRICED_BLOCKS, priceChecks } from "./priceChecks";
import { GREATEST_SLOPE, rooms } from "./rooms";
import { site } from "./site";
import { terms } from "./terms";
import { countOf } from "./nameKeys";

const manifold = [site, parts];
const others = [branches, rooms, headUnits, bonding, terms, alignment, causes, log];

/** Cells filled at or below the closing row of a block: no sum sees the rows there. */
const overrun = [...manifold, ...others, commissioning]
  .flatMap((sheet) => sheet.parts)
  .filter((part): part is Block => part.kind === "block" && part.columns[0]!.input !== undefined)
  .map((block) => `SUMPRODUCT(--(${belowOf(block)}<>""))`)
  .join("+");

const noneOf = "@=0";
/** Of outlets only the first is named: there may be ten thousand, and a sheet works a formula out even where it is not shown. */
const outlets = (bad: string): Pick<Check, "found" | "places"> => ({
  found: `SUMPRODUCT((rooms_outlet<>"")*(${bad}))`,
  places: `IFERROR("; "&INDEX(rooms_outlet,MATCH(1,(rooms_outlet<>"")*(${bad}),0)),"")`,
});
/** Outlets in whose row a column says a word; where it is a word of alarm it stands out there as well. */
const outletsSaying = (word: string, column: string): Pick<Check, "found" | "places"> => ({
  found: `COUNTIF(${column},"${word}")`,
  places: `IFERROR("; "&INDEX(rooms_outlet,MATCH("${word}",${column},0)),"")`,
});
const branch = (bad: string): CountedRows => ({ of: "branches_id", bad });
const heads = (bad: string): CountedRows => ({ of: "heads_id", bad });
/** Rows of which an earlier one has the name. By first places rather than by counting, which would compare every row with every other. */
const repeated = (of: string): CountedRows => ({
  of,
  bad: `IFERROR(MATCH(${of},${of},0),0)<>ROW(${of})-MIN(ROW(${of}))+1`,
});

/** Of every list on Parts, of the branches, head units and options: a name that stands twice is looked up in its first row. */
const NAMED_ONCE = [
  ...[...PRICED_BLOCKS, "labour", "options"].map((block) => `${block}_name`),
  "receivers_kind",
  "branches_id",
  "heads_id",
];
const twice = NAMED_ONCE.map((of) => `(${of}<>"")*(${repeated(of).bad})>0`);

/** Names that are looked up, and the lists in which they are. */
const WITH_WILDCARDS = [
  ...PRICED_BLOCKS.map((block) => `${block}_name`),
  ...["branches_id", "heads_id", "kinds_name", "branches_from", "branches_device", "branches_cable"],
  ...["heads_type", "heads_supply", "heads_cable", "heads_at", "heads_shares"],
  ...["rooms_from", "rooms_cable", "rooms_plate", "rooms_kind"],
];
const wild = (of: string): string =>
  ["*", "?", "~"].map((sign) => `ISNUMBER(FIND("${sign}",${of}))`).join("+") + ">0";

const list: readonly Check[] = [
  ...partEntryChecks(manifold),
  ...sheetEntryChecks(others),
  {
    what: "There are outlets to price",
    limit: "1 or more",
    found: "count_outlets",
    passes: "@>0",
    where: "Rooms",
  },
  {
    what: "Cells filled at or below the closing row of a block",
    limit: "none: rows there are not counted; add rows and move them up",
    found: overrun,
    passes: noneOf,
    where: "The ends of the blocks that you fill",
  },
  {
    what: "Outlets that nothing feeds",
    limit: "none",
    ...outlets("1-ISTEXT(rooms_head)"),
    passes: noneOf,
    where: "Rooms, fed from",
  },
  {
    what: "Splitters and taps that no head unit feeds",
    limit: "none: each hangs on a head unit, or on one that does",
    found: branch("1-ISTEXT(branches_head)"),
    passes: noneOf,
    where: "Branches, fed from",
  },
  {
    what: "Outlets with the name of another",
    limit: "none",
    ...outlets(repeated("rooms_outlet").bad),
    passes: noneOf,
    where: "Rooms, outlet",
  },
  {
    what: "Names that stand twice on one list",
    limit: "none: the first row would serve for both",
    found: twice.map((bad) => `SUMPRODUCT(--(${bad}))`).join("+"),
    passes: noneOf,
    where: "Parts, Branches, Head units, Terms",
    places: NAMED_ONCE.map(
      (of, index) => `IFERROR("; "&INDEX(${of},MATCH(1,(${twice[index]})*1,0)),"")`,
    ).join("&"),
  },
  {
    what: "Names with *, ? or ~",
    limit: "none: a lookup takes them for other names; rename them",
    found: WITH_WILDCARDS.map(wild)
      .map((bad) => `SUMPRODUCT(--(${bad}))`)
      .join("+"),
    passes: noneOf,
    where: "Parts, Branches, Head units, and where their names stand",
    places: WITH_WILDCARDS.map((of) => `IFERROR("; "&INDEX(${of},MATCH(1,(${wild(of)})*1,0)),"")`).join("&"),
  },
  {
    what: "Outlets counted from the head units, less those on Rooms",
    limit: "0",
    found: `SUMPRODUCT((heads_id<>"")*${countOf("rooms_head", "heads_id")})-count_outlets`,
    passes: noneOf,
    where: "Rooms, Head units",
  },
  {
    what: "Outlets whose level could not be found",
    limit: "none",
    ...outlets("ISERROR(rooms_verdict)*1"),
    passes: noneOf,
    where: "Rooms, verdict",
  },
  {
    what: "Outlets with too little level at their weakest",
    limit: "none under the least level",
    ...outletsSaying("low", "rooms_fits_enough"),
    passes: noneOf,
    where: "Rooms, at its weakest",
  },
  {
    what: "Outlets with too much level at their strongest",
    limit: "none over the greatest level",
    ...outletsSaying("high", "rooms_fits_bearable"),
    passes: noneOf,
    where: "Rooms, at its strongest",
  },
  {
    what: `Outlets whose levels at the two ends of the band lie more than ${GREATEST_SLOPE} dB apart`,
    limit: `none: ${GREATEST_SLOPE} dB between channels at one outlet (EN 60728-1, from memory)`,
    ...outletsSaying("steep", "rooms_even"),
    passes: noneOf,
    where: "Rooms, slope",
  },
  {
    what: "Outlets behind a splitter or tap that passes no power: dead",
    limit: "none: receivers command the head unit over that path (EN 50494, EN 50607)",
    ...outletsSaying("dead", "rooms_commands"),
    passes: noneOf,
    where: "Rooms, commands",
  },
  {
    what: "Outlets behind one that passes power at one port, of several used: all but that port's are dead",
    limit: "none: the sheet does not know which port; take a device that passes it at all",
    ...outletsSaying("doubtful", "rooms_commands"),
    passes: noneOf,
    where: "Rooms, commands",
  },
  {
    what: "Greatest difference between one outlet and another, hot, high end",
    limit: "a wish, not a rule: 15 dB keeps a job easy to measure (common practice, no source)",
    found: "MAX(rooms_level_high_hot)-MIN(rooms_level_high_hot)",
    format: "one",
    passes: "@<=15",
    where: "Rooms, verdict",
    advice: true,
  },
  {
    what: "Outlets under the design floor",
    limit: "a wish, not a rule",
    found: 'COUNTIF(rooms_weakest,"<"&site_level_design)',
    passes: noneOf,
    where: "Rooms, weakest",
    advice: true,
  },
  {
    what: "Outlets with too little level if every length is as long as it may be",
    limit: "a wish, not a rule",
    ...outletsSaying("low", "rooms_within"),
    passes: noneOf,
    where: "Rooms, then",
    advice: true,
  },
  {
    what: "Least and greatest level outside 47 to 77 dBµV",
    limit: "none: EN 60728-1 for satellite IF with QPSK, 8PSK or APSK",
    found: '(site_level_low<>"")*(site_level_low<47)+(site_level_high<>"")*(site_level_high>77)',
    passes: noneOf,
    where: "Site",
    places:
      'IF((site_level_low<>"")*(site_level_low<47),"; Least level at an outlet","")&IF((site_level_high<>"")*(site_level_high>77),"; Greatest level at an outlet","")',
  },
  {
    what: "Splitters that lose less than dividing takes: 10·log10 of their ways",
    limit: "none: nothing divides power without this loss",
    found: {
      of: "passives_name",
      bad: '(passives_kind="splitter")*IFERROR(passives_ways>10^((passives_port_low+0.05)/10),FALSE)+(passives_kind="splitter")*IFERROR(passives_ways>10^((passives_port_high+0.05)/10),FALSE)',
    },
    passes: noneOf,
    where: "Parts, loss to a port",
  },
  {
    what: "Devices and outlets that lose less at the high end, and taps whose line loses more than a port",
    limit: "a wish, not a rule: are two figures swapped?",
    found:
      'SUMPRODUCT((passives_name<>"")*((passives_port_high<passives_port_low)+(passives_kind="tap")*(passives_through_low>passives_port_low)>0))+SUMPRODUCT((plates_name<>"")*(plates_loss_high<plates_loss_low))',
    passes: noneOf,
    where: "Parts",
    places:
      'IFERROR("; "&INDEX(passives_name,MATCH(1,(passives_name<>"")*((passives_port_high<passives_port_low)+(passives_kind="tap")*(passives_through_low>passives_port_low)>0),0)),"")&IFERROR("; "&INDEX(plates_name,MATCH(1,(plates_name<>"")*(plates_loss_high<plates_loss_low),0)),"")',
    advice: true,
  },
  {
    what: "Runs that are not between their shortest and their longest",
    limit: "none",
    ...outlets(
      '((rooms_longest<>"")*(rooms_longest<rooms_run)+(rooms_shortest<>"")*(rooms_shortest>rooms_run)>0)',
    ),
    passes: noneOf,
    where: "Rooms, shortest run, longest run",
  },
  {
    what: "Splitters and taps that feed more than they have ports",
    limit: "none",
    found: branch("IFERROR(branches_fed>branches_ways,1)"),
    passes: noneOf,
    where: "Branches, feeds",
  },
  {
    // Each would get the full level, as if a splitter cost nothing.
    what: "Head units whose one cable is said to feed two things or more",
    limit: "none: a splitter parts it; a second output is a head unit of its own",
    found: heads(`${countOf("branches_from", "heads_id")}+${countOf("rooms_from", "heads_id")}>1`),
    passes: noneOf,
    where: "Branches and Rooms, fed from",
  },
  {
    what: "Head units with more tuners than user bands",
    limit: "none",
    found: heads('IFERROR(heads_capacity="high",TRUE)'),
    passes: noneOf,
    where: "Head units, tuners",
  },
  {
    what: "Rows of Rooms without a user band",
    limit: "none",
    ...outlets("ISERROR(rooms_bands)*1"),
    passes: noneOf,
    where: "Rooms, user bands",
  },
  {
    what: "Head units short of volts, or whose volts could not be found",
    limit: "none",
    found: heads('IFERROR(heads_power="low",TRUE)'),
    passes: noneOf,
    where: "Head units, volts",
  },
  {
    what: "Supplies whose path holds a splitter or tap that passes no power",
    limit: "none",
    found: heads("IFERROR(heads_stops>0,1)"),
    passes: noneOf,
    where: "Head units, stopped by",
  },
  {
    what: "Head units that draw more than their supply gives",
    limit: "none",
    found: heads("IFERROR(heads_together>heads_amps,1)"),
    passes: noneOf,
    where: "Head units, current of all that it feeds",
  },
  {
    what: "Head units that share a supply and name one of their own as well",
    limit: "none",
    found: heads('(heads_shares<>"")*(heads_supply<>"")'),
    passes: noneOf,
    where: "Head units, shares the supply of",
  },
  {
    what: "Slots that the beam does not clear",
    limit: "none",
    found: { of: "slots_slot", bad: 'IFERROR(sight_verdict="low",TRUE)' },
    passes: noneOf,
    where: "Sightline",
  },
  {
    what: "There are slots to look at",
    limit: "1 or more",
    found: 'SUMPRODUCT(--(slots_slot<>""))',
    passes: "@>0",
    where: "Site",
  },
  ...priceChecks,
  ...moneyChecks,
  zeroNote([...manifold, ...others], "Site, Parts, Rooms"),
  {
    what: "Measured outlets off their prediction",
    limit: "a wish, not a rule: see Diagnosis",
    ...outletsSaying("look", "commission_verdict"),
    passes: noneOf,
    where: "Commissioning, verdict",
    advice: true,
  },
  {
    what: "Conductors to look at, or that could not be looked up",
    limit: "a wish, not a rule: the local code decides",
    found: { of: "bonds_where", bad: 'IFERROR(bonds_flag_word="look closer",TRUE)' },
    passes: noneOf,
    where: "Bonding",
    advice: true,
  },
  {
    what: "Conductors listed on Bonding",
    limit: "1 or more",
    found: 'SUMPRODUCT(--(bonds_where<>""))',
    passes: "@>0",
    where: "Bonding",
    advice: true,
  },
];

export const checks = checksSheet(list);
