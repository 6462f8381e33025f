/** Sun checks by astronomy-engine: the day of least separation in each half of the year, and the days of outage around it. */
import { Equator, Horizon, Observer, Body } from "astronomy-engine";
import { referenceAngles } from "../referenceSight";
import type { Expected } from "./job";

const RAD = Math.PI / 180;
const DAY_MS = 86_400_000;
const SUN_RADIUS_DEG = 0.267;
const WITHIN_DEG = 0.01;
/** SUNCHECK's own where it is given none; that Sightline gives it none was taken from the formula. */
const USUAL_MHZ = 12_450;
const LIGHT_M_MHZ = 299.792458;

export function sunChecks(
  latitude: number,
  longitude: number,
  metres: number,
  slot: number,
  year: number,
  dish: number,
): Expected[][] {
  const look = referenceAngles(latitude, longitude, slot, metres);
  if (!(look.elevation > 0)) return [1, 2].map(() => [NaN, NaN, NaN, NaN, NaN]);
  const observer = new Observer(latitude, longitude, metres);
  const apart = (at: number): number => {
    const when = new Date(at);
    const { ra, dec } = Equator(Body.Sun, when, observer, true, true);
    const sun = Horizon(when, observer, ra, dec);
    const [e1, e2] = [look.elevation * RAD, sun.altitude * RAD];
    const cosine =
      Math.sin(e1) * Math.sin(e2) +
      Math.cos(e1) * Math.cos(e2) * Math.cos((look.azimuth - sun.azimuth) * RAD);
    return Math.acos(Math.min(1, cosine)) / RAD;
  };
  /** Near its least the square of the angle is a parabola in time: through three points, and once more from there. */
  const least = (near: number): { at: number; degrees: number } => {
    let at = near;
    for (const step of [DAY_MS / 72, DAY_MS / 1440]) {
      const [before, here, after] = [at - step, at, at + step].map((when) => apart(when) ** 2) as [
        number,
        number,
        number,
      ];
      at += (step * (before - after)) / (2 * (before - 2 * here + after));
    }
    return { at, degrees: apart(at) };
  };
  /** To a quarter of an hour, some time of that day. */
  const hourOf = (day: number): number => {
    let best = day;
    for (let at = day; at < day + DAY_MS; at += DAY_MS / 96) if (apart(at) < apart(best)) best = at;
    return best;
  };
  const limit = (35 * LIGHT_M_MHZ) / USUAL_MHZ / dish + SUN_RADIUS_DEG;
  return [Date.UTC(year, 2, 20), Date.UTC(year, 8, 22)].map((equinox) => {
    const days: ReturnType<typeof least>[] = [];
    for (let near = hourOf(equinox - 30 * DAY_MS); days.length < 61; near = days.at(-1)!.at + DAY_MS)
      days.push(least(near));
    const peak = days.reduce((a, b) => (b.degrees < a.degrees ? b : a));
    const outage = days.filter(({ degrees }) => degrees <= limit);
    const seconds = (towards: number): number => {
      let [inside, outside] = [peak.at, peak.at + towards * DAY_MS * 0.2];
      while (Math.abs(outside - inside) > 100) {
        const middle = (inside + outside) / 2;
        if (apart(middle) <= limit) inside = middle;
        else outside = middle;
      }
      return Math.abs(inside - peak.at) / 1000;
    };
    return [
      // Of two days of which neither is nearer than the accuracy of the angle either will do.
      any(
        days
          .filter(({ degrees }) => degrees - peak.degrees <= WITHIN_DEG)
          .map(({ at }) => near("a time", new Date(at).toISOString(), 90_000)),
      ),
      number(peak.degrees, WITHIN_DEG),
      near("a day", day(outage[0]), DAY_MS),
      near("a day", day(outage.at(-1)), DAY_MS),
      number(seconds(1) + seconds(-1), 12),
    ];
  });
}

const day = (found: { at: number } | undefined): string =>
  new Date(found?.at ?? NaN).toISOString().slice(0, 10);
type Judged = Extract<Expected, { about: string }>;
const near = (what: string, text: string, ms: number): Judged => ({
  about: `${what} near ${text}`,
  holds: (got) => typeof got === "string" && Math.abs(Date.parse(got) - Date.parse(text)) <= ms,
});
const any = (some: readonly Judged[]): Expected => ({
  about: some.map(({ about }) => about).join(" or "),
  holds: (got) => some.some(({ holds }) => holds(got)),
});
const number = (value: number, within: number): Expected => ({
  about: `about ${value}`,
  holds: (got) => typeof got === "number" && Math.abs(got - value) <= within,
});
