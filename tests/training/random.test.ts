/** The numbers are the reference programs', so they are the same on every machine. */
import { fnv1a } from "../../src/workbooks/fnv1a";
import { randomFrom, splitMix, xoshiro128 } from "../../src/training/random";

test("xoshiro128** from the state 1, 2, 3, 4 gives the reference program's outputs", () => {
  // As printed in the tests of several independent ports of the authors' C program.
  const next = xoshiro128([1, 2, 3, 4]);
  expect(Array.from({ length: 10 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
  ]);
});

test("SplitMix64 of 42 gives the reference program's words, and xoshiro128** goes on from them", () => {
  // From the authors' C programs, as printed in another project's tests.
  const state = splitMix(42n);
  expect(state).toEqual([803958421, 3184996902, 2993090819, 686809907]);
  const next = xoshiro128(state);
  expect(Array.from({ length: 8 }, next)).toEqual([
    1776835114, 4165204688, 17111135, 2317295270, 2792088233, 2554630222, 2940343271, 2244566231,
  ]);
});

test("FNV-1a, 64 bits: the published test vectors", () => {
  // The algorithm's own test suite (from memory).
  expect(fnv1a("")).toBe(0xcbf29ce484222325n);
  expect(fnv1a("a")).toBe(0xaf63dc4c8601ec8cn);
  expect(fnv1a("foobar")).toBe(0x85944171f73967e8n);
});

test("whole numbers and steps stay in their range, reach both ends and are decimals as typed", () => {
  const random = randomFrom("a test");
  const wholes = Array.from({ length: 2000 }, () => random.whole(-2, 4));
  expect([Math.min(...wholes), Math.max(...wholes)]).toEqual([-2, 4]);
  const steps = Array.from({ length: 2000 }, () => random.stepped(0.4, 1.2, 0.05));
  expect([Math.min(...steps), Math.max(...steps)]).toEqual([0.4, 1.2]);
  for (const step of steps) expect(String(step).length).toBeLessThanOrEqual(4);
  // Each of seven numbers about 286 times in 2000; six deviations are 94.
  for (let number = -2; number <= 4; number++) {
    expect(Math.abs(wholes.filter((one) => one === number).length - 2000 / 7)).toBeLessThan(94);
  }
});
