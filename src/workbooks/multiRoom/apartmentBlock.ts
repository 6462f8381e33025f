/**
 * The second demonstration job: an invented apartment block of 240 outlets on
 * ten floors, a head unit of 32 user bands for each floor, fed by the receivers
 * over the cable. Parts and rates are those of the guest house; everything in it
 * is made up. All its checks pass.
 */
import type { JobInputs } from "../definition";
import { guestHouse } from "./guestHouse";

type Row = Readonly<Record<string, number | string>>;

const FLOORS = 10;
const FLATS = 12;
/** Metres from the riser to each of the corridor boxes. */
const BOX_LEADS = [4, 7, 9, 12] as const;
const FLATS_PER_BOX = FLATS / BOX_LEADS.length;
/** Metres from the roof cabinet down to a floor. */
const leadTo = (floor: number): number => 6 + 3 * (FLOORS - floor);

const floors = Array.from({ length: FLOORS }, (_, index) => index + 1);
const two = (value: number): string => String(value).padStart(2, "0");

/** Each floor: a 4-way splitter at the riser and a 6-way one in each of four corridor boxes. */
const branches: readonly Row[] = floors.flatMap((floor) => {
  const riser = `R${two(floor)}`;
  return [
    { id: riser, from: `H${two(floor)}`, device: "4-way splitter", cable: "trunk", length: 2 },
    ...BOX_LEADS.map((length, box) => ({
      id: `${riser}-${box + 1}`,
      from: riser,
      device: "6-way splitter",
      cable: "outdoor drop",
      length,
    })),
  ];
});

/** Two outlets a flat, three flats a box; one flat in three has a recorder with two tuners. */
const rooms: readonly Row[] = floors.flatMap((floor) =>
  Array.from({ length: FLATS }, (_, flat) => flat).flatMap((flat) =>
    ["living room", "bedroom"].map((room, outlet) => ({
      floor: `floor ${floor}`,
      room: `flat ${floor}${two(flat + 1)}, ${room}`,
      outlet: `${two(floor)}-${two(flat + 1)}-${outlet + 1}`,
      receiver: outlet === 0 && flat % 3 === 0 ? "recorder, 2 tuners" : "receiver",
      quantity: 1,
      from: `R${two(floor)}-${Math.floor(flat / FLATS_PER_BOX) + 1}`,
      cable: "indoor drop",
      run: 4 + ((flat * 7 + outlet * 5 + floor) % 11),
      plate: "single outlet",
      kind: "flat",
    })),
  ),
);

/** The farthest box's longest run: its receiver alone has the hardest time of feeding the head unit. */
const farthestOf = (floor: number): string =>
  rooms
    .filter(({ from }) => from === `R${two(floor)}-${BOX_LEADS.length}`)
    .reduce((longest, row) => (Number(row.run) > Number(longest.run) ? row : longest)).outlet as string;

const heads: readonly Row[] = floors.map((floor) => ({
  id: `H${two(floor)}`,
  type: "head unit, 32 bands",
  supply: "receiver, 13 V",
  cable: "trunk",
  length: leadTo(floor),
  at: farthestOf(floor),
}));

const { supplier, priced, until } = guestHouse.blocks!.units![0] as {
  supplier: string;
  priced: number;
  until: number;
};

export const apartmentBlock: JobInputs = {
  fields: {
    ...guestHouse.fields,
    site_job: "Apartment block, 240 outlets (demonstration)",
    site_quote: "D-240",
  },
  blocks: {
    ...guestHouse.blocks,
    units: [
      ...guestHouse.blocks!.units!,
      {
        name: "head unit, 32 bands",
        bands: 32,
        out_low: 96,
        out_high: 95,
        least: 10.5,
        load: 4.2,
        kind: "W",
        price: 236,
        supplier,
        priced,
        until,
      },
    ],
    heads,
    branches,
    rooms,
  },
};
