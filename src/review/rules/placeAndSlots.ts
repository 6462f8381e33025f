import { isFault } from "../../engine/faults";
import { lookAngles } from "../../engine/sightline/lookAngles";
import { slotName } from "../../engine/sightline/slotName";
import { neededModulation } from "../../functions/distribution/neededModulation";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { figure, filledCells, namedCells } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { site, slots } = estimate;

/** As the sheet keeps them. */
const SLOT = /^(\d+(?:\.\d+)?) ?([EW])$/i;

export const placeAndSlots: Rule = {
  id: "place and slots that do not fit",
  reason: "A sign or a letter that is lost puts the house, or the slot, on the other side of the earth.",
  example: "A longitude of 98.25 for a house at 98.25 west: none of its slots at 97W and 113W can be seen.",
  find: ({ read }) => [
    ...unseen(read),
    ...hidden(read),
    ...modulations(read),
    ...farApart(read),
    ...aboveTheRain(read),
  ],
};

/** Of a kilometre. */
const METRES = 1000;

/** A house higher than the rain that is said to fall on it: a digit too many. */
function aboveTheRain(read: Book): Finding[] {
  const [height] = namedCells(read, site.height.name);
  const rain = namedValue(read, site.rain_height.name);
  if (typeof height?.value !== "number" || typeof rain !== "number" || height.value <= rain * METRES)
    return [];
  return [
    {
      weight: "doubtful",
      place: height.place,
      message: `The place is said to lie ${figure(height.value)} m above the sea, higher than the rain above it (${figure(rain)} km).`,
      expected: `Less than ${figure(rain * METRES)} m: was a digit typed too many?`,
      effect: "No rain is reckoned with, so signals look safer than they are.",
      remedy: "Look it up on a map, or correct the rain height.",
    },
  ];
}

/** Common practice, no source: what a dish of usual size receives beside its main slot. */
const WIDEST = 25;

/** Slots of the one dish that lie too far apart for it. */
function farApart(read: Book): Finding[] {
  const all = slotsOf(read);
  if (filledCells(read, estimate.dishes.name.name).length > 1 || all.length < 2) return [];
  const [first, ...others] = all as [Slot, ...Slot[]];
  return others.flatMap(({ called, east, place }): Finding[] => {
    const between = Math.abs(east - first.east);
    // Either side of 180 degrees they are near.
    const apart = Math.min(between, 360 - between);
    if (apart <= WIDEST) return [];
    return [
      {
        weight: "doubtful",
        place,
        message: `${called} lies ${figure(apart)} degrees from ${first.called}, and one dish is to receive both.`,
        expected: `At most ${WIDEST} degrees apart on one dish (common practice, no source): were digits exchanged?`,
        effect: "Its aim, and what the crew sets up, go by it.",
        remedy: "Compare with the list of slots, or add a dish for it.",
      },
    ];
  });
}

interface Slot {
  readonly called: string;
  readonly east: number;
  readonly place: Finding["place"];
  readonly obstacle: ReturnType<typeof namedCells>[number] | undefined;
}

const slotsOf = (read: Book): Slot[] =>
  rowsIn(read, slots.slot, { obstacle: slots.obstacle }).flatMap(({ called, place, cell }) => {
    const [, degrees, side] = SLOT.exec(called.trim()) ?? [];
    return degrees === undefined
      ? []
      : [
          {
            called,
            place,
            obstacle: cell("obstacle"),
            east: Number(degrees) * (side!.toUpperCase() === "W" ? -1 : 1),
          },
        ];
  });

function unseen(read: Book): Finding[] {
  const [latitude, longitude] = [site.latitude.name, site.longitude.name].map((name) =>
    namedValue(read, name),
  );
  if (typeof latitude !== "number" || typeof longitude !== "number") return [];
  const seen = (lat: number, lon: number, east: number): boolean => elevation(lat, lon, east) > 0;
  const all = slotsOf(read);
  const lost = all.filter(({ east }) => !seen(latitude, longitude, east));
  if (lost.length === 0) return [];
  const say = (
    place: Finding["place"],
    message: string,
    expected: string,
    meant: number | string,
  ): Finding => ({
    weight: "wrong",
    place,
    message,
    expected,
    meant,
    effect: "Nothing can be aimed at, and no level of it is worked out.",
    remedy:
      "Compare with the map, or with the list of slots: east and west, north and south, and their order.",
  });
  const isMirrored = all.length === lost.length && all.every(({ east }) => seen(latitude, -longitude, east));
  // One slot alone that does not fit may be the slot's letter as well as the house's sign: the house is told.
  if (isMirrored)
    return [
      say(
        namedCells(read, site.longitude.name)[0]?.place,
        `From a longitude of ${figure(longitude)} none of the slots can be seen: ${lost.map(({ called }) => called).join(", ")}.`,
        `${figure(-longitude)}: west is negative.`,
        -longitude,
      ),
    ];
  // All of them lost at once, and none mirrored: the house is somewhere else.
  if (
    all.length > 1 &&
    lost.length === all.length &&
    lost.every(({ east }) => !seen(latitude, longitude, -east))
  )
    return [
      {
        weight: "wrong",
        place: namedCells(read, site.latitude.name)[0]?.place,
        message: `From ${figure(latitude)}, ${figure(longitude)} none of the slots can be seen: ${lost.map(({ called }) => called).join(", ")}.`,
        expected: "The place of this job, or slots that stand above it: were they left from another one?",
        effect: "Nothing can be aimed at, and no level of it is worked out.",
        remedy: "Compare latitude and longitude with the map.",
      },
    ];
  return lost.flatMap(({ called, east, place }) =>
    seen(latitude, longitude, -east)
      ? [
          say(
            place,
            `The slot ${called} is below the horizon of this place.`,
            `${slotName(-east)}, by the place.`,
            slotName(-east),
          ),
        ]
      : [],
  );
}

function elevation(latitude: number, longitude: number, east: number): number {
  const angles = lookAngles(latitude, longitude, east);
  // Straight under the slot.
  return "elevation" in angles ? angles.elevation : 90;
}

/** An obstacle that stands in the beam. */
function hidden(read: Book): Finding[] {
  const [latitude, longitude, clearance] = [site.latitude, site.longitude, site.clearance].map(({ name }) =>
    namedValue(read, name),
  );
  if (typeof latitude !== "number" || typeof longitude !== "number") return [];
  return slotsOf(read).flatMap(({ called, east, obstacle }): Finding[] => {
    const beam = elevation(latitude, longitude, east);
    const above = obstacle?.value;
    if (beam <= 0 || typeof above !== "number" || above + Number(clearance ?? 0) <= beam) return [];
    // Down to a tenth, so that what is told to be enough is.
    const most = Math.floor((beam - Number(clearance ?? 0)) * 10) / 10;
    return [
      {
        weight: "wrong",
        place: obstacle!.place,
        message: `The obstacle before ${called} reaches ${figure(above)} degrees, and the beam comes in at ${beam.toFixed(1)}.`,
        expected: `At most ${most.toFixed(1)} degrees; were metres typed?`,
        usual: { low: 0, high: most },
        effect: "The dish does not see the slot from there.",
        remedy:
          "Measure the obstacle in degrees above the horizontal, as seen from the dish; or choose another place.",
      },
    ];
  });
}

/** A modulation that no table of the standards has. */
const modulations = (read: Book): Finding[] =>
  rowsIn(read, slots.slot, { modulation: slots.modulation }).flatMap(({ called, cell, word }): Finding[] => {
    const typed = cell("modulation");
    const needed = word("modulation") === "" ? undefined : neededModulation(String(typed!.value));
    if (!isFault(needed)) return [];
    return [
      {
        weight: "wrong",
        place: typed!.place,
        message: `The modulation of ${called} is “${String(typed!.value)}”. ${needed.message}`,
        expected: "A modulation with its code rate, such as 8PSK 2/3.",
        effect: "Its carrier to noise is judged by nothing, and what hangs on its dish is not worked out.",
        remedy: "Compare with the list of transponders.",
      },
    ];
  });
