import { CUT_AT } from "../../../engine/estimate/cutting";
import { anyText, day, nameIn, number, oneOf, whole } from "../../asks";
import { asked, block, entry, fields, told } from "../../names";
import { slotEntry } from "../../slotColumns";
import { keyed } from "../nameKeys";
import { LINES } from "./lines";
import { routes } from "./labour";
import { cables, plates, resistors } from "./parts";

const SPARES = "At least one of each that is fitted; blank is none. Not installed: no labour.";

export const site = fields("site", {
  job: asked(
    "Job",
    {},
    anyText("A short name for the job", { example: "Harbour guest house", required: true }),
  ),
  customer: asked("Customer", {}, anyText("Who the quote is for", { required: true })),
  place: asked("Site address", {}, anyText("Where the work is done", { required: true })),
  prepared_by: asked("Prepared by", {}, anyText("Who made the estimate", { required: true })),
  quote: asked(
    "Quote number",
    {},
    anyText("Your number for the quote", { example: "Q-104", required: true }),
  ),
  revision: asked(
    "Revision",
    { format: "integer" },
    whole(0, 999, "The revision of the quote", { example: "1", required: true }),
  ),
  date: asked(
    "Date of the quote",
    { format: "date", note: "Also the date for the compass bearing." },
    day("The date of the quote", { example: "2026-11-02", required: true }),
  ),
  until: asked(
    "Quote valid until",
    { format: "date" },
    day("The last day on which the quote holds", { example: "2026-12-31", required: true }),
  ),
  standards: asked(
    "Standards",
    { note: "Written when the job draws on a firm's standards; with edition and date." },
    anyText("Whose standards the job drew on"),
  ),
  standards_edition: asked(
    "Edition of the standards",
    { format: "integer" },
    whole(1, 9999, "The edition that the job drew on"),
  ),
  standards_date: asked(
    "Date of the standards",
    { format: "date" },
    day("The date of that edition", { example: "2026-11-02" }),
  ),
  latitude: asked(
    "Latitude",
    { unit: "deg north", format: "three", note: "South is negative." },
    number(-90, 90, "Latitude of the dish", { example: "51.5", required: true }),
  ),
  longitude: asked(
    "Longitude",
    { unit: "deg east", format: "three", note: "West is negative." },
    number(-180, 180, "Longitude of the dish", { example: "-0.12", required: true }),
  ),
  height: asked(
    "Height above sea level",
    { unit: "m", format: "integer" },
    number(-500, 9000, "Height of the site above sea level", { example: "35", required: true }),
  ),
  clearance: asked(
    "Clearance required above obstacles",
    { unit: "deg", format: "one", note: "Common practice, no source: 2 to 5 deg, more where trees grow." },
    number(0, 20, "How far the beam should pass above the highest obstacle", {
      example: "3",
      required: true,
    }),
  ),
  dish: asked(
    "Diameter of the dish",
    { unit: "m", format: "two", note: "For the sun check, and of each dish that names no size of its own." },
    number(0.3, 15, "Diameter of the dish", { example: "0.9", required: true }),
  ),
  offset: asked(
    "Offset angle of the dish",
    {
      unit: "deg",
      format: "one",
      note: "For the tilt of its face; 0 for a centre-fed dish. From the maker, or arc cosine of rim width over rim height.",
    },
    number(0, 60, "Offset angle of the dish; 0 for a centre-fed one", { example: "22.6", required: true }),
  ),
  downlink: asked(
    "Frequency received at the dish",
    { unit: "MHz", format: "integer", note: "For the width of its beam when it is peaked." },
    number(1000, 50_000, "A frequency in the middle of the band that the dish receives", {
      example: "11700",
      required: true,
    }),
  ),
  unit: asked(
    "Unit of all lengths",
    { note: "Also the reel lengths on Parts." },
    oneOf(["m", "ft"], "The unit of every length", { required: true }),
  ),
  slack: asked(
    "Slack added to each run",
    {
      unit: "m or ft",
      format: "one",
      note: "Both ends together. Common practice, no source: 5 to 10 ft at each end.",
    },
    number(
      0,
      100,
      "Length added to every run for slack and termination at both ends together, in the unit above",
      {
        example: "2",
        required: true,
        zero: "note",
      },
    ),
  ),
  waste: asked(
    "Waste added to each run",
    { unit: "share", format: "percent", note: "Common practice, no source: 5 to 15 % for cable." },
    number(0, 0.5, "Share added to every run for waste", { example: "5%", required: true, zero: "note" }),
  ),
  run_tolerance: asked(
    "Length tolerance ±",
    {
      unit: "share",
      format: "percent",
      note: "Of trunks, and of runs without a shortest or longest; Checks counts the outlets that would fail.",
    },
    number(0, 0.9, "Share by which a length may turn out longer or shorter than surveyed", {
      example: "10%",
      required: true,
      zero: "note",
    }),
  ),
  cut_at: asked(
    "Length at which runs are cut",
    {
      note: "Blank is likely. Longest is what Rooms says, else the run and the tolerance above; cable is bought by it.",
    },
    oneOf(CUT_AT, "Which length of each run is cut, and bought"),
  ),
  spare_devices: asked(
    "Spare devices",
    { unit: "share", format: "percent", note: SPARES },
    number(0, 1, "Devices of the distribution that are bought as spares, as a share of those fitted", {
      example: "5%",
    }),
  ),
  spare_heads: asked(
    "Spare head units, supplies and feeds",
    { unit: "share", format: "percent", note: SPARES },
    number(0, 1, "Head units, supplies and feeds that are bought as spares, as a share of those fitted", {
      example: "5%",
    }),
  ),
  spare_plates: asked(
    "Spare wall plates",
    { unit: "share", format: "percent", note: SPARES },
    number(0, 1, "Wall plates that are bought as spares, as a share of those fitted", { example: "5%" }),
  ),
  spare_fittings: asked(
    "Spare end resistors and fittings",
    { unit: "share", format: "percent", note: SPARES },
    number(
      0,
      1,
      "End resistors, fittings and sundries that are bought as spares, as a share of those needed",
      {
        example: "3%",
      },
    ),
  ),
  spare_runs: asked(
    "Spare runs of each cable",
    {
      unit: "share",
      format: "percent",
      note: "At least one of each cable in use, as long as its longest run; blank is none.",
    },
    number(0, 1, "Runs that are cut and bought as spares, as a share of the runs of each cable", {
      example: "5%",
    }),
  ),
  spare_runs_least: asked(
    "Spare runs of each cable, at least",
    { unit: "runs", format: "integer", note: "Of each cable in use; blank is as the share says." },
    whole(0, 100, "Runs of each cable that are cut and bought as spares at the least", { example: "1" }),
  ),
  low: asked(
    "Lowest frequency on the cable",
    { unit: "MHz", format: "integer" },
    number(5, 3000, "Lowest frequency that an outlet must get", { example: "950", required: true }),
  ),
  high: asked(
    "Highest frequency on the cable",
    { unit: "MHz", format: "integer" },
    number(5, 3000, "Highest frequency that an outlet must get", { example: "2150", required: true }),
  ),
  cold: asked(
    "Coldest cable",
    { unit: "°C", format: "integer" },
    number(-60, 90, "Temperature of the coldest cable in the year", { example: "-15", required: true }),
  ),
  hot: asked(
    "Hottest cable",
    { unit: "°C", format: "integer", note: "A cable under a roof in summer is far hotter than the air." },
    number(-60, 90, "Temperature of the hottest cable in the year", { example: "55", required: true }),
  ),
  usual_cable: asked(
    "Usual cable",
    { note: "Of every row that names none." },
    nameIn(cables.name, "A cable of the Parts sheet; while blank, each row must name its own"),
  ),
  usual_plate: asked(
    "Usual wall plate",
    { note: "Of every outlet that names none." },
    nameIn(plates.name, "A wall plate of the Parts sheet; while blank, an outlet that names none has none"),
  ),
  usual_route: asked(
    "Usual route",
    { note: "Of every cable that names none, for the minutes." },
    nameIn(routes.name, "A route of the Parts sheet; may be blank"),
  ),
  closes: asked(
    "Open ports are closed with",
    { note: "Open through ports and onward ports need it; open ports of splitters are advice." },
    nameIn(resistors.name, "An end resistor of the Parts sheet; blank is nothing"),
  ),
  availability: asked(
    "Availability wanted",
    { unit: "% of an average year", format: "general", note: "Blank: only clear sky is judged." },
    number(90, 99.99, "Share of an average year in which reception must hold, in percent", {
      example: "99.9",
    }),
  ),
  rain_rate: asked(
    "Rain rate exceeded for 0.01 % of a year",
    { unit: "mm/h", format: "integer", note: "From ITU-R P.837 or your weather service." },
    number(1, 250, "Rain rate that is exceeded for 0.01 % of an average year", { example: "33" }),
  ),
  rain_height: asked(
    "Rain height above sea level",
    { unit: "km", format: "one", note: "From ITU-R P.839: the height of the 0 °C line + 0.36 km." },
    number(0.1, 8, "Height of the rain above sea level", { example: "3.1" }),
  ),
  dish_loss: asked(
    "Losses at the dish",
    {
      unit: "dB",
      format: "one",
      note: "Pointing, ageing, surface; blank is 0.8 (common practice, no source).",
    },
    number(0, 6, "Losses by pointing, ageing and surface", { example: "0.8" }),
  ),
  noise_margin: asked(
    "Carrier to noise above the ideal receiver",
    { unit: "dB", format: "one", note: "Blank is 2; 1 to 3 is common practice, no source." },
    number(0, 10, "Margin over what the modulation needs with an ideal receiver", { example: "2" }),
  ),
  level_low: asked(
    "Minimum level at an outlet",
    { unit: "dBµV", format: "one", note: "EN 60728-1: 47 dBµV for satellite IF with QPSK, 8PSK or APSK." },
    number(20, 120, "Minimum level at an outlet", { example: "47", required: true }),
  ),
  level_high: asked(
    "Maximum level at an outlet",
    { unit: "dBµV", format: "one", note: "EN 60728-1: 77 dBµV." },
    number(20, 120, "Maximum level at an outlet", { example: "77", required: true }),
  ),
  level_design: asked(
    "Design floor",
    {
      unit: "dBµV",
      format: "one",
      note: "A margin above the minimum level; 53 dBµV is a usual floor for satellite IF.",
    },
    number(20, 120, "Level below which an outlet is worth a second look", { example: "53", required: true }),
  ),
  currency: asked(
    "Currency",
    { note: "Shown on the quote; all prices on Parts are in it." },
    anyText("The currency of all prices", { example: "EUR", required: true }),
  ),
  decimals: asked(
    "Decimals of money",
    { format: "integer", note: "Blank is 2. Sums are rounded to them; a new workbook shows money so." },
    whole(0, 3, "How many decimals the currency has; blank is 2", { example: "2", zero: "note" }),
  ),
  contingency: asked(
    "Contingency",
    {
      unit: "share of direct cost",
      format: "percent",
      note: "An allowance that is expected to be spent; added before overhead.",
    },
    number(0, 1, "Contingency as a share of the direct cost", {
      example: "3%",
      required: true,
      zero: "note",
    }),
  ),
  overhead: asked(
    "Overhead",
    { unit: "share of cost", format: "percent" },
    number(0, 2, "Overhead as a share of direct cost with contingency", {
      example: "10%",
      required: true,
      zero: "note",
    }),
  ),
  margin: asked(
    "Margin",
    {
      unit: "share of price",
      format: "percent",
      note: "Price = cost / (1 - margin): 20 % margin is 25 % markup.",
    },
    number(0, 0.95, "Margin as a share of the selling price", {
      example: "20%",
      required: true,
      zero: "note",
    }),
  ),
  tax: asked(
    "Tax",
    { unit: "share", format: "percent" },
    number(0, 0.5, "Tax rate on the taxable part", { example: "20%", required: true, zero: "note" }),
  ),
  tax_on: asked(
    "Tax is on",
    { note: "The taxable part by your rules." },
    oneOf(["materials and labour", "materials only", "labour only"], "What the tax is charged on", {
      required: true,
    }),
  ),
  rounding: asked(
    "Rounding of a tie",
    { note: "Money is rounded once, where it is printed." },
    oneOf(["half away", "half even"], "How a tie is rounded", { required: true }),
  ),
});

/** What is taxed at another rate than the usual one: reduced, none, exempt. */
export const taxes = block("taxes", {
  name: entry(
    "Tax class",
    { width: 20 },
    anyText("A class of what is taxed at another rate than the one above", { example: "reduced" }),
  ),
  rate: entry(
    "Rate",
    { unit: "share", width: 20, format: "percent" },
    number(0, 0.5, "The rate of this class; 0 for what is zero-rated or exempt", {
      example: "7%",
      required: true,
    }),
  ),
  key: keyed("Tax class"),
});

const taxClassOf = (line: string) =>
  asked(
    `Tax class of: ${line}`,
    {},
    nameIn(taxes.name, "A tax class of the list above; blank is the usual tax, on what it is charged on"),
  );

/** By line of the quote; provisional sums and options have one of their own in each row. */
export const taxClass = fields("tax_class", {
  reception: taxClassOf(LINES.reception),
  cable: taxClassOf(LINES.cable),
  fittings: taxClassOf(LINES.fittings),
  labour: taxClassOf(LINES.labour),
  sites: taxClassOf(LINES.sites),
});

/** Reels that are there already. */
export const rests = block("rests", {
  cable: entry(
    "Cable in stock",
    { width: 34 },
    nameIn(cables.name, "A cable of the Parts sheet of which a reel is in stock"),
  ),
  length: entry(
    "Left on the reel",
    { unit: "m or ft", width: 30, format: "one" },
    number(0.1, 10_000, "What is left on that reel, in the unit that Site names; it is used first", {
      example: "42",
      required: true,
    }),
  ),
  key: keyed("Cable in stock"),
});

export const slots = block(
  "slots",
  {
    slot: slotEntry,
    service: entry("What it is for", { width: 20 }, anyText("What the customer wants from this slot")),
    obstacle: entry(
      "Highest obstacle",
      { unit: "deg", width: 12, format: "one" },
      number(0, 90, "Elevation of the highest obstacle on that bearing, seen from the dish", {
        example: "12",
        required: true,
      }),
    ),
    eirp: entry(
      "EIRP",
      { unit: "dBW", width: 10, format: "one" },
      number(20, 80, "Power radiated towards this site; while blank, carrier to noise is not asked", {
        example: "51",
      }),
    ),
    symbol_rate: entry(
      "Symbol rate",
      { unit: "Msym/s", width: 10, format: "one" },
      number(0.1, 500, "Symbol rate of its carriers", { example: "27.5" }),
    ),
    modulation: entry(
      "Modulation and code",
      { width: 16 },
      anyText("Modulation and code of DVB-S2; for DVB-S write DVB-S before them", { example: "8PSK 2/3" }),
    ),
  },
  { rows: ["slot", "modulation"] },
);

/** The figures that the distribution goes by, blanks filled with what they mean. */
export const settings = fields(
  "setting",
  {
    latitude: told("Latitude", { unit: "deg north", format: "three" }),
    longitude: told("Longitude", { unit: "deg east", format: "three" }),
    height: told("Height above sea level", { unit: "m", format: "integer" }),
    dish: told("Diameter of the dish", { unit: "m", format: "two" }),
    unit: told("Unit of all lengths"),
    low: told("Lowest frequency on the cable", { unit: "MHz", format: "integer" }),
    high: told("Highest frequency on the cable", { unit: "MHz", format: "integer" }),
    cold: told("Coldest cable", { unit: "°C", format: "integer" }),
    hot: told("Hottest cable", { unit: "°C", format: "integer" }),
    level_low: told("Minimum level at an outlet", { unit: "dBµV", format: "one" }),
    level_high: told("Maximum level at an outlet", { unit: "dBµV", format: "one" }),
    run_tolerance: told("Length tolerance ±", { unit: "share", format: "percent" }),
    usual_cable: told("Usual cable"),
    usual_plate: told("Usual wall plate"),
    usual_route: told("Usual route"),
    closes: told("Open ports are closed with"),
    availability: told("Availability wanted", { unit: "% of an average year", format: "general" }),
    rain_rate: told("Rain rate exceeded for 0.01 % of a year", { unit: "mm/h", format: "integer" }),
    rain_height: told("Rain height above sea level", { unit: "km", format: "one" }),
    dish_loss: told("Losses at the dish", { unit: "dB", format: "one" }),
    noise_margin: told("Carrier to noise above the ideal receiver", { unit: "dB", format: "one" }),
    slope: told("Maximum slope at an outlet", {
      unit: "dB",
      format: "integer",
      note: "EN 60728-1, from memory.",
    }),
  },
  ["values"],
);

export const corner = fields("corner", {
  frequency: told("Frequency", { unit: "MHz", format: "integer" }),
  temperature: told("Cable temperature", { unit: "°C", format: "integer" }),
});

export const commissioningLimits = fields("commission", {
  tolerance: asked(
    "Tolerance of measured levels ±",
    { unit: "dB", format: "one", note: "Common practice, no source: meter error and connectors." },
    number(0, 20, "How far a measured level may lie outside the predicted range", {
      example: "3",
      required: true,
    }),
  ),
  volts_tolerance: asked(
    "Tolerance of measured volts ±",
    {
      unit: "V",
      format: "one",
      note: "Common practice, no source: meter error, contacts, the diodes of a splitter.",
    },
    number(0, 20, "How far measured volts may lie from the predicted ones", { example: "1", required: true }),
  ),
  meter: asked(
    "Meter accuracy ±",
    {
      unit: "dB",
      format: "one",
      note: "Common practice, no source; the maker's figure is better. For the diagnosis.",
    },
    number(0.1, 10, "How far a level that the meter shows may lie from the true one", {
      example: "1.5",
      required: true,
    }),
  ),
});
