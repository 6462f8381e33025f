/**
 * Level and noise through 20 chains from dish to receiver.
 *
 * Source: tests/fixtures/distribution/noise-chains.json: four textbook examples
 * (each row names its book), sixteen of people's own who had not seen this code,
 * worked out in two ways in Python that agree to 1e-9 dB.
 */
import {
  afterGain,
  afterLoss,
  carrierToNoise,
  levelledTo,
  noiseLevel,
  withNoise,
  type Signal,
} from "../../../src/engine/distribution/signalAndNoise";
import { convertLevel } from "../../../src/engine/signal/convertLevel";
import { noiseTemperature } from "../../../src/engine/signal/noiseTemperature";
import { heldTo } from "../../support/heldTo";
import fixture from "../../fixtures/distribution/noise-chains.json";

interface Stage {
  readonly id: string;
  readonly kind: string;
  readonly gain_dB?: number;
  readonly nf_dB?: number;
  readonly noise_K?: number;
  readonly loss_dB?: number;
  readonly T_phys_K?: number;
  readonly levelled_to_dBuV?: number;
}

/** Where a book gives no carrier, any will do for the noise. */
const ANY_DBM = -100;

function after(signal: Signal, stage: Stage): Signal {
  if (stage.kind === "passive") return afterLoss(signal, stage.loss_dB!, stage.T_phys_K!);
  // A noise temperature in place of a figure: the figure that stands for it.
  const figure = stage.nf_dB ?? 10 * Math.log10(1 + stage.noise_K! / 290);
  if (stage.kind === "receiver") return withNoise(signal, noiseTemperature(figure));
  return stage.levelled_to_dBuV === undefined
    ? afterGain(signal, stage.gain_dB!, figure)
    : levelledTo(signal, stage.levelled_to_dBuV, figure);
}

const own = heldTo({
  what: "signalAndNoise",
  source: "noise powers and Friis's cascade in Python (noise-chains.json)",
  basis: "reference library",
  unit: "dB",
});
const books = heldTo({
  what: "signalAndNoise",
  source: "textbook examples (noise-chains.json names each)",
  basis: "published",
  unit: "K or dB",
});
const LIMIT_DB = 1e-6;

test.each(fixture.chains.map((chain) => [chain.id, chain] as const))(
  "%s",
  (id, { input, stages, results, printed }) => {
    const band = input.bandwidth_Hz;
    let signal: Signal = {
      level: convertLevel(input.carrier_dBm ?? ANY_DBM, "dBm", "dBµV") as number,
      noise: input.antenna_K,
    };
    for (const [index, stage] of (stages as readonly Stage[]).entries()) {
      signal = after(signal, stage);
      const wanted = results.by_stage[index]!;
      own.row(`${id} ${stage.id} noise`, noiseLevel(signal, band), wanted.noise_dBuV, LIMIT_DB);
      if (wanted.level_dBuV !== null)
        own.row(`${id} ${stage.id} level`, signal.level, wanted.level_dBuV, LIMIT_DB);
      if (wanted.cn_dB !== null)
        own.row(`${id} ${stage.id} C/N`, carrierToNoise(signal, band), wanted.cn_dB, LIMIT_DB);
    }
    const noise = (printed as Record<string, { value: number; tolerance: number }> | null)
      ?.system_noise_temperature_K;
    if (noise && input.carrier_dBm === null) {
      // Back at the chain's input: less the gain of all stages.
      const gain = (stages as readonly Stage[]).reduce(
        (sum, { gain_dB = 0, loss_dB = 0 }) => sum + gain_dB - loss_dB,
        0,
      );
      books.row(`${id} system noise`, signal.noise / 10 ** (gain / 10), noise.value, noise.tolerance);
    }
  },
);
