/** Where a dish points for each slot: bearings, elevation, range and skew, beside a column of slots. */
import type { Column } from "./definition";

/**
 * @param slots name of the column of slots
 * @param site what the site's names begin with: `site` for `site_latitude` and its like
 */
export const slotColumns = (slots: string, site: string): readonly Column[] => [
  {
    key: "angles",
    head: "True",
    width: 14,
    format: "degrees",
    formula: `RIG.LOOKANGLES(${site}_latitude,${site}_longitude,${slots},${site}_height)`,
    across: [
      { key: "azimuth", head: "azimuth", unit: "deg" },
      { key: "elevation", head: "elevation of the beam", unit: "deg" },
      { key: "range", head: "slant range", unit: "km" },
    ],
  },
  {
    key: "compass",
    head: "Compass bearing",
    unit: "deg magnetic",
    width: 14,
    format: "degrees",
    formula: `RIG.COMPASS(${site}_latitude,${site}_longitude,${slots},${site}_date,${site}_height)`,
  },
  {
    key: "skew",
    head: "Polarisation skew",
    unit: "deg",
    width: 14,
    format: "degrees",
    formula: `RIG.POLSKEW(${site}_latitude,${site}_longitude,${slots})`,
  },
];
