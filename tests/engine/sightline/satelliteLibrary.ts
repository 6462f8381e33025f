/**
 * Look angles by satellite.js, run in a Node of its own: the library comes as
 * ES modules with WebAssembly, which the test runner cannot load.
 */
import { execFileSync } from "node:child_process";
import path from "node:path";

export interface Sight {
  readonly latitude: number;
  readonly longitude: number;
  readonly slot: number;
  readonly height: number;
}

const SCRIPT = `
import { ecfToLookAngles } from "satellite.js";
import { readFileSync } from "node:fs";
const rad = Math.PI / 180;
const sights = JSON.parse(readFileSync(0, "utf8"));
const found = sights.map(({ latitude, longitude, slot, height, radius }) => {
  const site = { latitude: latitude * rad, longitude: longitude * rad, height: height / 1000 };
  const satellite = { x: radius * Math.cos(slot * rad), y: radius * Math.sin(slot * rad), z: 0 };
  const { azimuth, elevation, rangeSat } = ecfToLookAngles(site, satellite);
  return [azimuth / rad, elevation / rad, rangeSat];
});
process.stdout.write(JSON.stringify(found));
`;

/** Azimuth and elevation in degrees and range in km of each sight, with the orbit's radius in km. */
export function bySatelliteLibrary(
  sights: readonly Sight[],
  radius: number,
): readonly (readonly [number, number, number])[] {
  const output = execFileSync(process.execPath, ["--input-type=module", "-e", SCRIPT], {
    cwd: path.join(__dirname, "..", "..", ".."),
    input: JSON.stringify(sights.map((sight) => ({ ...sight, radius }))),
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  return JSON.parse(output) as [number, number, number][];
}
