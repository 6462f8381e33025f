/**
 * What marking makes of one answer, in sets of plain questions: every expected
 * mark, name and remark follows from the rules at the head of markAnswers.ts
 * with figures that are reckoned here by hand.
 */
import type { Fault } from "../../src/engine/faults";
import type { Slip } from "../../src/training/exercise";
import { choice, count, marksOf, number, question, type Numbers } from "./madeUpSet";

type Asked = ReturnType<typeof question>;
const slip = (name: string, wrong: Slip<Numbers>["wrong"], seldom = false): Slip<Numbers> => ({
  name,
  wrong,
  seldom,
});
/** One question alone, answered. */
const mark = (asked: Asked, typed: unknown, numbers: Numbers = {}) =>
  marksOf([asked], { [asked.key]: typed }, numbers)[asked.key]!;

const RIGHT = { outcome: "right", points: 2 };
const CARRIED = { outcome: "carried over", points: 1 };
const WRONG = { outcome: "wrong", points: 0 };
const SLIP = { outcome: "slip", points: 0 };

describe("a number and its key of 20.0, asked to 0.1", () => {
  const asked = question("loss", () => 20, {
    slips: [
      slip("common", () => 30),
      slip("rare", () => 50, true),
      slip("another rare", () => 50.05, true),
      slip("nearby", () => 30.1),
    ],
  });
  test("right within one unit of the last place", () => {
    for (const typed of [20, 20.1, 19.9, "20,1", "20.0 dB"]) expect(mark(asked, typed)).toMatchObject(RIGHT);
    for (const typed of [20.11, 19.89]) expect(mark(asked, typed)).toMatchObject(WRONG);
  });
  test("a common mistake within that, the nearest first where two fit", () => {
    expect(mark(asked, 29.9)).toMatchObject({ ...SLIP, named: "common" });
    expect(mark(asked, 30)).toMatchObject({ named: "common or nearby" });
    expect(mark(asked, 30.1)).toMatchObject({ named: "nearby or common" });
    expect(mark(asked, 30.2)).toMatchObject({ named: "nearby" });
    expect(mark(asked, 29.8)).toMatchObject(WRONG);
    for (const typed of [29.9, 30.1]) expect(mark(asked, typed)).not.toHaveProperty("perhaps");
  });
  test("one met now and then only within six tenths of that, and with a doubt", () => {
    expect(mark(asked, 49.95)).toMatchObject({ ...SLIP, named: "rare", perhaps: true });
    expect(mark(asked, 50)).toMatchObject({ named: "rare or another rare", perhaps: true });
    expect(mark(asked, 50.1)).toMatchObject({ named: "another rare", perhaps: true });
    expect(mark(asked, 49.93)).toMatchObject(WRONG);
  });
  test("of names that fit three are told, each once", () => {
    const many = question("many", () => 20, {
      slips: ["a", "b", "b", "c", "d"].map((name) => slip(name, () => 70)),
    });
    expect(mark(many, 70).named).toBe("a or b or c");
  });
  test("what is wrong and known by nothing has no name and no remark", () => {
    const found = mark(asked, 26.3);
    expect(found).toEqual({
      ...{ key: "loss", number: 1, given: 26.3, right: 20, carriedFrom: [] },
      ...WRONG,
    });
  });
  test("twice, half and the point are known by any number", () => {
    expect(mark(asked, 40)).toMatchObject({ ...SLIP, named: "twice the answer" });
    expect(mark(asked, 10)).toMatchObject({ ...SLIP, named: "half of the answer" });
    expect(mark(asked, 2)).toMatchObject({ ...SLIP, named: "decimal point in the wrong place" });
    expect(mark(asked, 40.1)).toMatchObject({ named: "twice the answer" });
    expect(mark(asked, 40.2)).toMatchObject(WRONG);
  });
});

describe("rounded more coarsely than asked", () => {
  const asked = question("volts", () => 12.34, { answer: number("V", 2), slips: [slip("common", () => 12)] });
  test("half the marks", () => {
    expect(mark(asked, 12.3)).toMatchObject({
      outcome: "slip",
      points: 1,
      named: "rounded more coarsely than asked",
    });
    expect(mark(asked, 12.301)).toMatchObject({ points: 0 });
  });
  test("a common mistake that leads there comes first, and has none", () => {
    expect(mark(asked, 12)).toMatchObject({ ...SLIP, named: "common" });
  });
  test("one that is met now and then comes behind it", () => {
    const rare = { ...asked, slips: [slip("rare", () => 12.3, true)] };
    expect(mark(rare, 12.3)).toMatchObject({ points: 1, named: "rounded more coarsely than asked" });
  });
  test("from a wrong earlier answer it is told from which", () => {
    const later = question("later", (_, { volts }) => volts! / 10, {
      answer: number("V", 2),
      needs: ["volts"],
    });
    // 15.67/10 are 1.567, which to one place are 1.6.
    expect(marksOf([asked, later], { volts: 15.67, later: 1.6 }).later).toMatchObject({
      points: 1,
      named: "rounded more coarsely than asked",
      carriedFrom: [1],
    });
  });
});

describe("what stands on the sheet, given as it is", () => {
  const first = question("first", () => 20, {
    given: () => [
      { label: "Length", value: 61.5 },
      { label: "Cable", value: "drop" },
    ],
  });
  const second = question("second", () => 33.3);
  const both = (typed: object) => marksOf([first, second], { ...typed });
  test("a figure of the question, within half the tolerance", () => {
    expect(both({ first: 61.5 }).first).toMatchObject({
      ...SLIP,
      named: '"Length" given as it stands',
      perhaps: true,
      carriedFrom: [],
    });
    expect(both({ first: 61.54 }).first).toMatchObject(SLIP);
    expect(both({ first: 61.56 }).first).toMatchObject(WRONG);
  });
  test("the right answer to another question, and the trainee's own", () => {
    expect(both({ first: 33.3 }).first).toMatchObject({ ...SLIP, named: "answer to 2 given", perhaps: true });
    expect(both({ first: 77.7, second: 77.7 })).toMatchObject({
      first: WRONG,
      second: { ...SLIP, named: "answer to 1 given", perhaps: true },
    });
  });
});

describe("counts, where nothing but the number is right", () => {
  const asked = (to: number) =>
    question("boxes", () => 7, { answer: count("boxes"), slips: [slip("unrounded", () => to)] });
  test("a mistake of a broken number is known by wherever it was cut", () => {
    expect(mark(asked(3.3333), 3.33)).toMatchObject({ ...SLIP, named: "unrounded" });
    expect(mark(asked(3.3333), 3.3)).toMatchObject({ named: "unrounded" });
    expect(mark(asked(3.3333), 3.34)).toMatchObject(WRONG);
  });
  test("a small whole number is none of a broken one; beyond 20 it may be", () => {
    expect(mark(asked(3.3333), 3)).toMatchObject(WRONG);
    expect(mark(asked(19.6), 20)).toMatchObject(WRONG);
    expect(mark(asked(20.4), 20)).toMatchObject({ named: "unrounded" });
    expect(mark(asked(-25.4), -25)).toMatchObject({ named: "unrounded" });
    expect(mark(asked(20), 20)).toMatchObject({ named: "unrounded" });
  });
  test("right is the number alone", () => {
    expect(mark(asked(3), 7)).toMatchObject(RIGHT);
    for (const typed of [7.01, 6.9]) expect(mark(asked(3), typed).outcome).toBe("wrong");
  });
});

describe("directions", () => {
  const to = (key: number) =>
    question("azimuth", () => key, { answer: number("deg", 1, { direction: true }) });
  test("lie in a ring from 0 to 360", () => {
    expect(mark(to(359.95), 0)).toMatchObject(RIGHT);
    expect(mark(to(0.05), 360)).toMatchObject(RIGHT);
    expect(mark(to(0.05), 359.9).outcome).not.toBe("right");
    expect(mark(to(350), -10).outcome).not.toBe("right");
    expect(mark(to(0.05), -0.05)).toMatchObject(RIGHT);
  });
  test("an angle that is no direction does not", () => {
    const tilt = question("tilt", () => 0.05, { answer: number("deg", 1) });
    expect(mark(tilt, 360).outcome).not.toBe("right");
  });
});

describe("two ways to read what was typed", () => {
  test("the right one counts, whichever it is", () => {
    expect(
      mark(
        question("a", () => 1234),
        "1,234",
      ),
    ).toMatchObject({ ...RIGHT, given: 1234 });
    expect(
      mark(
        question("a", () => 1.234),
        "1,234",
      ),
    ).toMatchObject({ ...RIGHT, given: 1.234 });
  });
  test("right before a known mistake, and a known mistake before none", () => {
    const slips = [slip("common", () => 1.234)];
    expect(
      mark(
        question("a", () => 1234, { slips }),
        "1,234",
      ),
    ).toMatchObject({ ...RIGHT, given: 1234 });
    const far = [slip("common", () => 1234)];
    expect(
      mark(
        question("a", () => 7, { slips: far }),
        "1,234",
      ),
    ).toMatchObject({
      ...SLIP,
      named: "common",
      given: 1234,
    });
  });
  test("neither: the likelier one stands in the marks", () => {
    expect(
      mark(
        question("a", () => 7),
        "1,234",
      ),
    ).toMatchObject({ ...WRONG, given: 1.234 });
  });
  test("what follows from a wrong answer before a mistake", () => {
    const first = question("first", () => 10);
    const later = question("later", (_, e) => 100 * e.first!, {
      needs: ["first"],
      slips: [slip("common", () => 1.234)],
    });
    expect(marksOf([first, later], { first: 12.34, later: "1,234" }).later).toMatchObject({
      ...CARRIED,
      given: 1234,
      carriedFrom: [1],
    });
  });
});

describe("another unit than the one asked for", () => {
  const volts = question("volts", () => 12.4, { answer: number("V", 1) });
  const metres = question("metres", () => 12.4, { answer: number("m", 1) });
  const gigahertz = question("band", () => 2.1, { answer: number("Hz", 1) });
  test("the number right in the wrong unit: wrong, and the trainer is told", () => {
    expect(mark(volts, "12.4 mV")).toMatchObject({
      ...WRONG,
      named: "given in mV",
      look: "the number is right, but given in mV, not V",
      given: 12.4,
    });
    expect(mark(metres, "12.4 ft")).toMatchObject({
      ...WRONG,
      named: "given in ft",
      look: "the number is right, but given in ft, not m",
    });
  });
  test("right when converted: thousandths, thousands, hundredths", () => {
    expect(mark(volts, "12400 mV")).toMatchObject({ ...WRONG, look: "right, but given in mV" });
    expect(mark(metres, "12400 mm")).toMatchObject({ ...WRONG, look: "right, but given in mm" });
    expect(mark(metres, "0.0124 km")).toMatchObject({ ...WRONG, look: "right, but given in km" });
    expect(mark(metres, "1240 cm")).toMatchObject({ ...WRONG, look: "right, but given in cm" });
    // 1249 cm are 12.49 m, right within 0.1; 1251 cm are not.
    expect(mark(metres, "1249 cm")).toHaveProperty("look");
    expect(mark(metres, "1251 cm")).not.toHaveProperty("look");
  });
  test("neither: wrong, without a remark", () => {
    expect(mark(volts, "13.7 mV")).toEqual({
      ...{ key: "volts", number: 1, given: 13.7, right: 12.4, carriedFrom: [] },
      ...WRONG,
      named: "given in mV",
    });
    // 40.7 ft are 12.4 m, but only powers of ten are looked through.
    expect(mark(metres, "40.7 ft")).not.toHaveProperty("look");
    // A thousandth of an ampere is none of a volt.
    expect(mark(volts, "12400 mA")).not.toHaveProperty("look");
    expect(mark(gigahertz, "2.1 MHz")).toHaveProperty("look");
  });
  test("what was worked out from it is right in its way", () => {
    const double = question("double", (_, e) => 2 * e.metres!, { answer: number("m", 1), needs: ["metres"] });
    expect(marksOf([metres, double], { metres: "40.7 ft", double: 81.4 }).double).toMatchObject({
      ...CARRIED,
      carriedFrom: [1],
    });
  });
});

describe("worked out from own earlier answers", () => {
  const first = question("first", () => 10);
  const second = question("second", () => 20);
  const sum = question("sum", (_, e) => e.first! + e.second!, {
    needs: ["first", "second"],
    slips: [slip("subtracted", (_n, e) => e.first! - e.second!), slip("always so", () => 77)],
  });
  const all = (a: unknown, b: unknown, c: unknown) =>
    marksOf([first, second, sum], { first: a, second: b, sum: c }).sum!;
  test("right ones: full marks, and nothing carried", () => {
    expect(all(10, 20, 30)).toMatchObject({ ...RIGHT, carriedFrom: [] });
    // Right whatever stands before.
    for (const before of [undefined, 11, "no idea", "#NUM!"])
      expect(all(before, 20, 30)).toMatchObject({ ...RIGHT, carriedFrom: [] });
  });
  test("wrong ones: half the marks, from the fewest that explain it", () => {
    expect(all(13, 20, 33)).toMatchObject({ ...CARRIED, carriedFrom: [1] });
    expect(all(13, 27, 33)).toMatchObject({ ...CARRIED, carriedFrom: [1] });
    expect(all(13, 27, 37)).toMatchObject({ ...CARRIED, carriedFrom: [2] });
    expect(all(13, 27, 40)).toMatchObject({ ...CARRIED, carriedFrom: [1, 2] });
    expect(all(13, 27, 41)).toMatchObject({ ...WRONG, carriedFrom: [] });
  });
  test("what is unclear or blank is carried nowhere", () => {
    expect(all("13 or 14", 20, 33)).toMatchObject(WRONG);
    expect(all(undefined, 20, 33)).toMatchObject(WRONG);
  });
  test("a mistake that stands on a wrong answer is told with it; one that does not is not", () => {
    expect(all(10, 20, -10)).toMatchObject({ ...SLIP, named: "subtracted", carriedFrom: [] });
    expect(all(13, 20, -7)).toMatchObject({ ...SLIP, named: "subtracted", carriedFrom: [1] });
    expect(all(13, 27, -14)).toMatchObject({ ...SLIP, named: "subtracted", carriedFrom: [1, 2] });
    expect(all(13, 20, 77)).toMatchObject({ ...SLIP, named: "always so", carriedFrom: [] });
  });
  test("an answer that a question does not use explains nothing in it", () => {
    const alone = {
      ...sum,
      needs: ["second"],
      solve: (_: Numbers, e: Numbers) => (e.first ?? 0) + e.second!,
    };
    expect(marksOf([first, second, alone], { first: 13, second: 20, sum: 33 }).sum).toMatchObject(WRONG);
  });
  test("as typed, or as it was before it was rounded, where it is known how it came about", () => {
    // A third of 100 typed as 33.3, and 300 times that: 10,000 in full, 9990 from what stands there.
    const slipped = { ...first, slips: [slip("a third", () => 100 / 3)] };
    const times = question("times", (_, e) => 300 * e.first!, { needs: ["first"] });
    const from = (typed: number) => marksOf([slipped, times], { first: 33.3, times: typed }).times!;
    expect(from(10_000)).toMatchObject({ ...CARRIED, carriedFrom: [1] });
    expect(from(9990)).toMatchObject({ ...CARRIED, carriedFrom: [1] });
    expect(from(9995)).toMatchObject(WRONG);
    expect(from(3000)).toMatchObject(RIGHT);
  });
  test("a right one may be used as it was rounded", () => {
    const third = question("third", () => 10 / 3);
    const times = question("times", (_, e) => 300 * e.third!, { needs: ["third"] });
    const from = (typed: number) => marksOf([third, times], { third: 3.3, times: typed }).times!;
    for (const typed of [1000, 990]) expect(from(typed)).toMatchObject({ ...RIGHT, carriedFrom: [] });
    expect(from(995)).toMatchObject(WRONG);
    // Beside a wrong one too: 3.3·300 + 5, and in full.
    const other = question("other", () => 1);
    const and = question("and", (_, e) => 300 * e.third! + e.other!, { needs: ["third", "other"] });
    for (const typed of [995, 1005]) {
      expect(marksOf([third, other, and], { third: 3.3, other: 5, and: typed }).and).toMatchObject({
        ...CARRIED,
        carriedFrom: [2],
      });
    }
  });
  test("carried on again from what was carried over, in full", () => {
    const third = question("third", (_, e) => e.first! / 3, { needs: ["first"] });
    const times = question("times", (_, e) => 300 * e.third!, { needs: ["third"] });
    // 20/3 typed as 6.7: 300 times in full are 2000, 300·6.7 are 2010.
    const from = (typed: number) =>
      marksOf([first, third, times], { first: 20, third: 6.7, times: typed }).times!;
    for (const typed of [2000, 2010]) expect(from(typed)).toMatchObject({ ...CARRIED, carriedFrom: [2] });
    expect(from(2005)).toMatchObject(WRONG);
  });
});

describe("words", () => {
  const level = question("level", () => 60);
  const verdict = question("verdict", (_, e) => (e.level! < 50 ? "low" : e.level! > 70 ? "high" : "ok"), {
    answer: choice("low", "ok", "high"),
    needs: ["level"],
    slips: [
      slip("cable left out", (_n, e) => (e.level! > 55 ? "high" : "ok")),
      slip("a rare one", () => "high", true),
      slip("guessed low", () => "low", true),
    ],
  });
  const of = (typed: unknown, word: string) =>
    marksOf([level, verdict], { level: typed, verdict: word }).verdict!;
  test("right, also from a wrong level", () => {
    expect(of(60, "ok")).toEqual({
      ...{ key: "verdict", number: 2, given: "ok", right: "ok", carriedFrom: [] },
      ...RIGHT,
    });
    expect(of(45, "ok")).toMatchObject({ ...RIGHT, carriedFrom: [] });
  });
  test("right in its way from a wrong level: half the marks", () => {
    expect(of(45, "low")).toMatchObject({ ...CARRIED, carriedFrom: [1] });
    expect(of(80, "high")).toMatchObject({ ...CARRIED, carriedFrom: [1] });
  });
  test("a common mistake is told before one met now and then, which has a doubt", () => {
    expect(of(60, "high")).toMatchObject({ ...SLIP, named: "cable left out", carriedFrom: [] });
    expect(of(60, "high")).not.toHaveProperty("perhaps");
    expect(of(60, "low")).toMatchObject({ ...SLIP, named: "guessed low", perhaps: true });
  });
  test("a mistake is looked for first from the trainee's own level", () => {
    // From 65 the mistake gives high, as it does from 60.
    expect(of(65, "high")).toMatchObject({ ...SLIP, named: "cable left out", carriedFrom: [1] });
  });
  test("three names at the most; none where nothing leads there", () => {
    const many = {
      ...verdict,
      needs: [],
      solve: () => "ok",
      slips: ["a", "b", "c", "d"].map((name) => slip(name, () => "low")),
    };
    expect(mark(many, "low").named).toBe("a or b or c");
    expect(mark(many, "high")).toEqual({
      ...{ key: "verdict", number: 1, given: "high", right: "ok", carriedFrom: [] },
      ...WRONG,
    });
  });
});

describe("a question that has no answer from the own earlier one", () => {
  const NOT_FED: Fault = { kind: "fault", code: "#N/A", message: "It can't be fed." };
  const first = question("first", () => 5);
  const fed = question("fed", (_, e) => (e.first! > 10 ? NOT_FED : 2 * e.first!), {
    needs: ["first"],
    slips: [slip("root of less than nothing", () => NaN), slip("the same again", () => NaN)],
  });
  const of = (before: unknown, typed: unknown) => marksOf([first, fed], { first: before, fed: typed }).fed!;
  test("an error is right in its way", () => {
    expect(of(20, "#NUM!")).toEqual({
      ...{ key: "fed", number: 2, given: "#NUM!", right: 10, ...CARRIED },
      ...{ named: "no answer from the own earlier one", carriedFrom: [1] },
    });
    expect(of(20, { error: "#NUM!" })).toMatchObject({ ...CARRIED, given: "#NUM!" });
  });
  test("words may be, which the trainer decides", () => {
    expect(of(20, "can't be fed")).toEqual({
      ...{ key: "fed", number: 2, given: "can't be fed", right: 10, points: 0 },
      ...{ outcome: "unclear", named: "no plain number", carriedFrom: [1] },
      look: `"can't be fed": with the trainee's own earlier answer there is none to be found, so that this may be the right way`,
    });
  });
  test("with an earlier answer that has one, they are not", () => {
    for (const before of [5, 7]) {
      expect(of(before, "can't be fed")).toEqual({
        ...{ key: "fed", number: 2, given: "can't be fed", right: 10, points: 0 },
        ...{ outcome: "unclear", named: "no plain number", carriedFrom: [] },
        look: `"can't be fed": no plain number`,
      });
      expect(of(before, "#NUM!")).toMatchObject({
        ...SLIP,
        named: "root of less than nothing or the same again",
        perhaps: true,
        carriedFrom: [],
        given: "#NUM!",
      });
    }
  });
  test("an error that no mistake leads to is wrong, and told as it stands", () => {
    expect(mark(first, "#DIV/0!")).toEqual({
      ...{ key: "first", number: 1, given: "#DIV/0!", right: 5, carriedFrom: [] },
      ...WRONG,
      named: "the cell holds the error #DIV/0!",
    });
    const many = { ...first, slips: ["a", "b", "c", "d"].map((name) => slip(name, () => NaN)) };
    expect(mark(many, "#NUM!").named).toBe("a or b or c");
  });
});
