/** What an empty estimate starts from: figures of standards and common practice; no job, no prices. */
import type { JobInputs } from "../definition";
import { usualCauses } from "./causes";

export const standardExclusions: readonly { readonly text: string }[] = [
  { text: "Receivers and recorders, and their subscriptions." },
  { text: "Work on the mains, on lightning protection and on the building's structure." },
  { text: "Repair and painting of finishes." },
  { text: "Lifting gear, scaffolding, and permission from an owner or authority." },
];

export const startingPoint: JobInputs = {
  fields: {
    site_revision: 1,
    site_clearance: 3,
    site_unit: "m",
    site_slack: 2,
    site_waste: 0.1,
    site_run_tolerance: 0.1,
    site_dish: 0.75,
    site_low: 950,
    site_high: 2150,
    site_cold: -15,
    site_hot: 55,
    site_level_low: 47,
    site_level_high: 77,
    site_level_design: 53,
    site_contingency: 0,
    site_overhead: 0,
    site_margin: 0,
    site_tax: 0,
    site_tax_on: "materials and labour",
    site_rounding: "half away",
    site_offset: 0,
    site_downlink: 11700,
    commission_tolerance: 3,
    commission_volts_tolerance: 1,
    commission_meter: 1.5,
  },
  blocks: { exclusions: standardExclusions, causes: usualCauses },
};
