import { f, text, type Formula } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { ofTheJob } from "./jobTables";
import { countOfKeys, keyOfAll, keysOf } from "./nameKeys";
import { places } from "./names/crew";
import { cables, plates } from "./names/parts";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { site } from "./names/site";
import { asEntered, BY_TYPE, NO_RECEIVER, orOfType, orUsual, ownEntries } from "./roomTypes";
import { ALERTS, lesser, ofALevel, verdictOf } from "./rowFormulas";

/** A run that is missing counts for nothing, and fails a check; hosts differ in what an empty text times a number is. */
const RUN = f`IF(${rooms.run_used}="",0,${rooms.run_used})`;

const NONE = text("");
/** The places that an outlet may go by: its room, that room on any floor, its floor. */
const PLACES = [
  keyOfAll(rooms.room, rooms.floor),
  keyOfAll(rooms.room, NONE),
  keyOfAll(NONE, rooms.floor),
] as const;

export const roomsSheet: SheetDefinition = {
  name: "Rooms",
  kind: "input",
  alerts: ALERTS,
  intro: "A row for each outlet. Fill the boxed columns; the others follow.",
  frozenColumns: 3,
  print: { orientation: "landscape", through: "strongest" },
  parts: [
    blockPart(rooms, {
      heading: "Outlets",
      prepared: 30,
      rowName: rooms.outlet,
      overLists: { line: rooms.type_row, lists: BY_TYPE.map((key) => [rooms[key], types[key]]) },
      // A type may give it; where it does not, the row verdict says that it is missing.
      others: { run: { required: f`(${rooms.type}="")` } },
      formulas: {
        verdict: verdictOf(rooms.outlet, rooms.check.row, [
          rooms.check.level,
          rooms.check.slope,
          rooms.check.noise,
          rooms.check.commands,
          rooms.check.bands,
          rooms.check.connectors,
          rooms.check.applied,
          rooms.check.port,
        ]),
        margin: ofALevel(f`${rooms.weakest}-${site.level_low}`),
        place: ofTheJob("OUTLETPLACES"),
        // Of the corners, and of its own user bands where an equaliser makes another frequency the weakest.
        weakest: ofALevel(
          lesser(
            lesser(f`${rooms.level.low_hot}`, f`${rooms.level.high_hot}`),
            f`IF(${rooms.level.own}="",${rooms.level.low_hot},${rooms.level.own})`,
          ),
        ),
        strongest: ofALevel(
          f`(${rooms.level.low_cold}+${rooms.level.high_cold}+ABS(${rooms.level.low_cold}-${rooms.level.high_cold}))/2`,
        ),
        level: ofTheJob("OUTLETLEVELS"),
        slope: ofALevel(f`${rooms.level.low_hot}-${rooms.level.high_hot}`),
        noise: ofTheJob("OUTLETNOISE"),
        volts: ofTheJob("OUTLETVOLTS"),
        check: ofTheJob("OUTLETCHECKS"),
        stretched_check: ofALevel(f`IF(${rooms.level.stretched}<${site.level_low},"low","ok")`),
        least: f`IF(${rooms.outlet}="","",IF(${rooms.shortest_used}="",${RUN}*(1-${site.run_tolerance}),${rooms.shortest_used}))`,
        most: f`IF(${rooms.outlet}="","",IF(${rooms.longest_used}="",${RUN}*(1+${site.run_tolerance}),${rooms.longest_used}))`,
        own: ownEntries(),
        floor_used: asEntered(rooms.floor),
        room_used: asEntered(rooms.room),
        outlet_used: asEntered(rooms.outlet),
        receiver_used: f`IF(${rooms.receiver}=${text(NO_RECEIVER)},"",${orOfType("receiver")})`,
        quantity_used: orOfType("quantity"),
        from_used: asEntered(rooms.from),
        cable_used: orUsual("cable", site.usual_cable),
        run_used: orOfType("run"),
        plate_used: orUsual("plate", site.usual_plate),
        route_used: orOfType("route"),
        port_used: asEntered(rooms.port),
        split_used: orOfType("split"),
        kept_used: asEntered(rooms.kept),
        shortest_used: orOfType("shortest"),
        longest_used: orOfType("longest"),
        kind_used: orOfType("kind"),
        parts_cost: f`IF(${rooms.outlet}="","",IF(${rooms.plate_used}="",0,INDEX(${plates.price},MATCH(${rooms.plate_used},${plates.name},0)))+${RUN}*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))`,
        // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6, less the likely one.
        expected_extra: f`IF(${rooms.outlet}="","",(${rooms.least}+${rooms.most}-2*${RUN})/6*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))`,
        // Of the same three points: ((high - low) / 6)².
        variance: f`IF(${rooms.outlet}="","",((${rooms.most}-${rooms.least})/6*INDEX(${cables.each},MATCH(${rooms.cable_used},${cables.name},0)))^2)`,
        difficulty: f`IF(${rooms.outlet}="","",IF(${rooms.where_key}="",1,INDEX(${places.factor},MATCH(${rooms.where_key},${places.key},0))))`,
        harder: f`IF(${rooms.outlet}="","",IF(IFERROR(${rooms.check.row}="ok",FALSE),(${rooms.difficulty}-1)*${RUN},0))`,
        from_key: keysOf(rooms.from),
        cable_key: keysOf(rooms.cable_used),
        plate_key: keysOf(rooms.plate_used),
        head_key: keysOf(rooms.place.head),
        split_key: keysOf(rooms.split_used),
        kind_key: keysOf(rooms.kind_used),
        type_key: keysOf(rooms.type),
        own_key: f`IF(${rooms.own}="","",${rooms.type_key})`,
        room_key: f`IF((${rooms.room}="")+(${rooms.type}="")>0,"",${keyOfAll(rooms.room, rooms.floor, rooms.type)})`,
        route_key: keysOf(
          f`IF(${rooms.outlet}="","",IF(${rooms.route_used}="",${site.usual_route},${rooms.route_used}))`,
        ),
        where_key: f`IF(${rooms.outlet}="","",${PLACES.reduceRight<Formula>(
          (otherwise, place) => f`IF(${countOfKeys(places.key, place)}>0,${place},${otherwise})`,
          NONE,
        )})`,
        type_row: f`IF(${rooms.type}="","",IFERROR(MATCH(${rooms.type},${types.name},0),""))`,
      },
    }),
  ],
};
