import type { SheetDefinition } from "../definition";

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
        {
          key: "angles",
          head: "True",
          width: 20,
          format: "degrees",
          formula: "RIG.LOOKANGLES(site_latitude,site_longitude,slots_slot,site_height)",
          across: [
            { key: "azimuth", head: "azimuth", unit: "deg" },
            { key: "elevation", head: "elevation", unit: "deg" },
            { key: "range", head: "slant range", unit: "km" },
          ],
        },
        {
          key: "compass",
          head: "Compass bearing",
          unit: "deg magnetic",
          width: 14,
          format: "degrees",
          formula: "RIG.COMPASS(site_latitude,site_longitude,slots_slot,site_date,site_height)",
        },
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
          formula: "RIG.WINDOW(sight_clearance,site_clearance,90)",
        },
      ],
    },
    {
      kind: "fields",
      heading: "Compass",
      fields: [
        {
          name: "sight_declination",
          label: "Magnetic declination",
          unit: "deg east",
          format: "degrees",
          note: "Compass bearing = true bearing - declination. Iron on a roof or mast turns a compass much further.",
          formula: "RIG.DECLINATION(site_latitude,site_longitude,site_date,site_height)",
        },
      ],
    },
    {
      kind: "text",
      heading: "Caution",
      lines: [
        "Elevation here is of the beam. Many mounts' scales already include the dish's offset angle: read the mount's own drawing before you set it.",
        "Look for the slots from the place where the dish will stand, on safe footing: falls, overhead lines and weather come first; local rules and licensed practice decide.",
      ],
    },
  ],
};
