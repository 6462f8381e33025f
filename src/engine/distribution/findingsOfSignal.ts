/** What does not hold of the signal: level, slope, carrier to noise, outputs and inputs beyond their limits, isolation. */
import { faults, isFault } from "../faults";
import type { DecibelMicrovolts, Decibels } from "../quantity";
import type { Distribution } from "./distribution";
import type { Finding, RowOf, Wanted } from "./finding";
import { isUnseen } from "./sky";

export const signalFindings = (found: Distribution, wanted: Wanted): Finding[] => [
  ...levels(found, wanted),
  ...carrierToNoise(found),
  ...amplifiers(found),
  ...inputs(found),
  ...isolation(found, wanted),
];

const outlet = (row: number): RowOf => ({ list: "outlets", row });

/** Of levels that are known. */
function spread(levels: readonly DecibelMicrovolts[]): Decibels {
  const known = levels.filter((level) => !Number.isNaN(level));
  return Math.max(...known) - Math.min(...known);
}

function levels(
  { tree: { job }, levels: at, bands, bandLevels, bandLevelsCold }: Distribution,
  { levelLeast, levelMost, slopeMost }: Wanted,
): Finding[] {
  return job.outlets.flatMap(({ name }, row): Finding[] => {
    const inBand =
      (when: string) =>
      (level: number, index: number): readonly [number, string] => [
        level,
        `in user band ${bands.bands[row]![index]!.number} when it is ${when}`,
      ];
    const corners = [
      [at.highHot[row]!, "at the high end of the range when it is hot"],
      [at.lowCold[row]!, "at the low end of the range when it is cold"],
      [at.lowHot[row]!, "at the low end of the range when it is hot"],
      [at.highCold[row]!, "at the high end of the range when it is cold"],
      // Behind an equaliser the least or the most may lie between the ends.
      ...bandLevels[row]!.map(inBand("hot")),
      ...bandLevelsCold[row]!.map(inBand("cold")),
    ] as const;
    const found: Finding[] = [];
    const wrong = corners.find(([level]) => level < levelLeast || level > levelMost);
    if (wrong)
      found.push({
        check: wrong[0] < levelLeast ? "level too low" : "level too high",
        rows: [outlet(row)],
        fault: faults.levelOutside(String(name), wrong[0], levelLeast, levelMost, wrong[1]),
      });
    const slope = Math.max(
      spread([at.lowHot[row]!, at.highHot[row]!, ...bandLevels[row]!]),
      spread([at.lowCold[row]!, at.highCold[row]!, ...bandLevelsCold[row]!]),
    );
    if (slope > slopeMost)
      found.push({
        check: "slope",
        rows: [outlet(row)],
        fault: faults.slopeTooMuch(String(name), slope, slopeMost),
      });
    return found;
  });
}

function carrierToNoise({ tree: { job }, carrierToNoise: at, seen }: Distribution): Finding[] {
  const unseen = seen.flatMap((slots, row) =>
    slots.flatMap((one): Finding[] => {
      const own: RowOf = { list: "dishes", row: one.dish };
      const rows: RowOf[] = [...(job.dishes[one.dish]!.isAssumed ? [] : [own]), { list: "headUnits", row }];
      if (isUnseen(one)) return [{ check: "slot", rows, fault: one.fault }];
      return one.atFeed && isFault(one.rain) ? [{ check: "slot", rows, fault: one.rain }] : [];
    }),
  );
  const needed = new Map(job.slots.map((slot) => [slot.name, slot.needed]));
  const low = at.flatMap((slots, row) =>
    slots.flatMap(({ slot, clear, rain }): Finding[] => {
      const least = needed.get(slot) ?? null;
      if (least === null) return [];
      const name = String(job.outlets[row]!.name);
      if (clear < least)
        return [
          {
            check: "carrier to noise in a clear sky",
            rows: [outlet(row)],
            fault: faults.carrierToNoiseLow(name, slot, clear, least, "in a clear sky"),
          },
        ];
      if (rain === null || rain >= least) return [];
      return [
        {
          check: "carrier to noise at the availability wanted",
          rows: [outlet(row)],
          fault: faults.carrierToNoiseLow(name, slot, rain, least, "at the availability wanted"),
        },
      ];
    }),
  );
  return [...unseen, ...low];
}

function amplifiers({ tree: { job }, amplifiers: outputs }: Distribution): Finding[] {
  return outputs.flatMap(({ device, most, limit, carriers }): Finding[] =>
    limit === null || most <= limit
      ? []
      : [
          {
            check: "amplifier output",
            rows: [{ list: "devices", row: device }],
            fault: faults.amplifierOverdriven(String(job.devices[device]!.name), most, limit, carriers),
          },
        ],
  );
}

function inputs({ tree: { job }, seen }: Distribution): Finding[] {
  return seen.flatMap((slots, head) =>
    slots.flatMap((one): Finding[] => {
      const { name, kind } = job.headUnits[head]!;
      if (isUnseen(one) || !one.input || !kind.input) return [];
      const { least, most } = kind.input;
      const wrong = one.input.least < least ? one.input.least : one.input.most > most ? one.input.most : null;
      if (wrong === null) return [];
      const fault = faults.switchInput(name, one.slot.name, wrong, least, most);
      const check = wrong < least ? "switch input too low" : "switch input too high";
      return [{ check, rows: [{ list: "headUnits", row: head }], fault }];
    }),
  );
}

function isolation({ tree: { job }, isolation: found }: Distribution, { isolationLeast }: Wanted): Finding[] {
  return found
    .filter(({ decibels }) => decibels < isolationLeast)
    .map(({ outlets: [first, second], decibels }): Finding => {
      const [one, other] = [job.outlets[first]!.name, job.outlets[second]!.name].map(String);
      const fault = faults.littleIsolation(one!, other!, decibels, isolationLeast);
      return { check: "isolation", rows: [outlet(first), outlet(second)], fault };
    });
}
