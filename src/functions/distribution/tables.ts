/** The tables of a job: the arguments that every function of a distribution takes. */
import type { Matrix } from "../core/cells";
import { optional, table, type WholeParameter } from "../core/parameters";

const HELP = {
  outlets:
    "Outlets: floor; room; outlet; receiver (blank: a spare outlet); how many (1); fed from; cable (usual); run; wall plate (usual, none where there is no usual one).",
  outlet_details:
    'The same rows: route (usual); port (next free; a number or "through"); split by; user bands kept ("5" or "9 10"); shortest run; longest run (run and length tolerance).',
  devices:
    "Devices: device; fed from; part (a device or a supply, as inserter); cable (usual); length (blank: no cable); port; route.",
  head_units:
    "Head units: head unit; kind; dish (the only one); supply; cable (usual); length (blank: no lead); route.",
  dishes:
    "Dishes: dish; size in m (settings'); slots such as 97W 113W (all); feed; loss off the focus in dB. Left out: one dish for all slots.",
  feeders: "Feeders: from; to; slot (all); how many (what the kind takes); cable (usual); length (0); route.",
  slots:
    'Slots: slot; two columns that are not read; EIRP in dBW; symbol rate in Msym/s; modulation and code such as "8PSK 2/3". One of the three blank: carrier to noise is not asked.',
  settings:
    "One column of 22: latitude, longitude, height m, dish size m, unit, lowest and highest MHz, coldest and hottest °C, minimum and maximum level, length tolerance, usual cable, wall plate, route, end resistor, availability %, rain rate mm/h, rain height km, losses at the dish dB (0.8), carrier-to-noise margin dB (2), greatest slope dB (15).",
  cables: "The Parts sheet's cable table, six columns, as CABLELOSS takes it.",
  device_parts:
    "Parts: device; kind; ways; loss to a port low, high; loss through low, high; power-passing ports; 4 not read; isolation; diode drop; pass resistance; greatest current; gain low, high; noise figure; greatest output; load; minimum volts; passes commands.",
  plates:
    "Parts: wall plate; loss low, high; 4 not read; loss through low, high; power-passing ports; diode drop; pass resistance; greatest current; isolation; connectors.",
  supplies:
    "Parts: supply; volts; greatest current; 4 not read; stands (in the line, at the head unit); loss low, high; other side passes (no, all ports).",
  head_unit_kinds:
    "Parts: head unit; user bands; output low, high; minimum volts; load; its unit; 4 not read; sits; control standard; commands pass a DC block; hears nothing above; outputs; band plan; noise figure; slots; feeders per slot; input minimum, maximum; onward loss low, high; diode drop; current taken at each output; powers its feed; aiming mode.",
  receivers:
    "Parts: receiver; tuners; control standard; volts at rest, while commanding; greatest current; maximum applied volts; noise figure. Kinds that TUNERCOUNT knows need no row.",
  feeds:
    "Parts: feed; outputs; gain; noise figure; intermediate frequency lowest, highest; load; minimum volts; 4 not read.",
  band_plans: "Parts: plan; band; centre MHz; width MHz; standard; a row for each band.",
  end_resistors: "Parts: end resistor; ohms (75); blocks power (yes, no); 4 not read.",
} as const;

/** When a function of the group gives a fault and no rows. A row that is bad says so in the checks of its list. */
export const TABLE_FAULTS: readonly string[] = [
  "A setting is missing, out of its range or not to be read, or two that belong together lie the wrong way round.",
  "A table has more columns than it is read by; fewer are taken as blank.",
  "outlet_details has a filled row below the last of outlets.",
];

export type TableName = keyof typeof HELP;
export const TABLE_NAMES = Object.keys(HELP) as readonly TableName[];

const block = (name: TableName): WholeParameter<Matrix> =>
  table({ name, help: HELP[name], wanted: "the block of cells of that sheet" });

const { outlets, ...others } = Object.fromEntries(TABLE_NAMES.map((name) => [name, block(name)])) as Record<
  TableName,
  WholeParameter<Matrix>
>;

/** In the order of the sheets' names for them; a table without rows may be left out. */
export const tables: readonly [WholeParameter<Matrix>, ...WholeParameter<Matrix | undefined>[]] = [
  outlets,
  ...Object.values(others).map((one) => optional(one)),
];
