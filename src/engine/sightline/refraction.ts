/**
 * How much the air lifts the apparent elevation above the true one.
 *
 * Source: ITU-R P.834, the approximation τ0 for a known true elevation, with
 *   coefficients as they stand in a public flight-dynamics library.
 * Accuracy: 2.1 arcminutes (0.035 deg) against an optical table (Thomas and
 *   Joseph, Johns Hopkins APL Technical Digest 17(3), 1996).
 * Range: true elevation 0 to 90 deg; heights to 9 km. Below 0.1 deg above an
 *   elevation of 10 deg: no matter for aiming there.
 */
import type { Degrees, Metres } from "../quantity";

/**
 * @param elevation true elevation in degrees, 0 or more
 * @param height metres above sea level
 * @returns degrees to add to the true elevation
 */
export function refraction(elevation: Degrees, height: Metres = 0): Degrees {
  const θ = elevation;
  const h = height / 1000;
  return (
    1 /
    (1.728 +
      0.5411 * θ +
      0.03723 * θ ** 2 +
      h * (0.1815 + 0.06272 * θ + 0.01138 * θ ** 2) +
      h ** 2 * (0.01727 + 0.008288 * θ))
  );
}
