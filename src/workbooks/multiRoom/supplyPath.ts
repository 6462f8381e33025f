/** What feeds a head unit, and the resistance between the two: the workings of Head units. */
import { f, type Formula, type Named } from "../../formula/build";
import { sumOf } from "./nameKeys";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import { cables, supplies, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { corner, site } from "./names/site";

export const TYPE = f`MATCH(${heads.type},${units.name},0)`;
const SUPPLY = f`MATCH(${heads.source},${supplies.name},0)`;

/** Along the branches from where the supply feeds in; nothing where that is the head unit's own cable. */
const along = (sum: Named): Formula =>
  f`IF(${heads.id}="","",IF((${heads.via}="")+(${heads.via}=${heads.id})>0,0,INDEX(${sum},MATCH(${heads.via},${branches.id},0))))`;

/** Of the outlet whose receiver feeds; blank where the supply sits elsewhere. A branch of that name comes first. */
const ofFeedingOutlet = (column: Named): Formula =>
  f`IF(${heads.id}="","",IF(${heads.at}="","",IF(ISERROR(MATCH(${heads.at},${branches.id},0)),IFERROR(INDEX(${column},MATCH(${heads.at},${rooms.outlet},0)),""),"")))`;

export const supplyPath = {
  supplied: f`IF(${heads.id}="","",INDEX(${supplies.volts},${SUPPLY}))`,
  draw: f`IF(${heads.id}="","",INDEX(${units.load},${TYPE}))`,
  kind: f`IF(${heads.id}="","",INDEX(${units.kind},${TYPE}))`,
  via: f`IF(${heads.id}="","",IF(${heads.at}="","",IF(ISERROR(MATCH(${heads.at},${branches.id},0)),INDEX(${rooms.from},MATCH(${heads.at},${rooms.outlet},0)),${heads.at})))`,
  // Its own cable and that run side by side: one call works out the loop of both.
  lead_cable: f`IF(${heads.cable}="","",${heads.cable})`,
  run_cable: ofFeedingOutlet(rooms.cable),
  lead_length: f`IF(${heads.length}="","",${heads.length})`,
  run_length: ofFeedingOutlet(rooms.run),
  ohms: f`RIG.LOOPOHMS(${heads.cables},${heads.lengths},INDEX(${corner.temperature},1,4),${site.unit},${cables.table})`,
  along: along(branches.loss.ohms),
  path: f`IF(${heads.id}="","",${heads.shared}+${heads.ohms.lead}+${heads.along}+IF(${heads.ohms.run}="",0,${heads.ohms.run}))`,
  stops: along(branches.loss.stops),
  place: along(branches.loss.place),
  current: f`IF(${heads.id}="","",IF(IFERROR(${heads.kind}="W",FALSE),${heads.draw}/${heads.volts},${heads.draw}))`,
  together: f`IF(${heads.id}="","",${sumOf(heads.current, heads.feed_key, heads.feed)})`,
  amps: f`IF(${heads.id}="","",INDEX(${supplies.amps},${SUPPLY}))`,
  // A supply that feeds in at a branch or an outlet drops along the cables, and not the same for every leg.
  legs: f`IF(${heads.id}="","",IF(${heads.at}="",${heads.shared_end},""))`,
};
