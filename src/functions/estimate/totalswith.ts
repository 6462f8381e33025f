import { faults, isFault } from "../../engine/faults";
import { TAXED, totalWith } from "../../engine/estimate/totalsWith";
import { declare } from "../core/declare";
import { choice, list, number, optional, text } from "../core/parameters";
import { decimals, rule } from "./parameters";

const MOST = 1e12;

const sum = number({
  name: "sum",
  help: "What the option or alternate adds to the price without tax; less than 0 for what is cheaper.",
  unit: "money",
  min: -MOST,
  max: MOST,
});

const ofWhich = text({
  name: "tax_class",
  help: "The tax class that it is in; left out, the usual tax, as of materials.",
  wanted: "a tax class",
});

const rate = (name: string, help: string) =>
  number({ name, help, min: 0, max: 1, advice: "A rate is a share, such as 0.2 or 20%" });

const amount = (name: string, help: string) => number({ name, help, unit: "money", min: -MOST, max: MOST });

export const totalswith = declare({
  name: "TOTALSWITH",
  group: "Estimate",
  summary: "Total of a quote, tax and discount with it, once an option or an alternate is in.",
  parameters: [
    sum,
    list(text({ name: "classes", help: "Tax classes, as one list.", wanted: "the tax classes" })),
    list(rate("rates", "The rate of each class.")),
    list(amount("amounts", "What of the price before the discount is in each class.")),
    amount("usual_taxed", "What of it is in no class and taxed at the usual rate."),
    amount("untaxed", "What of it is in no class and not taxed."),
    rate("usual_rate", "The usual rate of tax."),
    optional(ofWhich),
    optional(
      choice({ name: "tax_on", help: "What the usual tax is charged on.", choices: TAXED }),
      "materials and labour",
    ),
    optional(
      number({
        name: "discount_sum",
        help: "A discount as a sum off the price without tax.",
        unit: "money",
        min: 0,
        max: MOST,
      }),
      0,
    ),
    optional(
      number({
        name: "discount_share",
        help: "A discount as a share of it; where it is given the sum is not looked at.",
        min: 0,
        max: 1,
        advice: "A discount is a share of the price, such as 0.05 or 5%",
      }),
    ),
    optional(rule, "half away"),
    optional(decimals, 2),
  ],
  result: { shape: "cell", unit: "money", help: "The total with tax." },
  equation:
    "net = price + sum − discount; each class and the usual part × net ÷ price, rounded; total = net + the rounded tax of each. What the rounded parts miss of net goes to the usual part, or to the greatest class.",
  source: "Common practice, no source: a discount lowers each class by the same share",
  accuracy: "Exact to the cent: the total that the quote has with the option chosen.",
  tasks: [
    "What does the customer pay with this option?",
    "What does the quote come to with the cheaper plates?",
  ],
  examples: [
    {
      formula: 'RIG.TOTALSWITH(100,{"reduced"},{0.07},{200},1000,0,0.19)',
      result: 1523,
      tolerance: 0,
      source: "by hand: 1300 without tax; 7 % of 200 are 14, 19 % of 1100 are 209",
    },
    {
      formula: 'RIG.TOTALSWITH(-50,{"reduced"},{0.07},{250},1000,0,0.2,"reduced",,,0.1)',
      result: 1272.6,
      tolerance: 0,
      source:
        "by hand: 1200 less a tenth are 1080, of which 180 at 7 % bear 12.60 of tax and 900 at 20 % bear 180",
    },
  ],
  seeAlso: ["ROUNDMONEY", "ADDMONEY"],
  faultsWhen: [
    "A tax class is not in the list.",
    "The lists of classes, rates and amounts are of different length.",
  ],
  compute: (
    sum,
    classes,
    rates,
    amounts,
    usualTaxed,
    untaxed,
    usualRate,
    inClass,
    taxOn,
    discountSum,
    discountShare,
    rule,
    decimals,
  ) => {
    if (rates.length !== classes.length) return faults.shortColumn("rates", rates.length, classes.length);
    if (amounts.length !== classes.length)
      return faults.shortColumn("amounts", amounts.length, classes.length);
    const listed = [];
    for (const [index, name] of classes.entries()) {
      const [rate, amount] = [rates[index] ?? 0, amounts[index] ?? 0];
      if (name === null) continue;
      if (isFault(name)) return faults.atRow("classes", index + 1, name);
      if (isFault(rate)) return faults.atRow("rates", index + 1, rate);
      if (isFault(amount)) return faults.atRow("amounts", index + 1, amount);
      listed.push({ name, rate, amount });
    }
    const wanted = inClass?.toLowerCase();
    const at =
      wanted === undefined ? undefined : listed.findIndex(({ name }) => name.toLowerCase() === wanted);
    if (at === -1)
      return faults.taxClassUnknown(
        inClass!,
        listed.map(({ name }) => name),
      );
    return totalWith(
      {
        classes: listed,
        usualTaxed,
        untaxed,
        usualRate,
        taxOn,
        discount: discountShare === undefined ? { sum: discountSum } : { share: discountShare },
        rule,
        decimals,
      },
      sum,
      at,
    );
  },
});
