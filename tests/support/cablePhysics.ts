/**
 * What a cable loses and resists, from handbooks: written apart from the product.
 *
 * Cable loss: k1·√f + k2·f + k0 per 100 ft at 20 °C (tests/fixtures/published,
 * fit A of coax-attenuation.json), 0.198 % more for each °C. Loop resistance:
 * 0.127·92^((36−n)/39) mm conductors (ASTM B258), 0.017241 Ω·mm²/m, 21 % of
 * copper's conductivity for copper-clad steel (ASTM B869), screen figures from
 * memory; 0.393 % more for each °C.
 */
import coax from "../fixtures/published/coax-attenuation.json";

const AWG: Record<string, number> = { "59": 20, "6": 18, "7": 16, "11": 14 };
/** Ω per 1000 ft, from memory, ±40 %. */
const SCREEN: Record<string, number> = { "59": 12, "6": 9, "7": 6, "11": 4 };
const M_PER_FT = 0.3048;

export function cableLoss(like: string, metres: number, mhz: number, celsius: number): number {
  const series = /series (\d+)/.exec(like)![1]! as keyof typeof coax.series;
  const { k1, k2, k0 } = coax.series[series].fits.A;
  const per100ft = k1 * Math.sqrt(mhz) + k2 * mhz + k0;
  return (per100ft * metres * (1 + 0.00198 * (celsius - 20))) / (100 * M_PER_FT);
}

export function loopOhms(like: string, metres: number, celsius: number): number {
  const series = /series (\d+)/.exec(like)![1]!;
  const mm = 0.127 * 92 ** ((36 - AWG[series]!) / 39);
  const conductivity = like.endsWith(", copper") ? 1 : 0.21;
  const centre = 0.017241 / ((Math.PI * mm * mm) / 4) / conductivity;
  const screen = SCREEN[series]! / (1000 * M_PER_FT);
  return (centre + screen) * metres * (1 + 0.00393 * (celsius - 20));
}
