/** `rigsheet calc` at the edges of what the methods can say: an answer, or a sentence; never a false figure. */
import { runCommand } from "../support/fakeConsole";

async function calc(formula: string): Promise<{ code: number; value?: unknown; message?: string }> {
  const { code, out } = await runCommand(["calc", formula]);
  const { value, message } = JSON.parse(out) as { value?: unknown; message?: string };
  return { code, value, message };
}

describe("refused, with the sentence that says how far it goes", () => {
  test.each([
    // A parabola through 5 and −4.9 dB has its top 49.5 steps away: by hand, 0.5·(−9.9)/0.1.
    [
      "RIG.PEAKOFFSET(5,-4.9,1)",
      /-49\.5 from the present setting.* speak for -2\.5 to 2\.5\. .*towards -: turn/,
    ],
    ["RIG.PEAKOFFSET(-4.9,5,1)", /49\.5 from the present setting.*towards \+: turn/],
    ["RIG.PEAKOFFSET(1,-0.9,1)", /-9\.5 from the present setting/],
    // By hand: (20 + 12)²/(8·8) = 16 dB down at the present setting: beyond the main lobe's 6 dB.
    ["RIG.PEAKOFFSET(20,-12,1)", /-2 from the present setting.* speak for -1\.2247449 to 1\.2247449/],
    // 70·λ/D at 300 MHz and 0.3 m would be 233 deg.
    ["RIG.BEAMWIDTH(0.3,300)", /The dish is 0\.3 m across; at 300 MHz it must be 2 m or more, 2 wavelengths/],
    ["RIG.BEAMWIDTH(0.01,12450)", /0\.0482 m or more/],
    ["RIG.DISHGAIN(0.3,300)", /0\.999 m or more, a wavelength/],
    [
      "RIG.RAINFADE(3,20,20000,95,0.001,4.958)",
      /percent is 0\.001 %; for this path it must be from 0\.\d+ to 5 %/,
    ],
    ["RIG.FACETILT(40,61)", /offset_angle is 61 deg; it must be from 0 to 60 deg/],
    ['RIG.NEEDEDCN("DVB-S2","32APSK","2/3")', /no DVB-S2 32APSK with code rate "2\/3"/],
  ])("%s", async (formula, sentence) => {
    const { code, value, message } = await calc(formula);
    expect([code, value]).toEqual([1, undefined]);
    expect(message).toMatch(sentence);
  });
});

describe("answered up to the edge", () => {
  test.each([
    // By hand: d± = 12((ε ± 1)² − ε²)/θ² for ε = 2.5 to minus and θ = 12.5: 0.4608 and −0.3072.
    ["RIG.PEAKOFFSET(0.4608,-0.3072,1)", -2.5],
    // 70·λ/D with λ = 0.299792458 m at 1000 MHz and D of two wavelengths: 35 deg.
    ["RIG.BEAMWIDTH(0.599584916,1000)", 35],
    // A vertical rim under a beam at 60 deg, as Site takes it.
    ["RIG.FACETILT(60,60)", 0],
    // EN 302 307-1 table 13, as public transcriptions have it.
    ['RIG.NEEDEDCN("DVB-S2","16APSK","3/4")', 10.21],
    ['RIG.NEEDEDCN("DVB-S2","16APSK","4/5")', 11.03],
    ['RIG.NEEDEDCN("DVB-S2","16APSK","5/6")', 11.61],
    ['RIG.NEEDEDCN("DVB-S2","16APSK","8/9")', 12.89],
    ['RIG.NEEDEDCN("DVB-S2","32APSK","4/5")', 13.64],
    ['RIG.NEEDEDCN("DVB-S2","32APSK","5/6")', 14.28],
    ['RIG.NEEDEDCN("DVB-S2","32APSK","8/9")', 15.69],
    // By hand: a tenth of 5855.65 is 585.565.
    ["RIG.ROUNDMONEY(5855.65,2,,10%)", 585.57],
    ["RIG.ROUNDMONEY(5855.65*10%)", 585.57],
  ])("%s", async (formula, wanted) => {
    const { code, value } = await calc(formula);
    expect(code).toBe(0);
    expect(value).toBeCloseTo(wanted, 9);
  });

  test("readings of one level say no more than their drops", async () => {
    const { code, value } = await calc("RIG.EQUALDROPS(57,62,66.9,1)");
    expect(code).toBe(1);
    expect(JSON.stringify(value)).toMatch(/-49\.5 from the present setting/);
  });

  test("a row of no tuners gets no head unit, in a room with others too", async () => {
    const { value } = await calc('RIG.ALLOT({2;0;1;0},8,{"101";"101";"102";"103"})');
    expect(value).toEqual([[1], ["none"], [1], ["none"]]);
  });

  test("a rarer fade is never the lesser: from 5 % down to the rarest part that is answered", async () => {
    let last = 0;
    for (const percent of [5, 1, 0.3, 0.1, 0.03, 0.01, 0.005, 0.003, 0.002, 0.001]) {
      const { value } = await calc(`RIG.RAINFADE(3,20,20000,95,${percent},4.958)`);
      if (value === undefined) continue;
      expect(Number(value)).toBeGreaterThan(last);
      last = Number(value);
    }
    expect(last).toBeGreaterThan(50);
  });
});
