/**
 * The second demonstration job: an invented apartment block of 240 outlets on
 * ten floors. One dish with two feeds; a switch on each floor, in two cascades
 * down the riser of five floors each; each of a switch's four outputs serves a
 * corridor box of three flats with its eight user bands. Parts and rates are
 * those of the guest house with a few more; everything in it is made up. All its
 * checks pass.
 *
 * Two cascades, because the last of ten switches would get too little: each
 * loses what the ones before it hand on, and its feeders. A mains pack at the
 * last switch of each carries the whole cascade.
 */
import type { JobInputs } from "../definition";
import { guestHouse } from "./guestHouse";

type Row = Readonly<Record<string, number | string>>;

const FLOORS = 10;
const FLATS = 12;
/** Metres from a floor's switch to each of the corridor boxes. */
const BOX_LEADS = [4, 7, 9, 12] as const;
const FLATS_PER_BOX = FLATS / BOX_LEADS.length;
/** Floors of one cascade. */
const CASCADE = 5;
const METRES_A_FLOOR = 3;

/** From the roof down, as the feeders run. */
const floors = Array.from({ length: FLOORS }, (_, index) => FLOORS - index);
const two = (value: number): string => String(value).padStart(2, "0");
const switchOf = (floor: number): string => `H${two(floor)}`;
const boxOf = (floor: number, box: number): string => `R${two(floor)}-${box + 1}`;
const isFirst = (floor: number): boolean => floor % CASCADE === 0;
const isLast = (floor: number): boolean => floor % CASCADE === 1;

const feeders: readonly Row[] = floors.map((floor) => ({
  from: isFirst(floor) ? "D1" : switchOf(floor + 1),
  to: switchOf(floor),
  cable: "outdoor drop",
  length: isFirst(floor) ? 6 + METRES_A_FLOOR * (FLOORS - floor) : METRES_A_FLOOR,
  route: "riser",
}));

const heads: readonly Row[] = floors.map((floor) => ({
  id: switchOf(floor),
  type: "switch, 4 outputs of 8 bands",
  ...(isLast(floor) && { supply: "mains pack 18 V, 2.5 A" }),
}));

/** A 6-way splitter in each corridor box, on an output of its own. */
const branches: readonly Row[] = floors.flatMap((floor) =>
  BOX_LEADS.map((length, box) => ({
    id: boxOf(floor, box),
    from: switchOf(floor),
    device: "6-way splitter",
    cable: "outdoor drop",
    length,
  })),
);

/** Two outlets a flat, three flats a box; one flat in three has a recorder with two tuners. */
const rooms: readonly Row[] = [...floors].reverse().flatMap((floor) =>
  Array.from({ length: FLATS }, (_, flat) => flat).flatMap((flat) =>
    ["living room", "bedroom"].map((room, outlet) => ({
      floor: `floor ${floor}`,
      room: `flat ${floor}${two(flat + 1)}, ${room}`,
      outlet: `${two(floor)}-${two(flat + 1)}-${outlet + 1}`,
      receiver: outlet === 0 && flat % FLATS_PER_BOX === 0 ? "recorder, 2 tuners" : "receiver",
      quantity: 1,
      from: boxOf(floor, Math.floor(flat / FLATS_PER_BOX)),
      run: 4 + ((flat * 7 + outlet * 5 + floor) % 11),
      kind: "flat",
    })),
  ),
);

const { blocks: house = {}, fields } = guestHouse;
const { supplier, priced, until } = house.units![0] as { supplier: string; priced: number; until: number };
const PRICED = { supplier, priced, until };

export const apartmentBlock: JobInputs = {
  fields: {
    ...fields,
    site_job: "Apartment block, 240 outlets (demonstration)",
    site_quote: "D-240",
    site_dish: 1.1,
    // It would take more pages than all else.
    proposal_diagram: "no",
  },
  blocks: {
    ...house,
    units: [
      ...house.units!,
      {
        name: "switch, 4 outputs of 8 bands",
        bands: 8,
        out_low: 88,
        out_high: 86,
        least: 12,
        load: 0.25,
        kind: "A",
        sits: "fed",
        standard: "EN 50494",
        outputs: 4,
        plan: "8 bands",
        noise: 8,
        slots: 2,
        feeders: 2,
        in_low: 52,
        in_high: 95,
        onward_low: 1.5,
        onward_high: 2.5,
        sense: 0.015,
        powers_feed: "yes",
        aiming: "read the meter on a feeder, before the switch",
        price: 236,
        ...PRICED,
      },
    ],
    feeds: [
      {
        name: "wideband feed, 4 outputs",
        outputs: 4,
        gain: 56,
        noise: 0.9,
        if_low: 290,
        if_high: 2340,
        load: 0.2,
        least: 11,
        price: 44,
        ...PRICED,
      },
    ],
    supplies: [
      ...house.supplies!,
      {
        name: "mains pack 18 V, 2.5 A",
        volts: 18,
        amps: 2.5,
        stands: "at the head unit",
        price: 52,
        ...PRICED,
      },
    ],
    fittings: house.fittings!.filter(({ name }) => name !== "dish 0.9 m with mount"),
    bonds: [
      { where: "mast of dish D1 to the earth bar", kind: "mast earthing, copper", size: 16, length: 9 },
      {
        where: "cable screens at the top of the riser",
        kind: "cable screen bond, unprotected",
        size: 4,
        length: 2,
      },
    ],
    options: [{ name: "outlet in the laundry", quantity: 1, each: 92, chosen: "no" }],
    provisional: [{ name: "opening a blocked floor of the riser", sum: 180 }],
    assumptions: [
      { text: "The riser, the corridor boxes and the ceiling voids are clear and may be used." },
      { text: "Receivers give their output 13 V at rest, and 0.4 A." },
      { text: "Mains sockets stand beside the switches of floors 1 and 6, put there by others." },
      { text: "Flats are open on the days agreed." },
    ],
    dishes: [
      {
        name: "D1",
        feed: "wideband feed, 4 outputs",
        off_focus: 1.5,
        part: "dish 1.1 m with mount",
        location: "flat roof, above the riser",
        mounting: "ballasted mast 60 mm",
        height: 31,
      },
    ],
    feeders,
    heads,
    branches,
    rooms,
  },
};
