/**
 * The third demonstration job: an invented hostel of three floors with twelve doubles each, and a family room at the
 * end of each corridor. What rooms have in common stands in four types; a floor's rows hold little but names. Parts
 * and rates are those of the apartment block; everything in it is made up. All its checks pass.
 */
import type { JobInputs } from "../definition";
import { apartmentBlock } from "./apartmentBlock";

type Row = Readonly<Record<string, number | string>>;

const FLOORS = [3, 2, 1] as const;
const DOUBLES = 12;
/** Metres from a floor's switch to each of the corridor boxes, of three doubles each. */
const BOX_LEADS = [4, 8, 12, 16] as const;
const DOUBLES_PER_BOX = DOUBLES / BOX_LEADS.length;
const METRES_A_FLOOR = 3;

const two = (value: number): string => String(value).padStart(2, "0");
const switchOf = (floor: number): string => `H${floor}`;
const boxOf = (floor: number, box: number): string => `B${floor}-${box + 1}`;

const types: readonly Row[] = [
  {
    name: "double",
    outlets: 1,
    receiver: "receiver",
    quantity: 1,
    run: 7,
    shortest: 6,
    longest: 9,
    kind: "guest rooms",
  },
  { name: "double, far", outlets: 1, receiver: "receiver", quantity: 1, run: 11, kind: "guest rooms" },
  {
    name: "family room",
    outlets: 1,
    receiver: "recorder, 2 tuners",
    quantity: 1,
    run: 6,
    plate: "outlet with radio",
    kind: "guest rooms",
    minutes: 15,
  },
  {
    name: "lounge",
    outlets: 1,
    receiver: "receiver",
    quantity: 1,
    run: 9,
    route: "surface clips",
    kind: "shared",
  },
];

/** From the cellar up. */
const rooms: readonly Row[] = [...FLOORS].reverse().flatMap((floor) => [
  ...Array.from({ length: DOUBLES }, (_, room) => ({
    floor: `floor ${floor}`,
    room: `${floor}${two(room + 1)}`,
    outlet: `${floor}-${two(room + 1)}`,
    from: boxOf(floor, Math.floor(room / DOUBLES_PER_BOX)),
    type: room % DOUBLES_PER_BOX === DOUBLES_PER_BOX - 1 ? "double, far" : "double",
    // The corridor is blocked there.
    ...(floor === 2 && room === 4 && { run: 12, shortest: 11, longest: 14 }),
  })),
  {
    floor: `floor ${floor}`,
    room: `${floor}${DOUBLES + 1}`,
    outlet: `${floor}-${DOUBLES + 1}`,
    from: boxOf(floor, BOX_LEADS.length - 1),
    type: "family room",
  },
  ...(floor === 1
    ? [{ floor: "floor 1", room: "lounge", outlet: "1-L", from: boxOf(1, 0), type: "lounge" }]
    : []),
]);

const { blocks: block = {}, fields } = apartmentBlock;

export const hostel: JobInputs = {
  fields: {
    ...fields,
    site_job: "Hostel, 40 outlets (demonstration)",
    site_quote: "D-40",
    site_dish: 1.1,
    proposal_diagram: "yes",
    tax_class_labour: "work in homes",
    crew_size: 2,
    crew_hours: 8,
    crew_speed: 0.15,
  },
  blocks: {
    ...block,
    taxes: [{ name: "work in homes", rate: 0.1 }],
    sites: [
      { name: "van, there and back", kind: "travel", per: "day on site", cost: 38 },
      { name: "mobile tower", kind: "access hire", days: 2, cost: 55, low: 50, high: 75 },
    ],
    places: [{ floor: "floor 3", factor: 1.1 }],
    types,
    kinds: [{ name: "guest rooms" }, { name: "shared" }],
    options: [
      { name: "outlet in the kitchen", quantity: 1, each: 92, chosen: "no" },
      { name: "radio at every outlet of a double", quantity: 1, chosen: "no", instead: "single outlets" },
    ],
    made: [
      { option: "radio at every outlet of a double", part: "outlet with radio", quantity: 36 },
      { option: "radio at every outlet of a double", part: "single outlet", quantity: -36 },
      { option: "radio at every outlet of a double", part: "fitting them", hours: 1.5 },
    ],
    provisional: [{ name: "opening the blocked corridor of floor 2", sum: 120 }],
    assumptions: [
      { text: "The riser, the corridor boxes and the ceiling voids are clear and may be used." },
      { text: "Receivers give their output 13 V at rest, and 0.4 A." },
      { text: "A mains socket stands beside the switch of floor 1, put there by others." },
      { text: "Rooms are free on the days agreed." },
    ],
    dishes: [{ ...block.dishes![0]!, part: "dish 1.1 m with mount", height: 12 }],
    feeders: FLOORS.map((floor) => ({
      from: floor === FLOORS[0] ? "D1" : switchOf(floor + 1),
      to: switchOf(floor),
      cable: "outdoor drop",
      length: floor === FLOORS[0] ? 8 : METRES_A_FLOOR,
      route: "riser",
    })),
    heads: FLOORS.map((floor) => ({
      id: switchOf(floor),
      type: "switch, 4 outputs of 8 bands",
      ...(floor === 1 && { supply: "mains pack 18 V, 2.5 A" }),
    })),
    branches: FLOORS.flatMap((floor) =>
      BOX_LEADS.map((length, box) => ({
        id: boxOf(floor, box),
        from: switchOf(floor),
        device: "6-way splitter",
        cable: "outdoor drop",
        length,
      })),
    ),
    rooms,
  },
};
