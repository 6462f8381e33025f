/**
 * What a figure usually is, by its kind: one line for each input that has a
 * range of its own. A cell's rule allows more; what lies outside is looked at
 * before it goes out. Where no standard is named it is common practice without
 * a source: bounds that no usual job comes near.
 */
import { estimate } from "../../workbooks/multiRoom/names";
import { taxes } from "../../workbooks/multiRoom/names/site";
import type { PIECES } from "../../workbooks/multiRoom/names/pieces";

export interface Usual {
  readonly name: string;
  readonly least?: number;
  readonly most?: number;
  /** The bounds are lengths in metres. */
  readonly metres?: true;
  /** The bounds are for each metre. */
  readonly eachMetre?: true;
  /** A 0 is judged too; elsewhere it has a rule of its own. */
  readonly zeroToo?: true;
  readonly because: string;
}

const PRACTICE = "(common practice, no source)";
const { site, slots, rooms, types, labour, routes, cables, passives, units, supplies, plates, feeds } =
  estimate;

export const USUAL: readonly Usual[] = [
  { name: site.tax.name, most: 0.3, because: "no country's tax on such work is higher (from memory)" },
  { name: taxes.rate.name, least: 0.02, most: 0.3, because: "of countries' reduced rates (from memory)" },
  { name: site.contingency.name, most: 0.25, because: PRACTICE },
  { name: site.overhead.name, most: 0.6, because: PRACTICE },
  { name: site.margin.name, most: 0.6, because: PRACTICE },
  { name: site.waste.name, most: 0.25, because: PRACTICE },
  { name: site.slack.name, most: 10, metres: true, because: PRACTICE },
  {
    name: site.clearance.name,
    least: 1,
    most: 15,
    zeroToo: true,
    because: `for the width of the beam and what grows ${PRACTICE}`,
  },
  // ITU-R P.837: deserts have some 10, the tropics over 100 (from memory).
  { name: site.rain_rate.name, least: 8, most: 180, because: "by the maps of ITU-R P.837 (from memory)" },
  { name: site.availability.name, least: 99.5, because: `for reception in buildings ${PRACTICE}` },
  { name: site.cold.name, most: 35, because: `where a cable leaves the house ${PRACTICE}` },
  { name: site.hot.name, least: 10, most: 80, because: `where a cable leaves the house ${PRACTICE}` },
  { name: site.dish.name, least: 0.3, most: 4, because: `for reception in buildings ${PRACTICE}` },
  { name: site.dish_loss.name, most: 3, because: PRACTICE },
  { name: site.noise_margin.name, most: 5, because: PRACTICE },
  ...[site.spare_devices, site.spare_heads, site.spare_plates, site.spare_fittings, site.spare_runs].map(
    ({ name }): Usual => ({ name, most: 0.3, because: PRACTICE }),
  ),
  { name: estimate.commissioningLimits.tolerance.name, most: 6, because: PRACTICE },
  { name: estimate.commissioningLimits.volts_tolerance.name, most: 3, because: PRACTICE },
  { name: slots.eirp.name, least: 28, most: 65, because: `for reception with a dish ${PRACTICE}` },
  { name: slots.symbol_rate.name, least: 1, most: 75, because: `for broadcasts ${PRACTICE}` },
  { name: rooms.quantity.name, most: 4, because: `receivers at one outlet ${PRACTICE}` },
  { name: types.quantity.name, most: 4, because: `receivers at one outlet ${PRACTICE}` },
  { name: types.outlets.name, most: 6, because: `outlets in one room ${PRACTICE}` },
  { name: types.minutes.name, least: 1, most: 240, because: `in minutes, for one outlet ${PRACTICE}` },
  {
    name: estimate.feeders.length.name,
    most: 50,
    metres: true,
    because: `from a dish or switch ${PRACTICE}`,
  },
  { name: estimate.dishes.size.name, least: 0.3, most: 4, because: `for reception in buildings ${PRACTICE}` },
  { name: estimate.dishes.off_focus.name, most: 4, because: PRACTICE },
  { name: labour.difficulty.name, least: 0.5, most: 3, because: PRACTICE },
  { name: routes.difficulty.name, least: 0.5, most: 3, because: PRACTICE },
  { name: estimate.places.factor.name, least: 0.5, most: 3, because: PRACTICE },
  { name: routes.minutes.name, least: 0.1, most: 15, eachMetre: true, because: PRACTICE },
  { name: estimate.fittings.per_outlet.name, most: 100, because: `for one outlet ${PRACTICE}` },
  { name: estimate.fittings.per_branch.name, most: 100, because: `for one device ${PRACTICE}` },
  { name: estimate.fittings.per_head.name, most: 200, because: `for one head unit ${PRACTICE}` },
  { name: cables.reel.name, least: 25, metres: true, because: PRACTICE },
  // Series 6 and 11 of copper or steel have 1 to 15 (makers' sheets, from memory).
  {
    name: cables.loop.name,
    least: 0.3,
    most: 30,
    because: "in ohm for 100 m or ft, both ways (from memory)",
  },
  { name: passives.isolation.name, least: 8, because: `between the ports of a device ${PRACTICE}` },
  { name: plates.isolation.name, least: 8, because: `between the ports of a device ${PRACTICE}` },
  { name: passives.noise.name, most: 15, because: PRACTICE },
  { name: passives.gain_low.name, most: 40, because: `for one amplifier ${PRACTICE}` },
  { name: passives.gain_high.name, most: 40, because: `for one amplifier ${PRACTICE}` },
  { name: passives.load.name, most: 1, because: `for a line amplifier, in amperes ${PRACTICE}` },
  { name: plates.loss_low.name, most: 25, because: PRACTICE },
  { name: plates.loss_high.name, most: 25, because: PRACTICE },
  { name: supplies.amps.name, most: 10, because: PRACTICE },
  { name: supplies.volts.name, least: 9, because: PRACTICE },
  { name: units.noise.name, most: 15, because: PRACTICE },
  { name: feeds.noise.name, most: 3, because: `for the feed of a dish ${PRACTICE}` },
  // A receiver gives 350 to 500 mA at the most, and feeds are made to live on that (from memory).
  { name: feeds.load.name, most: 0.8, because: "in amperes: receivers give at most 0.5 (from memory)" },
  { name: estimate.crew.size.name, most: 8, because: PRACTICE },
  { name: estimate.crew.hours.name, least: 5, most: 12, because: `for one day ${PRACTICE}` },
];

/** Minutes for one piece, whatever the firm: common practice, no source, a factor of three to either side of it. */
export const USUAL_MINUTES: Readonly<
  Partial<Record<(typeof PIECES)[number], readonly [least: number, most: number]>>
> = {
  connector: [1, 20],
  "grounding block": [3, 60],
  "end resistor": [0.5, 20],
  "receiver lead": [0.5, 20],
  "mains socket": [5, 180],
  dish: [40, 600],
  "further slot on a dish": [10, 140],
  feed: [3, 40],
  "head unit on a dish": [12, 200],
  switch: [10, 180],
  splitter: [4, 60],
  tap: [4, 60],
  amplifier: [5, 90],
  equaliser: [2, 45],
  attenuator: [2, 45],
  filter: [2, 45],
  supply: [4, 90],
  "wall plate": [3, 45],
  "dish bonding conductor": [10, 240],
  "outlet to measure": [1, 40],
};
