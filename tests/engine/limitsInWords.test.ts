import { limitsInWords } from "../../src/engine/faults";

/** As its description gives them, and the forms between. */
test.each([
  [{ min: 0, max: 90, unit: "deg" }, "from 0 to 90 deg"],
  [{ min: 0, max: 90, aboveMin: true, unit: "m" }, "more than 0 and at most 90 m"],
  [{ min: 0, aboveMin: true, unit: "m" }, "more than 0 m"],
  [{ min: 0, unit: "m" }, "0 m or more"],
  [{ max: 5, unit: "V" }, "5 V or less"],
  [{ max: 5, integer: true }, "a whole number 5 or less"],
  [{ min: 1, max: 32, integer: true }, "a whole number from 1 to 32"],
  [{ min: 1, integer: true, aboveMin: true }, "a whole number more than 1"],
  [{}, "a number"],
  [{ unit: "dB" }, "a number in dB"],
  [{ integer: true }, "a whole number"],
  [{ integer: true, unit: "ways" }, "a whole number in ways"],
] as const)("%j", (limits, words) => {
  expect(limitsInWords(limits)).toBe(words);
});
