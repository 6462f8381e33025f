/**
 * Look angles, the aim and tilt of a dish for two slots, and equal drops a second
 * time, on the ellipsoid WGS84 and by the cosine rule. It imports nothing of the
 * product.
 */
const RAD = Math.PI / 180;
const EQUATOR_KM = 6378.137;
const FLATTENING = 1 / 298.257223563;
const ORBIT_KM = 42164.17;

type Vector = readonly [number, number, number];

/** East, north, up, in kilometres: from the site to a slot. */
function toSlot(latitude: number, longitude: number, slot: number, metres: number): Vector {
  const [φ, λ, s] = [latitude * RAD, longitude * RAD, slot * RAD];
  const e2 = FLATTENING * (2 - FLATTENING);
  const n = EQUATOR_KM / Math.sqrt(1 - e2 * Math.sin(φ) ** 2);
  const h = metres / 1000;
  const x = ORBIT_KM * Math.cos(s) - (n + h) * Math.cos(φ) * Math.cos(λ);
  const y = ORBIT_KM * Math.sin(s) - (n + h) * Math.cos(φ) * Math.sin(λ);
  const z = -(n * (1 - e2) + h) * Math.sin(φ);
  return [
    -Math.sin(λ) * x + Math.cos(λ) * y,
    -Math.sin(φ) * Math.cos(λ) * x - Math.sin(φ) * Math.sin(λ) * y + Math.cos(φ) * z,
    Math.cos(φ) * Math.cos(λ) * x + Math.cos(φ) * Math.sin(λ) * y + Math.sin(φ) * z,
  ];
}

const lengthOf = (v: Vector): number => Math.hypot(...v);

const anglesOf = (v: Vector) => ({
  azimuth: (Math.atan2(v[0], v[1]) / RAD + 360) % 360,
  elevation: Math.asin(v[2] / lengthOf(v)) / RAD,
  range: lengthOf(v),
});

export const referenceAngles = (latitude: number, longitude: number, slot: number, metres: number) =>
  anglesOf(toSlot(latitude, longitude, slot, metres));

/** Aim at the bisector; the tilt is positive clockwise for a person facing the slots. */
export function referencePair(latitude: number, longitude: number, slots: Vector | number[], metres: number) {
  const [a, b] = slots.map((slot) => {
    const v = toSlot(latitude, longitude, slot, metres);
    return v.map((part) => part / lengthOf(v)) as unknown as Vector;
  }) as [Vector, Vector];
  const aim = anglesOf([a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
  const apart = Math.acos(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
  // Facing the sky, the slot from which the shorter way to the other is clockwise is on the left.
  const clockwise = (anglesOf(b).azimuth - anglesOf(a).azimuth + 360) % 360;
  const [left, right] = clockwise < 180 ? [a, b] : [b, a];
  const sine = (left[2] - right[2]) / (2 * Math.sin(apart / 2) * Math.cos(aim.elevation * RAD));
  return { azimuth: aim.azimuth, elevation: aim.elevation, tilt: Math.asin(sine) / RAD };
}

/** On the beam's parabola: the turn towards plus, and the width of the beam in degrees of the sky. */
export function referencePeak(
  { step, here, plus, minus, axis }: Readonly<Record<string, number | string>>,
  elevation: number,
) {
  const [up, down] = [Number(here) - Number(plus), Number(here) - Number(minus)];
  const sky = axis === "azimuth" ? Math.cos(elevation * RAD) : 1;
  return {
    turn: ((Number(step) / 2) * (down - up)) / (down + up),
    beam: Math.sqrt((24 * Number(step) ** 2) / (down + up)) * sky,
  };
}
