/** Checks of the names, the tree, the levels and the supply. */
import { call, chain, f, text, type Formula, type Named } from "../../formula/build";
import {
  countedInAll,
  firstBad,
  inLists,
  lookAt,
  NONE_FOUND as none,
  SOME_FOUND as some,
} from "../checkPlaces";
import type { Block, Check, CheckWords, CountedRows } from "../definition";
import { belowOf } from "../layOutBlock";
import { commissioningSheet } from "./commissioning";
import { LONG_SHEETS, OTHER_SHEETS } from "./filledSheets";
import { countOf, countOfOwn } from "./nameKeys";
import { branches } from "./names/branches";
import { places } from "./names/crew";
import { dishes, feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { kinds, labour, routes } from "./names/labour";
import { count } from "./names/materials";
import { passives, plates, receivers, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { aims, sight } from "./names/sightline";
import { rests, site, slots, taxes } from "./names/site";
import { made, options, provisional } from "./names/terms";
import { PRICED } from "./priceChecks";
import { GREATEST_SLOPE } from "./site";

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
/** Ports of outlets and of devices. */
const ofPorts = (word: string): Pick<Check, "found" | "places"> =>
  inLists([
    { of: rooms.outlet, bad: f`IFERROR(${rooms.check.port}=${text(word)},FALSE)` },
    { of: branches.id, bad: f`IFERROR(${branches.check.port}=${text(word)},FALSE)` },
  ]);
/** Rows of another list in which a column says a word. */
const withWord = (word: string, of: Named, column: Named): CountedRows => ({
  of,
  bad: f`IFERROR(${column}=${text(word)},FALSE)`,
});
/** Rows of a list whose names are calculated: in a sum over an error in them hosts differ, so they are only named by it. */
export const ofCalculated = (of: Named, bad: Formula): Pick<Check, "found" | "places"> => ({
  found: countedInAll([bad]),
  places: firstBad(of, bad),
});
/** Filled rows of another list that are not said to be sound; nothing is said of any where the job as a whole can't be read. */
const notSound = (of: Named, row: Named): CountedRows => ({ of, bad: f`IFERROR(${row}<>"ok",TRUE)` });
/** Rows of which an earlier one has the name. By first places rather than by counting, which would compare every row with every other. */
const repeated = (of: Named): Formula => f`IFERROR(MATCH(${of},${of},0),0)<>ROW(${of})-MIN(ROW(${of}))+1`;

/** Of every list on Parts, of the branches, head units and options: a name that stands twice is looked up in its first row. */
const NAMED_ONCE: readonly Named[] = [
  taxes.name,
  ...PRICED.map(({ name }) => name),
  labour.name,
  routes.name,
  options.name,
  receivers.kind,
  dishes.name,
  branches.id,
  heads.id,
  types.name,
];
export const twice = (of: Named): Formula => f`(${of}<>"")*(${repeated(of)})>0`;

/** Names that are looked up, and the lists in which they are. */
const WITH_WILDCARDS: readonly Named[] = [
  ...PRICED.map(({ name }) => name),
  ...[branches.id, heads.id, kinds.name, branches.from, branches.device, branches.cable],
  ...[heads.type, heads.dish, heads.supply, heads.cable, dishes.name, dishes.feed, dishes.part],
  ...[feeders.from, feeders.to, feeders.cable],
  ...[rooms.from, rooms.cable, rooms.plate, rooms.split, rooms.kind, rooms.type],
  ...[taxes.name, options.name, options.tax, options.instead, provisional.tax, made.option],
  ...[rooms.floor, rooms.room, places.floor, places.room, rests.cable],
  ...[types.name, types.cable, types.plate, types.split, types.kind, types.fitting],
];
export const wild = (of: Named): Formula =>
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
  "dishes wrong": {
    what: "Dishes that cannot be worked out",
    limit: "none: what is wrong stands in their row",
    found: notSound(dishes.name, dishes.seen.row),
    passes: none,
    where: lookAt("Dishes", dishes.seen.row),
  },
  "feeders wrong": {
    what: "Feeders that cannot be worked out",
    limit: "none: what is wrong stands in their row",
    found: notSound(feeders.from, feeders.check.row),
    passes: none,
    where: lookAt("Dishes", feeders.check.row),
  },
  "head units wrong": {
    what: "Head units that cannot be worked out",
    limit: "none: what is wrong stands in their row",
    found: notSound(heads.id, heads.check.row),
    passes: none,
    where: lookAt("Head units", heads.check.row),
  },
  "branches unfed": {
    what: "Devices that nothing feeds, or that cannot be worked out",
    limit: "none: what is wrong stands in their row",
    found: notSound(branches.id, branches.check.row),
    passes: none,
    where: lookAt("Distribution", branches.check.row),
  },
  "outlets unfed": {
    what: "Outlets that nothing feeds, or that cannot be worked out",
    limit: "none: what is wrong stands in their row",
    ...outletsWithWord("bad", rooms.check.row),
    found: f`MAX(COUNTIF(${rooms.check.row},"bad"),${count.outlets}-COUNTIF(${rooms.check.row},"ok"))`,
    passes: none,
    where: lookAt("Rooms", rooms.check.row),
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
    where: "Parts, Room types, Dishes, Head units, Distribution, Terms",
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
    where: "Parts, Dishes, Head units, Distribution, and where their names stand",
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
  "level too low": {
    what: "Outlets too weak",
    limit: "none below the minimum level",
    ...outletsWithWord("low", rooms.check.level),
    passes: none,
    where: lookAt("Rooms", rooms.weakest),
  },
  "level too high": {
    what: "Outlets too strong",
    limit: "none above the maximum level",
    ...outletsWithWord("high", rooms.check.level),
    passes: none,
    where: lookAt("Rooms", rooms.strongest),
  },
  "slope too steep": {
    what: `Outlets whose levels lie more than ${GREATEST_SLOPE} dB apart over the range`,
    limit: `none: ${GREATEST_SLOPE} dB between channels at one outlet (EN 60728-1, from memory)`,
    ...outletsWithWord("steep", rooms.check.slope),
    passes: none,
    where: lookAt("Rooms", rooms.check.slope),
  },
  "carrier to noise too low": {
    what: "Outlets with too little carrier to noise, in clear sky or at the availability wanted",
    limit: "none below what the modulation needs with its margin (EN 302 307-1, EN 300 421)",
    ...outletsWithWord("low", rooms.check.noise),
    passes: none,
    where: lookAt("Rooms", rooms.check.noise),
  },
  "carrier to noise not asked": {
    what: "Slots without EIRP, symbol rate or modulation: carrier to noise is not judged",
    limit: "advisory: the dish's size has no effect then",
    found: {
      of: slots.slot,
      bad: f`(${slots.eirp}="")+(${slots.symbol_rate}="")+(${slots.modulation}="")>0`,
    },
    passes: none,
    where: lookAt("Site", slots.eirp, slots.symbol_rate, slots.modulation),
    advice: true,
  },
  "carrier to noise not judged": {
    what: "Outlets whose carrier to noise is not judged",
    limit: "advisory: a noise figure, gain or EIRP on their way is blank",
    ...ofOutlets(
      f`IFERROR((${rooms.check.row}="ok")*(${rooms.check.noise}="")*(SUMPRODUCT((${slots.eirp}<>"")*(${slots.symbol_rate}<>"")*(${slots.modulation}<>""))>0),0)`,
    ),
    passes: none,
    where: lookAt("Parts", units.noise),
    advice: true,
  },
  "outlets dead": {
    what: "Outlets whose receiver cannot command its head unit",
    limit: "none: it gets no user band then (EN 50494, EN 50607)",
    ...outletsWithWord("dead", rooms.check.commands),
    passes: none,
    where: lookAt("Rooms", rooms.check.commands),
  },
  "commands not judged": {
    what: "Kinds of head unit in use that do not say how they are commanded",
    limit: "advisory: ask the maker, and enter it on Parts: not judged until then",
    found: {
      of: units.name,
      // Of a maker's own only where it matters: a part on the way blocks direct current.
      bad: f`((${units.standard}="")+(${units.standard}="maker's own")*(${units.pass_block}="")*(COUNTIF(${rooms.check.commands},"not judged")>0)>0)*(${countOf(heads.type_key, units.name)}>0)>0`,
    },
    passes: none,
    where: lookAt("Parts", units.standard),
    advice: true,
  },
  "applied volts too high": {
    what: "Receivers at whose connector more volts stand than they bear",
    limit: "none above their maximum applied volts",
    ...outletsWithWord("high", rooms.check.applied),
    passes: none,
    where: lookAt("Rooms", rooms.check.applied),
  },
  "connectors too few": {
    what: "Outlets with more receivers than connectors",
    limit: "none: name what splits them",
    ...outletsWithWord("too many", rooms.check.connectors),
    passes: none,
    where: lookAt("Rooms", rooms.split),
  },
  "through ports open": {
    what: "Through ports that nothing closes",
    limit: "none: each goes on, or ends in an end resistor that blocks power",
    ...ofPorts("left open"),
    passes: none,
    where: "Rooms, Distribution, Site",
  },
  "resistors on power": {
    what: "End resistors that do not block power where volts stand",
    limit: "none: 75 Ω on 24 V is 7.7 W",
    ...ofPorts("passes power"),
    passes: none,
    where: "Rooms, Distribution, Parts",
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
      f`IFERROR((${rooms.longest_used}<>"")*(${rooms.longest_used}<${rooms.run_used})+(${rooms.shortest_used}<>"")*(${rooms.shortest_used}>${rooms.run_used})>0,FALSE)`,
    ),
    passes: none,
    where: lookAt("Rooms", rooms.shortest, rooms.longest),
  },
  "outlets of a room": {
    what: "Outlets in rooms that have another number of them than their type says",
    limit: "none: add the outlet, or change the number on Room types",
    ...ofOutlets(
      f`IFERROR((${rooms.room_key}<>"")*(INDEX(${types.outlets},${rooms.type_row})<>"")*(${countOfOwn(rooms.room_key)}<>INDEX(${types.outlets},${rooms.type_row})),0)`,
    ),
    passes: none,
    where: lookAt("Rooms", rooms.room, rooms.type),
  },
  "types unused": {
    what: "Room types that no outlet has",
    limit: "advisory",
    found: { of: types.name, bad: f`IFERROR(${types.used}=0,FALSE)` },
    passes: none,
    where: lookAt("Room types", types.name),
    advice: true,
  },
  "no user band": {
    what: "Outlets without the user bands that they need",
    limit: "none: of a number, width and standard that the receiver can use, and nobody else's",
    ...outletsWithWord("bad", rooms.check.bands),
    passes: none,
    where: lookAt("Rooms", rooms.check.bands),
  },
  "short of volts": {
    what: "Head units short of volts, with all receivers off, one on alone, or all on",
    limit: "none below their minimum volts",
    found: withWord("low", heads.id, heads.check.power),
    passes: none,
    where: lookAt("Head units", heads.fed.least),
  },
  "feeds short of volts": {
    what: "Head units whose feed on the dish gets too few volts",
    limit: "none below its minimum volts",
    found: withWord("low", heads.id, heads.check.feed),
    passes: none,
    where: lookAt("Head units", heads.check.feed),
  },
  "amplifiers short of volts": {
    what: "Amplifiers short of volts",
    limit: "none below their minimum volts",
    found: withWord("low", branches.id, branches.check.power),
    passes: none,
    where: lookAt("Distribution", branches.check.volts),
  },
  "supply overloaded": {
    what: "Supplies at head units that give more than their maximum current",
    limit: "none",
    found: withWord("high", heads.id, heads.check.current),
    passes: none,
    where: lookAt("Head units", heads.fed.supplied),
  },
  "devices overloaded": {
    what: "Devices and inserters with more than their maximum current",
    limit: "none",
    found: withWord("high", branches.id, branches.check.current),
    passes: none,
    where: lookAt("Distribution", branches.check.amps),
  },
  "amplifiers overdriven": {
    what: "Amplifiers with more output than their limit for the carriers that they carry",
    limit: "none: maximum output less 7.5·log10(carriers − 1) dB (from memory)",
    found: withWord("high", branches.id, branches.check.output),
    passes: none,
    where: lookAt("Distribution", branches.level.greatest),
  },
  "inputs out of range": {
    what: "Switches with a level at their inputs outside their limits",
    limit: "none",
    found: {
      of: heads.id,
      bad: f`IFERROR((${heads.check.input}="low")+(${heads.check.input}="high")>0,FALSE)`,
    },
    passes: none,
    where: lookAt("Head units", heads.check.input),
  },
  "supply unused": {
    what: "Supplies and inserters that feed nothing",
    limit: "none",
    ...inLists([
      { of: heads.id, bad: f`IFERROR(${heads.check.supply}="unused",FALSE)` },
      { of: branches.id, bad: f`IFERROR(${branches.check.current}="unused",FALSE)` },
    ]),
    passes: none,
    where: "Head units, Distribution",
  },
  "slots without dish": {
    what: "Slots of Site that no dish on Dishes receives",
    limit: "none: whoever ordered them would go without",
    found: {
      of: slots.slot,
      // Of a dish only two are known here: with one of more nothing is said.
      bad: f`(COUNTIF(${dishes.name},"?*")>0)*IFERROR(MAX(${dishes.seen.count})<3,FALSE)*(${countOf(aims.a_key, slots.slot)}+${countOf(aims.b_key, slots.slot)}=0)`,
    },
    passes: none,
    where: lookAt("Dishes", dishes.slots),
  },
  "beam obstructed": {
    what: "Slots that the beam does not clear",
    limit: "none",
    found: { of: slots.slot, bad: f`IFERROR((${sight.verdict}="low")*(${sight.own}=0),TRUE)` },
    passes: none,
    where: "Sightline",
  },
  "dish obstructed": {
    what: "Dishes whose beam does not clear their own obstacle",
    limit: "none",
    ...ofCalculated(aims.dish, f`IFERROR((${aims.verdict}="low")*(${aims.given}=1),TRUE)`),
    passes: none,
    where: lookAt("Sightline", aims.verdict),
  },
  "slots to look at": {
    what: "There are orbital slots",
    limit: "1 or more",
    found: f`SUMPRODUCT(--(${slots.slot}<>""))`,
    passes: some,
    where: "Site",
  },
} satisfies Readonly<Record<string, CheckWords>>;
