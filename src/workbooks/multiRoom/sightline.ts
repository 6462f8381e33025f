import type { Field, SheetDefinition } from "../definition";
import { slotColumns } from "../slotColumns";

/** The sun behind one slot, in its two seasons of the year. */
const sunFields = (name: string, slot: string): Field[] => [
  {
    name: `sun_${name}`,
    label: `Behind ${slot === "pair_a" ? "the first" : "the second"} slot, in spring`,
    formula: `IF(${slot}="","",RIG.SUNCHECK(site_latitude,site_longitude,${slot},YEAR(site_date),site_dish,,site_height))`,
    spillRows: 2,
    spillColumns: 5,
    spillFormats: ["two", "text", "text", "integer"],
  },
  { name: `sun_${name}_autumn`, label: "and in autumn", spilled: true },
];

export const sightline: SheetDefinition = {
  name: "Sightline",
  kind: "workings",
  intro: "Where the dish points for each slot, and whether the beam clears what stands in front of it.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "block",
      name: "sight",
      heading: "Slots from this site",
      prepared: 4,
      mirrors: "slots",
      columns: [
        { key: "slot", head: "Orbital slot", width: 34, formula: 'IF(slots_slot="","",slots_slot)' },
        ...slotColumns("slots_slot", "site"),
        {
          key: "clearance",
          head: "Over the obstacle",
          unit: "deg",
          width: 14,
          format: "degrees",
          formula: 'IF(slots_slot="","",sight_angles_elevation-slots_obstacle)',
        },
        {
          key: "verdict",
          head: "Clearance",
          width: 14,
          // The spreadsheet's own comparison does: a call of ours is spared. Within 1e-9 it counts as equal.
          formula: 'IF(sight_clearance="","",IF(ROUND(sight_clearance-site_clearance,9)<0,"low","ok"))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Compass",
      fields: [
        {
          name: "sight_declination",
          label: "Magnetic declination at the first slot",
          unit: "deg east",
          format: "degrees",
          note: "True less compass, on the date on Site. Iron nearby turns a compass much further.",
          formula:
            'IF(pair_a="","",INDEX(sight_angles_azimuth,2)-INDEX(sight_compass,2)-360*ROUND((INDEX(sight_angles_azimuth,2)-INDEX(sight_compass,2))/360,0))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "One dish for the first two slots",
      fields: [
        { name: "pair_a", label: "First slot", formula: 'IF(INDEX(slots_slot,2)="","",INDEX(slots_slot,2))' },
        {
          name: "pair_b",
          label: "Second slot",
          formula: 'IF(INDEX(slots_slot,3)="","",INDEX(slots_slot,3))',
        },
        {
          name: "pair_aim",
          label: "Aim: azimuth and elevation of the beam",
          unit: "",
          format: "degrees",
          formula: 'IF(pair_b="","",RIG.PAIRAIM(site_latitude,site_longitude,pair_a,pair_b,site_height))',
          spillRows: 1,
          spillColumns: 2,
        },
        {
          name: "pair_tilt",
          label: "Tilt, clockwise at the dish facing the slots",
          unit: "deg",
          format: "degrees",
          note: "0 is no tilt. A mount's scale may begin elsewhere and count either way: see its drawing.",
          formula: 'IF(pair_b="","",RIG.PAIRTILT(site_latitude,site_longitude,pair_a,pair_b,site_height))',
        },
        {
          name: "pair_separation",
          label: "Separation as seen from here",
          unit: "deg",
          format: "degrees",
          formula: 'IF(pair_b="","",RIG.SEPARATION(site_latitude,site_longitude,pair_a,pair_b,site_height))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Sun check",
      valueHeads: ["Peak, UTC", "Least separation, deg", "First day", "Last day", "Seconds of outage then"],
      fields: [...sunFields("a", "pair_a"), ...sunFields("b", "pair_b")],
    },
    {
      kind: "text",
      heading: "Caution",
      lines: [
        "Elevation here is of the beam. Many mounts' scales already include the dish's offset angle: read the mount's own drawing before you set it.",
        "Look for the slots from the place where the dish will stand, on safe footing: falls, overhead lines and weather come first; local rules and licensed practice decide.",
        "At the minute of a sun check's peak the shadow of an obstacle falls on the dish exactly as the slot would see it.",
        "Never look at the sun through anything; watch the shadow.",
      ],
    },
  ],
};
