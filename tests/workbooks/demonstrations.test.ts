/** The demonstration jobs: what is wrong in the house, that nothing is in the block and the hostel, and how they are billed. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../src/workbooks/named";

const computedJob = (job: JobInputs): Book => recalculate(layOut(multiRoom, job));

/** The house with other cables: at a head unit or an outlet, by name. */
const withCables = (cables: Readonly<Record<string, string>>): JobInputs => ({
  ...guestHouse,
  blocks: {
    ...guestHouse.blocks,
    heads: guestHouse.blocks!.heads!.map((row) => ({ ...row, cable: cables[row.id!] ?? row.cable! })),
    rooms: guestHouse.blocks!.rooms!.map((row) =>
      cables[row.outlet!] ? { ...row, cable: cables[row.outlet!]! } : row,
    ),
  },
});

/** Advice is not among them. */
const failing = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "look" || result === "error")
    .map(({ what }) => what);

/** A cell of the row that another column names. */
const at = (book: Book, [named, row]: readonly [string, string], column: string): unknown =>
  namedColumn(book, column)[namedColumn(book, named).indexOf(row)];

const house = computedJob(guestHouse);
const block = computedJob(apartmentBlock);
const ofOutlet = (outlet: string, column: string): unknown => at(house, ["rooms_outlet", outlet], column);
const ofHead = (book: Book, head: string, column: string): unknown => at(book, ["heads_id", head], column);

describe("the guest house", () => {
  test("fails for the thin cable and for the steel-centred trunk, and for nothing else", () => {
    expect(failing(house)).toEqual([
      expect.stringMatching(/^Outlets too weak/),
      expect.stringMatching(/^Head units short of volts/),
    ]);
    expect(ofOutlet("A-07", "rooms_check_trouble")).toMatch(/44\.9 dBµV at the high end.*hot/);
    expect(ofHead(house, "H3", "heads_check_trouble")).toMatch(/9\.9 V.*"A-06" on alone.*10\.5 V/);
    // At its own user bands as well: nobody can say that its receiver listens elsewhere.
    expect(ofOutlet("A-07", "rooms_level_own")).toBeLessThan(47);
  });

  test("a copper trunk gives the annexe's head unit its volts, whichever receiver is on alone", () => {
    const better = computedJob(withCables({ H3: "trunk" }));
    expect(failing(better)).toEqual([expect.stringMatching(/^Outlets too weak/)]);
  });

  test("steel-centred cable in place of the thin one mends the level and starves head unit and amplifier", () => {
    expect(failing(computedJob(withCables({ H3: "trunk", "A-07": "indoor drop" })))).toEqual([
      expect.stringMatching(/^Head units short of volts/),
      expect.stringMatching(/^Amplifiers short of volts/),
    ]);
  });

  test("with a copper drop as well, all checks pass", () => {
    const mended = computedJob(withCables({ H3: "trunk", "A-07": "outdoor drop" }));
    expect(failing(mended)).toEqual([]);
    expect(summarise(mended).verdict).toBe("all checks pass");
  });

  /*
   * Worked by hand from the types that are built in (dB per 100 ft = k1·√f + k2·f + k0 at 20 °C, × 1.0693 at 55 °C and
   * × 0.9307 at −15 °C; ohms per 1000 ft, × 1.13755 at 55 °C), 100 ft being 30.48 m:
   *
   * dB a metre at 2150 MHz, 55 °C:
   *   series 11  (0.10687 × 46.368 + 0.0008008 × 2150 + 0.14112) = 6.8182 → 0.22369 × 1.0693 = 0.23920
   *   series 6   (0.196464 × 46.368 + 0.00020693 × 2150 + 0.13583) = 9.6904 → 0.31793 × 1.0693 = 0.33996
   *   series 59  (0.22556 × 46.368 + 0.00060554 × 2150 + 0.35773) = 12.1184 → 0.39759 × 1.0693 = 0.42514
   * and at 950 MHz, −15 °C:
   *   series 11  (0.10687 × 30.822 + 0.0008008 × 950 + 0.14112) = 4.1958 → 0.13766 × 0.9307 = 0.12812
   *   series 6   (0.196464 × 30.822 + 0.00020693 × 950 + 0.13583) = 6.3878 → 0.20957 × 0.9307 = 0.19505
   *
   * A-07, high and hot: 84 − 54 × 0.23920 + 12 (line amplifier) − 4 × 0.33996 − 2.1 (through the tap) − 5 × 0.33996
   *   − 12.1 − 46 × 0.42514 − 1.4 = 84 − 12.917 + 12 − 1.360 − 2.1 − 1.700 − 12.1 − 19.556 − 1.4 = 44.87
   * F-07, high and hot: 90 − 16 × 0.23920 − 5.4 − 16 × 0.33996 − 9.4 − 12 × 0.33996 − 3.1 (through the plate of F-06)
   *   − 7 × 0.33996 − 2.6 = 90 − 3.827 − 5.4 − 5.439 − 9.4 − 4.080 − 3.1 − 2.380 − 2.6 = 53.77
   * G-08, low and cold: 92 − 20 × 0.12812 − 4.2 − 14 × 0.19505 − 7.8 − 26.5 × 0.19505 − 0.7
   *   = 92 − 2.562 − 4.2 − 2.731 − 7.8 − 5.169 − 0.7 = 68.84
   */
  test.each([
    ["A-07", "rooms_level_high_hot", 44.87],
    ["F-07", "rooms_level_high_hot", 53.77],
    ["G-08", "rooms_level_low_cold", 68.84],
  ])("level at %s, %s, is %d dBµV by hand", (outlet, column, level) => {
    expect(Math.abs(Number(ofOutlet(outlet, column)) - level)).toBeLessThan(0.02);
  });

  /*
   * Ohms a metre at 55 °C, centre and screen: series 6 with steel (6.385 / 0.21 + 9) per 1000 ft = 39.405
   *   → 0.12928 × 1.13755 = 0.14706; series 6, copper (6.385 + 9) = 15.385 → 0.05048 × 1.13755 = 0.05742;
   *   series 11 with steel (2.525 / 0.21 + 4) = 16.024 → 0.05257 × 1.13755 = 0.05980.
   *
   * H3 with A-06 on alone. The receiver's 13 V less the one diode on the way, of A2's port: 12.6 V. From there to the
   *   amplifier 0.05 (plate) + 28 × 0.14706 + 0.1 (A2) + 9 × 0.05742 + 0.1 (A1) = 4.885 Ω, which the amplifier's 0.04 A
   *   takes as well; on to the head unit 0.2 (A0) + 54 × 0.05980 = 3.429 Ω. With 3 W at V volts:
   *   V = 12.6 − 0.04 × 4.885 − (3 / V) × 8.314, so V² − 12.405 V + 24.94 = 0 and V = 9.88.
   * H1 behind the pack of 18 V at H2: through 1.5 m of series 6, copper, its own 0.3 A and 2 × 0.16 A of the feeds:
   *   18 − 0.62 × 1.5 × 0.05742 = 17.947; the feeds of D1, each over one of its cables: 17.947 − 0.16 × 7 × 0.05742 = 17.88.
   */
  test("volts at the annexe's head unit, at the first switch and at the feeds are those by hand", () => {
    const volts = (value: unknown, byHand: number) =>
      expect(Math.abs(Number(value) - byHand)).toBeLessThan(0.01);
    volts(ofHead(house, "H3", "heads_fed_alone"), 9.88);
    expect(ofHead(house, "H3", "heads_fed_outlet")).toBe("A-06");
    volts(ofHead(house, "H1", "heads_fed_least"), 17.947);
    volts(at(house, ["dishes_name", "D1"], "dishes_seen_volts"), 17.88);
  });

  test("a recorder keeps the user bands that it is set to, and a spare outlet takes none", () => {
    expect(ofOutlet("G-03", "rooms_place_bands")).toBe("9, 10");
    // Bands 9 and 10 of its head unit's plan: 990 MHz and eight, nine steps of 75 MHz.
    expect(ofOutlet("G-03", "rooms_place_centres")).toBe("1590, 1665");
    expect(ofOutlet("G-04", "rooms_place_bands")).toBe("none");
    expect(ofOutlet("F-07", "rooms_place_port")).toBe("through");
  });

  /*
   * Pieces of cable: 24 runs, 3 of head units, 6 of devices, 4 feeders from the dish and 4 to the second switch: 41.
   * Off a dish come the 4 feeders and the annexe's trunk: 5 grounding blocks, with two connectors more each.
   * Nothing hangs on one port of U1, of U2 and of the tap, and on the 4 onward ports of the second switch.
   */
  test("is billed as it is built", () => {
    const needed = (fitting: string) =>
      at(house, ["fittings_bought_name", fitting], "fittings_bought_needed");
    expect(needed("compression connector")).toBe(2 * (41 + 5));
    expect(needed("grounding block")).toBe(5);
    expect(needed("receiver lead")).toBe(23);
    expect(needed("dish 1.1 m with mount")).toBe(1);
    expect(needed("dish 0.9 m with mount")).toBe(1);
    const bought = (list: string, part: string) => at(house, [`${list}_name`, part], `${list}_needed`);
    expect(bought("resistors_bought", "end resistor")).toBe(3 + 4);
    expect(bought("feeds_bought", "wideband feed")).toBe(2);
    expect(bought("supplies_bought", "mains pack 18 V")).toBe(1);
    expect(bought("plates_bought", "loop-through outlet")).toBe(1);
  });
});

describe("the apartment block", () => {
  test("has nothing wrong in it", () => {
    expect(failing(block)).toEqual([]);
    expect(summarise(block)).toMatchObject({ outlets: 240, verdict: "all checks pass" });
  });

  // 7 tuners a box: two receivers in each of three flats, one of them a recorder of two tuners.
  test("each output has seven of its eight user bands taken", () => {
    const bands = namedColumn(block, "rooms_place_bands").slice(1, 7).join(", ");
    expect(bands).toBe("1, 2, 3, 4, 5, 6, 7");
    expect(new Set(namedColumn(block, "heads_fed_tuners").filter(Number))).toEqual(new Set([28]));
  });

  // Five switches of 0.25 A and both feeds of 0.2 A: the other cascade's pack may be off.
  test("the mains pack of each cascade carries all of its switches and the feeds", () => {
    for (const last of ["H06", "H01"])
      expect(Math.abs(Number(ofHead(block, last, "heads_fed_supplied")) - 1.65)).toBeLessThan(0.001);
  });
});

describe("the hostel", () => {
  const computed = computedJob(hostel);
  const priceOf = (part: string): number =>
    Number(hostel.blocks!.plates!.find(({ name }) => name === part)!.price);

  test("nothing is wrong in it", () => {
    expect(failing(computed)).toEqual([]);
    expect(summarise(computed).verdict).toBe("all checks pass");
  });

  test("its rows are its types', but where one has a run of its own", () => {
    expect(at(computed, ["rooms_outlet", "1-02"], "rooms_run_used")).toBe(7);
    expect(at(computed, ["rooms_outlet", "2-05"], "rooms_run_used")).toBe(12);
    expect(namedColumn(computed, "rooms_own").filter((own) => (own ?? "") !== "")).toHaveLength(1);
  });

  test("the alternate costs what 36 other plates and an hour and a half cost, at the rates of the job", () => {
    const field = (name: string): number => Number(hostel.fields![name]);
    const cost = 36 * (priceOf("outlet with radio") - priceOf("single outlet")) + 1.5 * field("labour_rate");
    const price =
      (cost * (1 + field("site_contingency")) * (1 + field("site_overhead"))) / (1 - field("site_margin"));
    const radio = "radio at every outlet of a double";
    const sum = Number(at(computed, ["options_name", radio], "options_sum"));
    expect(Math.abs(sum - price)).toBeLessThan(0.0051);
    // It is taxed at the usual fifth; labour, at a tenth, is not touched.
    const more =
      Number(at(computed, ["options_name", radio], "options_priced_total")) -
      Number(summarise(computed).total);
    expect(Math.abs(more - 1.2 * sum)).toBeLessThan(0.0151);
    expect(field("site_tax")).toBe(0.2);
  });

  test("labour bears the tax of its class, all else the usual one", () => {
    const { net, tax } = summarise(computed);
    const labour = Number(namedColumn(computed, "price_line_labour")[0]);
    const wanted = 0.1 * labour + 0.2 * (Number(net) - labour);
    expect(Math.abs(Number(tax) - wanted)).toBeLessThan(0.0101);
  });
});
