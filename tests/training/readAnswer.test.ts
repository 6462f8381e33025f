/** Numbers as people type them: what is read, by the rules of writing numbers. */
import { readAnswer } from "../../src/training/readAnswer";

describe("what people type", () => {
  const dB = { kind: "number", unit: "dB", decimals: 1 } as const;
  const money = { kind: "number", unit: "money", decimals: 2 } as const;
  const percent = { kind: "number", unit: "%", decimals: 1 } as const;

  test.each([
    [dB, 12.4, [12.4]],
    [dB, "12.4", [12.4]],
    [dB, "12,4", [12.4]],
    [dB, " 12,4 dB ", [12.4]],
    [dB, "12.4dB", [12.4]],
    [dB, "≈ 12.4", [12.4]],
    [dB, "−12.4", [-12.4]],
    [dB, ".5", [0.5]],
    [dB, "12·4", [12.4]],
    [dB, "1.24e1", [12.4]],
    [dB, "1,234", [1.234, 1234]],
    [dB, "1.234", [1.234]],
    [dB, "12,345", [12.345, 12_345]],
    // Digits of other scripts, and the bold and hollow ones that stand side by side in the standard.
    [dB, "١٢٫٤", [12.4]],
    [dB, "𝟏𝟐,𝟗", [12.9]],
    [dB, "𝟙𝟚.𝟛", [12.3]],
    [money, "1,234.50", [1234.5]],
    [money, "1.234,50 €", [1234.5]],
    [money, "1 234.50", [1234.5]],
    [money, "1'234.50", [1234.5]],
    [money, "1,234", [1.234, 1234]],
    [money, "1,234,567", [1234567]],
    [percent, 0.211, [0.211, 21.1]],
    [percent, "21,1 %", [21.1]],
  ])("%j of %j", (answer, typed, readings) => {
    const read = readAnswer(answer, typed);
    expect(read).toMatchObject({ kind: "number" });
    expect(read).not.toHaveProperty("unit");
    expect(read.kind === "number" && read.readings).toEqual(
      readings.map((one) => expect.closeTo(one, 9) as number),
    );
  });

  test.each(["12.4.1,2,3", "twelve", "12 or 13", "<b>12</b>", "=12+", "--12", "1,2.3.4"])(
    "%j is unclear",
    (typed) => {
      expect(readAnswer(dB, typed).kind).toBe("unclear");
    },
  );
});
