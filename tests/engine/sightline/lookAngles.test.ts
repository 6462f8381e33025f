import { isFault } from "../../../src/engine/faults";
import { lookAngles, type LookAngles } from "../../../src/engine/sightline/lookAngles";
import library from "../../fixtures/published/look-angles-satellitejs.json";
import { heldTo } from "../../support/heldTo";

const angles = (...args: Parameters<typeof lookAngles>): LookAngles => {
  const found = lookAngles(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

describe("look angles against satellite.js 7.1.0 on WGS84", () => {
  const source = "satellite.js 7.1.0 ecfToLookAngles";
  const basis = "reference library";
  const azimuth = heldTo({ what: "AZIMUTH", source, basis, unit: "deg" });
  const elevation = heldTo({ what: "ELEVATION", source, basis, unit: "deg" });
  const range = heldTo({ what: "SLANTRANGE", source, basis, unit: "km" });
  test("placeholder", () => {
    const a = angles(25.7617, -80.1918, -97, 2);
    azimuth.row("miami-like", a.azimuth, 214.825509, 1e-5);
    elevation.row("miami-like", a.elevation, 54.541041, 1e-5);
    range.row("miami-like", a.range, 36802.8234, 1e-3);
  });
});
