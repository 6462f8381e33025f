/** Checks of the names, the tree, the levels and the supply. */
import { call, chain, f, text, type Formula, type Named } from "../../formula/build";
import { countedInAll, firstBad, lookAt, NONE_FOUND as none, SOME_FOUND as some } from "../checkPlaces";
import type { Block, Check, CheckWords, CountedRows } from "../definition";
import { belowOf } from "../layOutBlock";
import { commissioningSheet } from "./commissioning";
import { LONG_SHEETS, OTHER_SHEETS } from "./filledSheets";
import { countOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import { kinds, labour } from "./names/labour";
import { count } from "./names/materials";
import { passives, plates, receivers } from "./names/parts";
import { rooms } from "./names/rooms";
import { sight } from "./names/sightline";
import { site, slots } from "./names/site";
import { options } from "./names/terms";
import { PRICED } from "./priceChecks";
import { GREATEST_SLOPE } from "./rooms";

/** Cells filled at or below the closing row of a block: no sum sees the rows there. */
const overrun = countedInAll(
  [...LONG_SHEETS, ...OTHER_SHEETS, commissioningSheet]
    .flatMap((sheet) => sheet.parts)
    .filter((part): part is Block => part.kind === "block" && part.columns[0]!.input !== undefined)
    .map((block) => f`${belowOf(block)}<>""`),
);

/** Of outlets only the first is named: there may be ten thousand, and a sheet works a formula out even where it is not shown. */
const ofOutlets = (bad: Formula): Pick<Check, "found" | "places"> => ({
  found: f`SUMPRODUCT((${rooms.outlet}<>"")*(${bad}))`,
  places: f`IFERROR("; "&INDEX(${rooms.outlet},MATCH(1,(${rooms.outlet}<>"")*(${bad}),0)),"")`,
});
/** Outlets in whose row a column says a word; where it is a word of alarm it stands out there as well. */
export const outletsWithWord = (word: string, column: Named): Pick<Check, "found" | "places"> => ({
  found: f`COUNTIF(${column},${text(word)})`,
  places: f`IFERROR("; "&INDEX(${rooms.outlet},MATCH(${text(word)},${column},0)),"")`,
});
const ofBranches = (bad: Formula): CountedRows => ({ of: branches.id, bad });
const ofHeads = (bad: Formula): CountedRows => ({ of: heads.id, bad });
/** Rows of which an earlier one has the name. By first places rather than by counting, which would compare every row with every other. */
const repeated = (of: Named): Formula => f`IFERROR(MATCH(${of},${of},0),0)<>ROW(${of})-MIN(ROW(${of}))+1`;

/** Of every list on Parts, of the branches, head units and options: a name that stands twice is looked up in its first row. */
const NAMED_ONCE: readonly Named[] = [
  ...PRICED.map(({ name }) => name),
  labour.name,
  options.name,
  receivers.kind,
  branches.id,
  heads.id,
];
const twice = (of: Named): Formula => f`(${of}<>"")*(${repeated(of)})>0`;

/** Names that are looked up, and the lists in which they are. */
const WITH_WILDCARDS: readonly Named[] = [
  ...PRICED.map(({ name }) => name),
  ...[branches.id, heads.id, kinds.name, branches.from, branches.device, branches.cable],
  ...[heads.type, heads.supply, heads.cable, heads.at, heads.shares],
  ...[rooms.from, rooms.cable, rooms.plate, rooms.kind],
];
const wild = (of: Named): Formula =>
  f`${chain(
    "+",
    ["*", "?", "~"].map((sign) => f`ISNUMBER(${call("FIND", text(sign), of)})`),
  )}>0`;

export const designChecks = {
  "outlets to price": {
    what: "There are outlets to price",
    limit: "1 or more",
    found: f`${count.outlets}`,
    passes: some,
    where: "Rooms",
  },
  "rows below a block": {
    what: "Cells filled at or below the closing row of a block",
    limit: "none: rows there are not counted; add rows and move them up",
    found: overrun,
    passes: none,
    where: "The ends of the blocks that you fill",
  },
  "outlets unfed": {
    what: "Outlets that nothing feeds",
    limit: "none",
    ...ofOutlets(f`1-ISTEXT(${rooms.head})`),
    passes: none,
    where: lookAt("Rooms", rooms.from),
  },
  "branches unfed": {
    what: "Splitters and taps that no head unit feeds",
    limit: "none: each is fed by a head unit, or by another that is",
    found: ofBranches(f`1-ISTEXT(${branches.head})`),
    passes: none,
    where: lookAt("Branches", branches.from),
  },
  "outlets named twice": {
    what: "Outlets with the name of another",
    limit: "none",
    ...ofOutlets(repeated(rooms.outlet)),
    passes: none,
    where: lookAt("Rooms", rooms.outlet),
  },
  "names twice": {
    what: "Names that stand twice on one list",
    limit: "none: the first row would serve for both",
    found: countedInAll(NAMED_ONCE.map(twice)),
    passes: none,
    where: "Parts, Branches, Head units, Terms",
    places: chain(
      "&",
      NAMED_ONCE.map((of) => firstBad(of, twice(of))),
    ),
  },
  "names with wildcards": {
    what: "Names with *, ? or ~",
    limit: "none: a lookup takes them for other names; rename them",
    found: countedInAll(WITH_WILDCARDS.map(wild)),
    passes: none,
    where: "Parts, Branches, Head units, and where their names stand",
    places: chain(
      "&",
      WITH_WILDCARDS.map((of) => firstBad(of, wild(of))),
    ),
  },
  "outlets of head units": {
    what: "Outlet count cross-check, head units against Rooms: difference",
    limit: "0",
    found: f`SUMPRODUCT((${heads.id}<>"")*${countOf(rooms.head_key, heads.id)})-${count.outlets}`,
    passes: none,
    where: "Rooms, Head units",
  },
  "levels unknown": {
    what: "Outlets whose level could not be found",
    limit: "none",
    ...ofOutlets(f`ISERROR(${rooms.verdict})*1`),
    passes: none,
    where: lookAt("Rooms", rooms.verdict),
  },
  "level too low": {
    what: "Outlets too weak",
    limit: "none below the minimum level",
    ...outletsWithWord("low", rooms.check.low),
    passes: none,
    where: lookAt("Rooms", rooms.weakest),
  },
  "level too high": {
    what: "Outlets too strong",
    limit: "none above the maximum level",
    ...outletsWithWord("high", rooms.check.high),
    passes: none,
    where: lookAt("Rooms", rooms.strongest),
  },
  "slope too steep": {
    what: `Outlets whose levels at the lowest and the highest frequency lie more than ${GREATEST_SLOPE} dB apart`,
    limit: `none: ${GREATEST_SLOPE} dB between channels at one outlet (EN 60728-1, from memory)`,
    ...outletsWithWord("steep", rooms.slope_check),
    passes: none,
    where: lookAt("Rooms", rooms.slope_check),
  },
  "outlets dead": {
    what: "Outlets behind a splitter or tap that blocks power: dead",
    limit: "none: receivers command the head unit over that path (EN 50494, EN 50607)",
    ...outletsWithWord("dead", rooms.commands),
    passes: none,
    where: lookAt("Rooms", rooms.commands),
  },
  "outlets doubtful": {
    what: "Outlets behind a device that passes power at one port while several are used: all others are dead",
    limit: "none: the sheet does not know which port; take a device that passes it at all",
    ...outletsWithWord("doubtful", rooms.commands),
    passes: none,
    where: lookAt("Rooms", rooms.commands),
  },
  "difference between outlets": {
    what: "Largest level difference between outlets, hot, highest frequency",
    limit: "advisory: 15 dB keeps a job easy to measure (common practice, no source)",
    found: f`MAX(${rooms.level.high_hot})-MIN(${rooms.level.high_hot})`,
    format: "one",
    passes: (found) => f`${found}<=15`,
    where: lookAt("Rooms", rooms.verdict),
    advice: true,
  },
  "under the design floor": {
    what: "Outlets below the design floor",
    limit: "advisory",
    found: f`COUNTIF(${rooms.weakest},"<"&${site.level_design})`,
    passes: none,
    where: lookAt("Rooms", rooms.weakest),
    advice: true,
  },
  "low at longest lengths": {
    what: "Outlets too weak at longest lengths",
    limit: "advisory",
    ...outletsWithWord("low", rooms.stretched_check),
    passes: none,
    where: lookAt("Rooms", rooms.stretched_check),
    advice: true,
  },
  "limits of level": {
    what: "Minimum and maximum level outside 47 to 77 dBµV",
    limit: "none: EN 60728-1 for satellite IF with QPSK, 8PSK or APSK",
    found: f`(${site.level_low}<>"")*(${site.level_low}<47)+(${site.level_high}<>"")*(${site.level_high}>77)`,
    passes: none,
    where: "Site",
    places: f`IF((${site.level_low}<>"")*(${site.level_low}<47),${text(`; ${site.level_low.words.label}`)},"")&IF((${site.level_high}<>"")*(${site.level_high}>77),${text(`; ${site.level_high.words.label}`)},"")`,
  },
  "splitters too good": {
    what: "Splitters with less loss than an ideal split: 10·log10 of their ways",
    limit: "none: nothing divides power without this loss",
    found: {
      of: passives.name,
      bad: f`(${passives.kind}="splitter")*IFERROR(${passives.ways}>10^((${passives.port_low}+0.05)/10),FALSE)+(${passives.kind}="splitter")*IFERROR(${passives.ways}>10^((${passives.port_high}+0.05)/10),FALSE)`,
    },
    passes: none,
    where: lookAt("Parts", passives.port_low, passives.port_high),
  },
  "losses swapped": {
    what: "Devices and outlets that lose less at the highest frequency, and taps whose line loses more than a port",
    limit: "advisory: are two figures swapped?",
    found: f`SUMPRODUCT((${passives.name}<>"")*((${passives.port_high}<${passives.port_low})+(${passives.kind}="tap")*(${passives.through_low}>${passives.port_low})>0))+SUMPRODUCT((${plates.name}<>"")*(${plates.loss_high}<${plates.loss_low}))`,
    passes: none,
    where: "Parts",
    places: f`IFERROR("; "&INDEX(${passives.name},MATCH(1,(${passives.name}<>"")*((${passives.port_high}<${passives.port_low})+(${passives.kind}="tap")*(${passives.through_low}>${passives.port_low})>0),0)),"")&IFERROR("; "&INDEX(${plates.name},MATCH(1,(${plates.name}<>"")*(${plates.loss_high}<${plates.loss_low}),0)),"")`,
    advice: true,
  },
  "runs out of range": {
    what: "Runs that are not between their shortest and their longest",
    limit: "none",
    ...ofOutlets(
      f`((${rooms.longest}<>"")*(${rooms.longest}<${rooms.run})+(${rooms.shortest}<>"")*(${rooms.shortest}>${rooms.run})>0)`,
    ),
    passes: none,
    where: lookAt("Rooms", rooms.shortest, rooms.longest),
  },
  "ports overfed": {
    what: "Splitters and taps that feed more than they have ports",
    limit: "none",
    found: ofBranches(f`IFERROR(${branches.fed}>${branches.ways},1)`),
    passes: none,
    where: lookAt("Branches", branches.fed),
  },
  "cables overfed": {
    // Each would get the full level, as if a splitter cost nothing.
    what: "Head units feeding several items without a splitter",
    limit: "none: use a splitter; enter a second output as another head unit",
    found: ofHeads(f`${countOf(branches.from_key, heads.id)}+${countOf(rooms.from_key, heads.id)}>1`),
    passes: none,
    where: lookAt("Branches, Rooms", rooms.from),
  },
  "too many tuners": {
    what: "Head units with more tuners than user bands",
    limit: "none",
    found: ofHeads(f`IFERROR(${heads.capacity}="high",TRUE)`),
    passes: none,
    where: lookAt("Head units", heads.capacity),
  },
  "no user band": {
    what: "Rows of Rooms without a user band",
    limit: "none",
    ...ofOutlets(f`ISERROR(${rooms.bands})*1`),
    passes: none,
    where: lookAt("Rooms", rooms.bands),
  },
  "short of volts": {
    what: "Head units short of volts, or whose volts could not be found",
    limit: "none",
    found: ofHeads(f`IFERROR(${heads.power}="low",TRUE)`),
    passes: none,
    where: lookAt("Head units", heads.power),
  },
  "supply stopped": {
    what: "Supplies with a splitter or tap in their path that blocks power",
    limit: "none",
    found: ofHeads(f`IFERROR(${heads.stops}>0,1)`),
    passes: none,
    where: lookAt("Head units", heads.stopped),
  },
  "supply overloaded": {
    what: "Head units that draw more than the maximum current of their supply",
    limit: "none",
    found: ofHeads(f`IFERROR(${heads.together}>${heads.amps},1)`),
    passes: none,
    where: lookAt("Head units", heads.together),
  },
  "two supplies": {
    what: "Head units that share a supply and also name one of their own",
    limit: "none",
    found: ofHeads(f`(${heads.shares}<>"")*(${heads.supply}<>"")`),
    passes: none,
    where: lookAt("Head units", heads.shares),
  },
  "beam obstructed": {
    what: "Slots that the beam does not clear",
    limit: "none",
    found: { of: slots.slot, bad: f`IFERROR(${sight.verdict}="low",TRUE)` },
    passes: none,
    where: "Sightline",
  },
  "slots to look at": {
    what: "There are orbital slots",
    limit: "1 or more",
    found: f`SUMPRODUCT(--(${slots.slot}<>""))`,
    passes: some,
    where: "Site",
  },
} satisfies Readonly<Record<string, CheckWords>>;
