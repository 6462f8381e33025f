/**
 * The quote review's arithmetic a second time: plain lines over what was typed,
 * decimal arithmetic for money. It imports nothing of the product.
 */
import Decimal from "decimal.js";

type Row = Readonly<Record<string, number | string | undefined>>;
export interface ReviewJob {
  readonly fields: Row;
  readonly blocks: Readonly<Record<string, readonly Row[]>>;
}

/** Of a figure: what it comes to when it is worked again, by how much the quote is off, and the word. */
export interface WorkedAgain {
  readonly again: number;
  readonly off: number;
  readonly word: string;
}

export function referenceReview({ fields, blocks }: ReviewJob) {
  const f = (key: string): number => Number(fields[`review_${key}`]);
  const d = (key: string): Decimal => new Decimal(f(key));
  const tolerance = f("tolerance");
  const near = (off: Decimal | number): string => (Math.abs(Number(off)) <= tolerance ? "ok" : "look");
  const figure = (key: string, again: Decimal): WorkedAgain => {
    const off = d(key).minus(again);
    return { again: again.toNumber(), off: off.toNumber(), word: near(off) };
  };

  const lines = blocks.lines!.map(({ quantity, each, sum }) => {
    const again = new Decimal(Number(quantity)).times(Number(each));
    return { again: again.toNumber(), word: near(again.minus(Number(sum))) };
  });
  const sampled = lines.reduce((all, { again }) => all.plus(again), new Decimal(0));
  const heads = Math.ceil(f("tuners") / f("bands"));
  const materialsOff = d("materials").minus(sampled).toNumber();
  const one = new Decimal(1);
  const figures: Record<string, WorkedAgain> = {
    heads: { again: heads, off: f("heads") - heads, word: f("heads") >= heads ? "ok" : "look" },
    // The lines are a sample: they may come to less, never to more.
    materials: {
      again: sampled.toNumber(),
      off: materialsOff,
      word: materialsOff >= -tolerance ? "ok" : "look",
    },
    labour: figure("labour", d("hours").times(d("rate"))),
    cost: figure(
      "cost",
      d("materials")
        .plus(d("labour"))
        .times(one.plus(d("contingency")))
        .times(one.plus(d("overhead"))),
    ),
    price: figure("price", d("cost").dividedBy(one.minus(d("margin")))),
    net: figure("net", d("price").plus(d("extras"))),
    tax: figure("tax", d("taxed").times(d("rate_tax")).toDecimalPlaces(2, Decimal.ROUND_HALF_UP)),
    total: figure("total", d("net").plus(d("tax"))),
  };
  const asMarkup = d("cost").times(one.plus(d("margin")));
  const slip = Math.abs(f("price") - asMarkup.toNumber()) <= tolerance ? "look" : "ok";

  const ratios: Record<string, number> = {
    "price per outlet": f("price") / f("outlets"),
    "cable per outlet": f("cable") / f("outlets"),
    "crew hours per outlet": f("hours") / f("outlets"),
    "tuners per outlet": f("tuners") / f("outlets"),
    "tuners per head unit": f("tuners") / f("heads"),
    "materials, share of direct cost": f("materials") / (f("materials") + f("labour")),
    "margin that the price has": (f("price") - f("cost")) / f("price"),
    "provisional sums and options, share of the net": f("extras") / f("net"),
  };
  const ranges = blocks.ranges!.map(({ ratio, low, high }) => {
    const value = ratios[String(ratio)]!;
    if (low === undefined || high === undefined) return { value, word: "no range" };
    return { value, word: value < Number(low) || value > Number(high) ? "look" : "ok" };
  });
  const asked = blocks.asked!.map(({ answer }) =>
    answer === "yes" || answer === "not applicable" ? "ok" : "look",
  );
  const looks = (words: readonly string[]): number => words.filter((word) => word === "look").length;
  return {
    figures,
    slip,
    lines,
    ratios,
    ranges,
    asked,
    /** Checks that fail: sums, lines, ratios and questions are one each, however many of them. */
    failing: [
      looks([...Object.values(figures).map(({ word }) => word), slip]),
      looks(lines.map(({ word }) => word)),
      looks(ranges.map(({ word }) => word)),
      looks(asked),
    ].filter((count) => count > 0).length,
  };
}
