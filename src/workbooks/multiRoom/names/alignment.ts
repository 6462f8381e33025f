import { block, fields, result, told } from "../../names";

export const align = block("align", {
  slot: result("Orbital slot", { width: 34 }),
  azimuth: result("True azimuth", { unit: "deg", width: 14, format: "degrees" }),
  compass: result("Compass bearing, magnetic", { unit: "deg", width: 14, format: "degrees" }),
  elevation: result("Beam elevation, above the horizon", {
    unit: "deg",
    width: 14,
    format: "degrees",
  }),
  face: result("Rim angle, back from upright", { unit: "deg", width: 14, format: "degrees" }),
  skew: result("Polarisation skew", { unit: "deg", width: 14, format: "degrees" }),
});

export const alignment = fields("align", {
  date: told("Bearings are for", { format: "date" }),
  declination: told("Magnetic declination", {
    unit: "deg east",
    format: "degrees",
    note: "True less compass. Iron on a roof or mast turns a compass much further: take a bearing from a few steps away.",
  }),
  aim_azimuth: told("Aim: true azimuth", { unit: "deg", format: "degrees" }),
  aim_compass: told("Aim: compass bearing", { unit: "deg magnetic", format: "degrees" }),
  aim_elevation: told("Aim: beam elevation", {
    unit: "deg",
    format: "degrees",
    note: "Above the horizon: for a mount whose scale includes the dish's offset, as most do.",
  }),
  aim_face: told("Aim: rim angle", {
    unit: "deg",
    format: "degrees",
    note: "Back from upright: for a level laid on the rim. It is the beam elevation less the offset angle on Site.",
  }),
  tilt: told("Tilt about the boresight", {
    unit: "deg",
    format: "degrees",
    note: "Clockwise for a person at the dish facing the slots; 0 is no tilt. A mount's scale may begin elsewhere: go by its own mark for no tilt.",
  }),
});
