import type { Column, SheetDefinition } from "../definition";
import { peakingHelp, peaksBlock } from "../peaking";

const fromSight = (key: string, head: string, unit: string, name: string): Column => ({
  key,
  head,
  unit,
  width: 14,
  format: "degrees",
  formula: `IF(slots_slot="","",${name})`,
});

export const alignment: SheetDefinition = {
  name: "Alignment",
  kind: "print",
  intro:
    "For the crew at the dish, on safe footing. Elevation of the beam and tilt of the face are different things: mind which one the mount's scale shows.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "block",
      name: "align",
      heading: "Each slot",
      prepared: 4,
      mirrors: "slots",
      columns: [
        { key: "slot", head: "Orbital slot", width: 34, formula: 'IF(slots_slot="","",slots_slot)' },
        fromSight("azimuth", "True azimuth", "deg", "sight_angles_azimuth"),
        fromSight("compass", "Compass bearing, magnetic", "deg", "sight_compass"),
        fromSight("elevation", "Elevation of the BEAM, above the horizon", "deg", "sight_angles_elevation"),
        {
          ...fromSight("face", "Tilt of the FACE, back from upright", "deg", ""),
          formula: 'IF(slots_slot="","",IF(site_offset="","",sight_angles_elevation-site_offset))',
        },
        fromSight("skew", "Polarisation skew", "deg", "sight_skew"),
      ],
    },
    {
      kind: "fields",
      heading: "Compass",
      fields: [
        {
          name: "align_date",
          label: "Bearings are for",
          format: "date",
          formula: 'IF(site_date="","",site_date)',
        },
        {
          name: "align_declination",
          label: "Magnetic declination",
          unit: "deg east",
          format: "degrees",
          note: "True less compass. Iron on a roof or mast turns a compass much further: take a bearing from a few steps away.",
          formula: "sight_declination",
        },
      ],
    },
    {
      kind: "fields",
      heading: "One dish for the first two slots",
      fields: [
        {
          name: "align_aim_azimuth",
          label: "Aim: true azimuth",
          unit: "deg",
          format: "degrees",
          formula: 'IF(pair_b="","",INDEX(pair_aim,1,1))',
        },
        {
          name: "align_aim_compass",
          label: "Aim: compass bearing",
          unit: "deg magnetic",
          format: "degrees",
          formula:
            'IF(pair_b="","",align_aim_azimuth-align_declination+360*(align_aim_azimuth<align_declination)-360*(align_aim_azimuth-align_declination>=360))',
        },
        {
          name: "align_aim_elevation",
          label: "Aim: elevation of the BEAM",
          unit: "deg",
          format: "degrees",
          note: "Above the horizon: for a mount whose scale includes the dish's offset, as most do.",
          formula: 'IF(pair_b="","",INDEX(pair_aim,1,2))',
        },
        {
          name: "align_aim_face",
          label: "Aim: tilt of the FACE",
          unit: "deg",
          format: "degrees",
          note: "Back from upright: for a level laid on the rim. It is the elevation of the beam less the offset angle on Site.",
          formula: 'IF(pair_b="","",IF(site_offset="","",align_aim_elevation-site_offset))',
        },
        {
          name: "align_tilt",
          label: "Tilt about the boresight",
          unit: "deg",
          format: "degrees",
          note: "Clockwise for a person at the dish facing the slots; 0 is no tilt. A mount's scale may begin elsewhere: go by its own mark for no tilt.",
          formula: 'IF(pair_b="","",pair_tilt)',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Peaking",
      fields: [
        {
          name: "peaks_elevation",
          label: "Elevation of the beam while peaking",
          unit: "deg",
          format: "degrees",
          formula: 'IF(pair_a="","",IF(pair_b="",INDEX(sight_angles_elevation,2),align_aim_elevation))',
        },
      ],
    },
    peaksBlock(8, "site_dish", "site_downlink"),
    peakingHelp,
  ],
};
