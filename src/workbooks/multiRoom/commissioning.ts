import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { commission } from "./names/commissioning";
import { diagnosis } from "./names/diagnosis";
import { feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { rooms } from "./names/rooms";
import { aims } from "./names/sightline";
import { lesser, ofALevel } from "./rowFormulas";
import { commissioningLimits } from "./names/site";

const ofEachOutlet = (formula: Formula): Formula => f`IF(${rooms.outlet}="","",${formula})`;

/** Blank where nothing was entered or found. */
const entered = (from: Named): Formula => f`IF(${from}="","",${from})`;

/** How far outside the predicted range: zero inside it, and nothing where no number was read or none is due. */
const off = (built: Named, from: Named, to: Named): Formula =>
  f`IF(ISNUMBER(${built})*ISNUMBER(${from})>0,(${built}-${to})*(${built}>${to})+(${built}-${from})*(${built}<${from}),"")`;

/** More than Diagnosis has lines. */
const NO_LINE = 99;

/** The line of Diagnosis that names a place; more than there are lines where none does. */
const lineOf = (place: Named): Formula =>
  ofEachOutlet(f`IF(${place}="",${NO_LINE},IFERROR(MATCH(${place},${diagnosis.where},0),${NO_LINE}))`);

/** The dish on which an outlet's head unit is the feed; blank is the only one. */
const ownDish = f`INDEX(${heads.dish},MATCH(${rooms.place.head},${heads.id},0))`;

export const commissioningSheet: SheetDefinition = {
  name: "Commissioning",
  kind: "print",
  intro:
    "For the crew: what each outlet should show, and what it shows. Enter what is measured on Rooms, in its last columns.",
  print: { orientation: "landscape", through: "chance", repeatHeads: true },
  parts: [
    {
      kind: "text",
      heading: "Order of work, with its reasons",
      lines: [
        "1. Fit and bond by the local code and licensed practice; keep clear of overhead lines; safe footing first. Nothing that follows is worth a fall.",
        "2. Give the head unit its minimum volts before aiming: with less it starts late or not at all. Receivers feed it over the cable (EN 50494, EN 50607); a kind of higher voltage needs its own supply first.",
        "3. Align the first slot; set the tilt on the second, because a tilt turns the dish about the first; peak by equal drops either side, where the beam falls steeply. See Alignment.",
        "4. While you aim, let only one thing command the head unit, the meter or one receiver: another that tunes meanwhile changes what the meter reads (common practice, no source).",
        "5. Measure each run at the lowest and the highest frequency, and its volts: water, wrong cable and unrated splitters show at the highest frequency first.",
        "6. Switch off what feeds the cable before a connector is opened or made: under power it can short the supply (common practice, no source).",
      ],
    },
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "The minimum is with the cable hot, the maximum with it cold; a measured level may lie outside by the tolerance on Site. The likely cause and its probability come from Diagnosis, whose model is on Causes.",
        "Volts: at the outlet, its receiver and all others unplugged, supply on. Where a splitter's diodes pass power only towards the head unit, none should stand there.",
        "Under load measure at the head unit: Head units says what it has with all receivers off, one on alone, and all on.",
      ],
    },
    blockPart(commission, {
      heading: "Outlets",
      prepared: 30,
      mirrors: rooms,
      formulas: {
        outlet: ofEachOutlet(f`${rooms.outlet}`),
        // Joined by & they would be one text of all rows in the desk's engine.
        floor: entered(rooms.floor),
        room: entered(rooms.room),
        head: entered(rooms.place.head),
        bands: entered(rooms.place.bands),
        centres: entered(rooms.place.centres),
        low_from: ofALevel(f`${rooms.level.low_hot}`),
        low_to: ofALevel(f`${rooms.level.low_cold}`),
        low: entered(rooms.built_low),
        high_from: ofALevel(f`${rooms.level.high_hot}`),
        high_to: ofALevel(f`${rooms.level.high_cold}`),
        high: entered(rooms.built_high),
        volts_due: entered(rooms.volts.supplies),
        volts: entered(rooms.built_volts),
        verdict: f`IF(${rooms.outlet}="","",IF((${rooms.built_low}="")+(${rooms.built_high}="")>0,"to measure",IF(ISTEXT(${rooms.built_low})+ISTEXT(${rooms.built_high})+(${commission.low_from}="")+(${commission.high_from}="")+IFERROR((ABS(${commission.low_off})>${commissioningLimits.tolerance})+(ABS(${commission.high_off})>${commissioningLimits.tolerance}),1)+IFERROR((${commission.volts_off}<>"")*(ABS(${commission.volts_off})>${commissioningLimits.volts_tolerance}),0)>0,"look","ok")))`,
        cause: f`IF(${rooms.outlet}="","",IF(IFERROR(${commission.verdict}="look",FALSE),IFERROR(INDEX(${diagnosis.cause},${commission.line}),"see Diagnosis"),""))`,
        chance: f`IF(${rooms.outlet}="","",IF(IFERROR(${commission.verdict}="look",FALSE),IFERROR(INDEX(${diagnosis.probability},${commission.line}),""),""))`,
        low_off: off(rooms.built_low, commission.low_from, commission.low_to),
        high_off: off(rooms.built_high, commission.high_from, commission.high_to),
        volts_off: f`IF(ISNUMBER(${rooms.built_volts}),IF(IFERROR(${commission.volts_due}="",TRUE),"",${rooms.built_volts}-${commission.volts_due}),"")`,
        due_low: ofALevel(f`(${rooms.level.low_cold}+${rooms.level.low_hot})/2`),
        due_high: ofALevel(f`(${rooms.level.high_cold}+${rooms.level.high_hot})/2`),
        at_outlet: lineOf(rooms.outlet),
        at_branch: lineOf(rooms.from),
        at_head: lineOf(rooms.place.head),
        // A dish is above the head unit that is its feed, or at the other end of the feeders.
        at_above: ofEachOutlet(
          f`IF(${rooms.place.head}="",${NO_LINE},IFERROR(MATCH(IFERROR(INDEX(${feeders.from},MATCH(${rooms.place.head},${feeders.to},0)),IF(${ownDish}="",INDEX(${aims.dish},2),${ownDish})),${diagnosis.where},0),${NO_LINE}))`,
        ),
        near: ofEachOutlet(lesser(commission.at_outlet, commission.at_branch)),
        far: ofEachOutlet(lesser(commission.at_head, commission.at_above)),
        line: ofEachOutlet(lesser(commission.near, commission.far)),
      },
    }),
  ],
};
