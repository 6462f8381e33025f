/** Ties of money: every one of 16 usual tax rates, and of margins, against decimal.js. */
import Decimal from "decimal.js";
import { roundMoney } from "../../src/engine/estimate/roundMoney";
import { sellPrice } from "../../src/engine/estimate/sellPrice";
import { evaluateFormula } from "../../src/hosts/headless/evaluateFormula";
import { call } from "../support/functionGroup";
import { RULES, shareOf, taxByDecimal, tiesAt, USUAL_RATES } from "../support/usualRates";

const D = Decimal.clone({ precision: 60 });

describe.each(RULES)("tax, ties %s", (rule, mode) => {
  test.each(USUAL_RATES)(
    "%d %%: every tie up to 1,500.00, in the engine and through the dispatcher",
    (percent) => {
      const amounts = tiesAt(percent, 1, 150_000);
      // 8 and 20 % of whole cents never lie half-way.
      expect(amounts.length > 0).toBe(percent !== 8 && percent !== 20);
      const wanted = amounts.map((amount) => taxByDecimal(amount, percent, mode));
      const rate = shareOf(percent);
      expect(amounts.map((amount) => roundMoney(amount, 2, rule, rate))).toEqual(wanted);
      if (amounts.length === 0) return;
      const column = amounts.map((amount) => [amount]);
      expect(call("ROUNDMONEY", column, 2, rule, rate)).toEqual(wanted.map((tax) => [tax]));
    },
  );

  test("a product made by the sheet before it is rounded", () => {
    for (const percent of USUAL_RATES) {
      for (const amount of tiesAt(percent, 1, 20_000)) {
        const tax = taxByDecimal(amount, percent, mode);
        expect([amount, percent, roundMoney(amount * shareOf(percent), 2, rule)]).toEqual([
          amount,
          percent,
          tax,
        ]);
        // As a total is often made: with the tax already on it.
        const total = new Decimal(amount)
          .times(100 + percent)
          .dividedBy(100)
          .toDecimalPlaces(2, mode);
        expect([amount, roundMoney(amount * (1 + shareOf(percent)), 2, rule)]).toEqual([
          amount,
          total.toNumber(),
        ]);
      }
    }
  });
});

describe("on the command line and the desk, in the spreadsheet's own engine", () => {
  // By hand: a tenth of 5855.65 is 585.565.
  test.each([
    ["RIG.ROUNDMONEY(5855.65,2,,10%)", 585.57],
    ['RIG.ROUNDMONEY(5855.65,2,"half even",10%)', 585.56],
    ["RIG.ROUNDMONEY(5855.65*10%)", 585.57],
    ['RIG.ROUNDMONEY(5855.75*10%,2,"half even")', 585.58],
    ["RIG.ROUNDMONEY(117113,2,,1,200)", 585.57],
    ["RIG.ROUNDMONEY(0.1+0.2+0.005,2)", 0.31],
    ["RIG.ROUNDMONEY(2.01,2,,1,1-1/3)", 3.02],
    ["RIG.SELLPRICE(2.01,1/3)", 3.015],
    ["RIG.MARKUP(1/3)", 0.5],
    ["RIG.MARGIN(0.5)", 1 / 3],
  ])("%s", (formula, wanted) => expect(evaluateFormula(formula)).toBe(wanted));

  test("a column of ties at 9 %, both rules", () => {
    for (const [rule, mode] of RULES) {
      const amounts = tiesAt(9, 1, 30_000);
      const formula = `RIG.ROUNDMONEY({${amounts.join(";")}},2,"${rule}",9%)`;
      expect(evaluateFormula(formula)).toEqual(amounts.map((amount) => [taxByDecimal(amount, 9, mode)]));
    }
  });
});

describe("the selling price", () => {
  const SHARES = [0, 0.03, 0.05, 0.1, 0.125];

  test.each(RULES)(
    "a section of cost times the price for each unit of cost, as Price has it; ties %s",
    (rule, mode) => {
      let ties = 0;
      for (const margin of [0, 0.1, 0.15, 0.2, 0.25, 0.275, 0.3, 0.375, 0.4])
        for (const contingency of SHARES)
          for (const overhead of SHARES) {
            // The sheet's own steps, in binary, for a job of this direct cost.
            const direct = 1234.56;
            const added = direct * contingency;
            const cost = direct + added + (direct + added) * overhead;
            const factor = (sellPrice(cost, margin) as number) / direct;
            for (let cents = 5; cents < 9000; cents += 55) {
              const section = cents / 100;
              const price = new D(section)
                .times(new D(1).plus(contingency))
                .times(new D(1).plus(overhead))
                .dividedBy(new D(1).minus(margin));
              if (price.times(1000).mod(10).equals(5)) ties++;
              const got = roundMoney(section, 2, rule, factor);
              const wanted = price.toDecimalPlaces(2, mode).toNumber();
              expect([section, margin, contingency, overhead, got]).toEqual([
                section,
                margin,
                contingency,
                overhead,
                wanted,
              ]);
            }
          }
      expect(ties).toBeGreaterThan(500);
    },
  );

  test("at a margin of a third, as =1/3 gives it", () => {
    // A price of n half cents has a cost of two thirds of it.
    for (let half = 3; half < 6000; half += 6) {
      const price = new D(half).dividedBy(200);
      const cost = price.times(2).dividedBy(3).toNumber();
      expect([cost, sellPrice(cost, 1 / 3)]).toEqual([cost, price.toNumber()]);
    }
  });
});

describe("sums before they are rounded", () => {
  test("a tie that binary addition tips", () => {
    // By hand: three times 3.335 is 10.005.
    expect(evaluateFormula("RIG.ADDMONEY({3.335;3.335;3.335})")).toEqual([[10.005]]);
    expect(evaluateFormula("SUM({3.335;3.335;3.335})")).toBe(10.004999999999999);
  });

  test("blank entries are passed over, a word is named with its row, an error is handed on", () => {
    expect(call("ADDMONEY", [[1], [null], [""], [2.5]], 4)).toEqual([[3.5], [4]]);
    expect(call("ADDMONEY", [[1], ["150 EUR"]], [[7]])).toEqual([
      [
        expect.objectContaining({
          message: expect.stringContaining('Row 2 of amounts: amounts is "150 EUR"'),
        }),
      ],
      [7],
    ]);
    const passedOn = { kind: "fault", code: "#N/A", message: "A sentence of another cell." } as const;
    expect(call("ADDMONEY", [[1], [passedOn]])).toEqual([[passedOn]]);
  });
});
