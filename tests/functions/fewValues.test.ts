/**
 * More values from outside for functions that have few: worked by hand, or the
 * differences of printed figures.
 */
import type { Argument } from "../../src/functions/core/cells";
import { call } from "../support/functionGroup";
import { heldTo, type Basis } from "../support/heldTo";

interface Row {
  readonly args: readonly Argument[];
  readonly value: number | string;
  readonly limit?: number;
  readonly source: string;
  readonly basis?: Basis;
}

/** A cable of 10 ohm a 100 m: 0.1 ohm a metre. */
const HOUSE: Argument = [["House", "", 0.7, 0, 0.3, 10]];
const TABLE = "ANSI/SCTE 74 kind of table, as seen printed from 750 MHz";
const WMM = "WMM2025 report, table 6, off an azimuth of 180, 90 and 0 deg";
const MEMORY = "from memory";

const ROWS: Readonly<Record<string, readonly Row[]>> = {
  VOLTDROP: [
    { args: [24, 6, 5.85, "W"], value: 1.5645, limit: 1e-4, source: "24 − (24 + √(576 − 140.4))/2, by hand" },
    { args: [24, 0.5, 6], value: 3, limit: 1e-12, source: "0.5·6, by hand" },
    // The edge of collapse: 24² = 4·P·R leaves half the supply.
    { args: [24, 24, 6, "W"], value: 12, limit: 1e-9, source: "576 = 4·24·6 leaves 24/2, by hand" },
  ],
  LOADVOLTS: [
    { args: [24, 24, 6, "W"], value: 12, limit: 1e-9, source: "576 = 4·24·6 leaves 24/2, by hand" },
    { args: [18, 0.35, 8], value: 15.2, limit: 1e-12, source: "18 − 2.8, by hand" },
  ],
  LONGESTRUN: [
    {
      args: [24, 21, 0.25, "House", "A", 20, "m", HOUSE],
      value: 120,
      limit: 1e-9,
      source: "3/(0.25·0.1), by hand",
    },
    {
      args: [24, 21, 6, "House", "W", 20, "m", HOUSE],
      value: 105,
      limit: 1e-9,
      source: "3·21/(6·0.1), by hand",
    },
    // Below half the supply there is no stable point: V = 12.
    {
      args: [24, 5, 6, "House", "W", 20, "m", HOUSE],
      value: 240,
      limit: 1e-9,
      source: "12·12/(6·0.1), by hand",
    },
  ],
  HEADUNITS: [
    { args: [8, 8], value: 1, source: "by hand" },
    { args: [33, 32], value: 2, source: "by hand" },
    { args: [0, 8], value: 0, source: "by hand" },
  ],
  TUNERCOUNT: [
    { args: ["recorder, 4 tuners", 3], value: 12, source: "4·3, by hand" },
    { args: ["Bar", 2, [["bar", 5]]], value: 10, source: "5·2 from the catalogue, by hand" },
  ],
  ALLOT: [
    { args: [[[8], [8], [1]], 8], value: 3, source: "17 tuners on head units of 8, by hand" },
    { args: [[[5], [5], [5]], 8], value: 3, source: "no two of 5 fit on a head unit of 8, by hand" },
  ],
  SELLPRICE: [
    { args: [70, 0.3], value: 100, limit: 1e-9, source: "30 of 100 is the margin on 70, by hand" },
    { args: [100, 0.5], value: 200, limit: 1e-9, source: "half of 200, by hand" },
    { args: [55, 0], value: 55, source: "no margin, by hand" },
  ],
  MARGIN: [
    { args: [1], value: 0.5, limit: 1e-12, source: "100 on 100 sells at 200, by hand" },
    { args: [0.42857], value: 0.3, limit: 1e-5, source: "a margin of 30 % is a markup of 42.857 %, by hand" },
  ],
  THREEPOINT: [
    { args: [6, 6, 6], value: 6, source: "all three alike, by hand" },
    { args: [0, 0, 6], value: 1, source: "6/6, by hand" },
  ],
  REELS: [
    { args: [[[60], [40], [50], [50]], 100], value: 2, source: "60 + 40 and 50 + 50, by hand" },
    { args: [[[51], [51]], 100], value: 2, source: "102 don't come off one reel of 100, by hand" },
  ],
  CABLESLOPE: [
    {
      args: ["series 11", 100, 750, 1000, 20, "ft"],
      value: 0.7,
      limit: 0.06,
      source: TABLE,
      basis: "published",
    },
    {
      args: ["series 6", 100, 750, 1000, 20, "ft"],
      value: 0.9,
      limit: 0.06,
      source: TABLE,
      basis: "published",
    },
    {
      args: ["series 6", 100, 865, 1000, 20, "ft"],
      value: 0.45,
      limit: 0.06,
      source: TABLE,
      basis: "published",
    },
  ],
  BEAMWIDTH: [
    { args: [0.75, 12_450], value: 2.25, limit: 0.005, source: "70·λ/D, Maral & Bousquet", basis: MEMORY },
    { args: [0.46, 12_450], value: 3.664, limit: 0.001, source: "70·λ/D, Maral & Bousquet", basis: MEMORY },
  ],
  POINTLOSS: [
    { args: [0.1, 1], value: 0.12, limit: 1e-9, source: "12·0.1², Maral & Bousquet", basis: MEMORY },
    { args: [1, 2], value: 3, limit: 1e-9, source: "half a beamwidth is the half-power point, by hand" },
  ],
  DISHGAIN: [
    // 29979.2458 MHz has a wavelength of 1 cm.
    { args: [1, 29_979.2458, 1], value: 49.943, limit: 1e-3, source: "20·log10(100·π), by hand" },
    { args: [2, 29_979.2458, 1], value: 55.964, limit: 1e-3, source: "20·log10(200·π), by hand" },
  ],
  FREESPACELOSS: [
    { args: [1000, 1000], value: 152.448, limit: 1e-3, source: "32.448 + 60 + 60, by hand" },
    { args: [100, 10_000], value: 152.448, limit: 1e-3, source: "32.448 + 40 + 80, by hand" },
  ],
  OFFSETANGLE: [
    { args: [1, 2], value: 60, limit: 1e-9, source: "acos(1/2), by hand" },
    { args: [0.8, 1], value: 36.8699, limit: 1e-4, source: "acos(0.8), by hand" },
  ],
  WINDLOAD: [
    { args: [45, 0.75], value: 712.34, limit: 0.01, source: "½·1.225·45²·π/4·0.75²·1.3, by hand" },
    { args: [0, 1.2], value: 0, source: "no wind, by hand" },
  ],
  CARRIERNOISE: [
    {
      args: [50, 1000, 29_979.2458, 1, 100, 1, 0, 1],
      value: 66.558,
      limit: 2e-3,
      source: "50 − 181.984 + 49.943 + 148.599, by hand",
    },
    {
      args: [50, 1000, 29_979.2458, 1, 100, 10, 3, 1],
      value: 53.558,
      limit: 2e-3,
      source: "3 dB of losses and ten times the bandwidth less, by hand",
    },
  ],
  PEAKOFFSET: [
    { args: [2, 2, 1], value: 0, source: "equal drops, by hand" },
    { args: [0.5, 1.5, 1], value: 0.25, limit: 1e-12, source: "½·(1.5 − 0.5)/2, by hand" },
  ],
  // On the slot's own meridian, and on the equator, the true azimuth needs no calculation.
  COMPASS: [
    { args: [80, 0, 0, 2025], value: 178.72, limit: 6e-3, source: WMM, basis: "published" },
    { args: [0, 120, 150, 2025], value: 90.16, limit: 6e-3, source: WMM, basis: "published" },
    { args: [-80, -120, -120, 2025], value: 291.22, limit: 6e-3, source: WMM, basis: "published" },
  ],
  TREEROOT: [
    { args: [[["A"], ["B"]], [["Top"], ["A"]], "Top"], value: "Top", source: "followed by hand" },
    {
      args: [
        [["A"], ["B"]],
        [[null], ["A"]],
      ],
      value: "A",
      source: "followed by hand",
    },
  ],
};

describe.each(Object.entries(ROWS))("%s", (name, rows) => {
  const held = new Map(
    rows.map(({ source, basis = "derivation" }) => [source, heldTo({ what: name, source, basis, unit: "" })]),
  );

  test.each(rows.map((row) => [JSON.stringify(row.args), row] as const))("%s", (label, row) => {
    const outcome: unknown = call(name, ...row.args);
    const cells = Array.isArray(outcome) ? (outcome as unknown[][]).flat() : [outcome];
    // Of a row of results the first; of a column the last, for the last row is the furthest from the top.
    const actual = name === "ALLOT" || name === "TREEROOT" ? cells.at(-1) : cells[0];
    const by = held.get(row.source)!;
    if (row.limit !== undefined) by.row(label, actual, row.value as number, row.limit);
    else by.same(label, actual, row.value);
  });
});
