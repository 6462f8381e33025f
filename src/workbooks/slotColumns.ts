/** Where a dish points for each slot: bearings, elevation, range and skew, beside a column of slots. */
import { f, type Named } from "../formula/build";
import { orbitalSlot } from "./asks";
import { entry, result, results } from "./names";

export const slotEntry = entry(
  "Orbital slot",
  { unit: "deg, E or W", width: 34 },
  orbitalSlot("Orbital slot: its degrees from 0 to 180 with E or W behind them", { example: "97W" }),
);

export const slotWords = {
  angles: results(
    "True",
    { width: 14, format: "degrees" },
    {
      azimuth: { head: "azimuth", unit: "deg" },
      elevation: { head: "beam elevation", unit: "deg" },
      range: { head: "slant range", unit: "km" },
    },
  ),
  compass: result("Compass bearing", { unit: "deg magnetic", width: 14, format: "degrees" }),
  skew: result("Polarisation skew", { unit: "deg", width: 14, format: "degrees" }),
};

/**
 * @param slots the column of slots
 * @param site where the dish stands, and on which day
 */
export const slotFormulas = (
  slots: Named,
  {
    latitude,
    longitude,
    height,
    date,
  }: Readonly<Record<"latitude" | "longitude" | "height" | "date", Named>>,
) => ({
  angles: f`RIG.LOOKANGLES(${latitude},${longitude},${slots},${height})`,
  compass: f`RIG.COMPASS(${latitude},${longitude},${slots},${date},${height})`,
  skew: f`RIG.POLSKEW(${latitude},${longitude},${slots})`,
});
