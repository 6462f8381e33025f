/** The change order to the customer, held to an outsider's pairs of revisions (tests/fixtures/changes). */
import { changeOrder } from "../../src/compare/order/changeOrder";
import { recalculate } from "../../src/hosts/headless/recalculate";
import {
  changeOrderBook,
  type OrderPaper,
  type QuoteLine,
} from "../../src/workbooks/changeOrder/changeOrderBook";
import { changeCases, revisionsOf, type ChangeCase } from "../support/changeCases";
import { tries } from "../support/tries";

/** No order is made of these, where the outsider left it open or asked for none. */
const NONE_MADE: Readonly<Record<string, RegExp>> = {
  "ch-14-supplier-only": /Nothing that the customer reads or pays/,
  "ch-15-valid-until-of-price": /Nothing that the customer reads or pays/,
  "ch-25-crew-of-three": /Nothing that the customer reads or pays/,
  // The slot has no dish that sees it: the workbook itself says that entries are missing.
  "ch-53-slot-added": /later quotation can't be relied on.*Entries are missing/,
  // A minimum over the level that outlets are designed for is an entry that is wrong.
  "ch-55-limit-tightened": /later quotation can't be relied on/,
  "ch-56-limit-loosened": /Nothing that the customer reads or pays/,
  "ch-57-hotter": /Nothing that the customer reads or pays/,
  // Whole reels: nothing moves, and what is wasted is the firm's.
  "ch-58-waste": /Nothing that the customer reads or pays/,
  "ch-65-device-renamed": /Nothing that the customer reads or pays/,
  "ch-66-device-renamed-orphans": /later quotation can't be relied on/,
  "ch-67-cable-renamed": /Nothing that the customer reads or pays/,
  // "Nothing or one line": where rows stand on a sheet is nobody's but the office's.
  "ch-70-rows-reversed": /Nothing that the customer reads or pays/,
  "ch-71-two-rows-swapped": /Nothing that the customer reads or pays/,
  "ch-72-distribution-moved": /Nothing that the customer reads or pays/,
  // The line of the log has no date, which the workbook's own checks call an entry that is missing.
  "ch-80-notes-and-log-only": /later quotation can't be relied on/,
  "ch-81-letterhead": /Nothing that the customer reads or pays/,
  "ch-82-nothing": /Nothing has changed/,
  "ch-83-revision-only": /Nothing that the customer reads or pays/,
  "ch-88-other-quote-number": /Nothing that the customer reads or pays/,
  "ch-89-other-currency": /different currencies/,
  "ch-90-other-currency-and-prices": /different currencies/,
  // A question first, and never turned round by itself.
  "ch-91-order-of-files": /second workbook is the older one: revision 2/,
  "ch-93-later-with-error": /later quotation can't be relied on/,
  "ch-94-earlier-with-error": /earlier quotation can't be relied on/,
};
/** What somebody has to settle before a customer gets it, in words of the sentence. */
const TO_SETTLE: Readonly<Record<string, RegExp>> = {
  "ch-05-outlet-on-full-head-unit": /without the user bands/,
  "ch-06-three-outlets-spread": /without the user bands/,
  "ch-08-recorder-overflows": /without the user bands/,
  "ch-40-two-alternates-chosen": /Alternates chosen for the same thing/,
  "ch-50-head-unit-swapped-badly": /cannot command/,
  "ch-51-supply-swapped": /short of volts/,
  "ch-52-amplifier-out": /Outlets too weak/,
  "ch-63-floor-renamed-forgotten-crew": /name or place alone changes the price/,
  "ch-64-floor-one-row-misspelt": /name or place alone changes the price/,
  "ch-75-customer-name": /is it the same job/,
  "ch-77-validity-passed": /before its own date/,
};

const two = changeCases.filter(
  (one) => !one.laterBook && !one.laterFile && !one.sameFile && one.fields === undefined,
);
/** Spread over all kinds; the whole of them in a long run. */
const shown = two.filter(
  (_, index) => index % Math.ceil(two.length / tries(34, two.length, two.length)) === 0,
);

const thousandths = (value: number): number => Math.round(value * 1000);
const by = ({ before, after }: QuoteLine): number => thousandths(after) - thousandths(before);
const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);

/** Everything that can be read in the workbook. */
const textsOf = (paper: OrderPaper): string =>
  changeOrderBook(paper)
    .sheets.flatMap(({ cells }) => Object.values(cells).map(({ value, note }) => [value, note]))
    .flat()
    .filter((value) => typeof value === "string")
    .join("\n")
    .toLowerCase()
    // Those of the street.
    .replace("overhead lines", "");

const orderOf = (one: ChangeCase) => {
  const [older, newer] = revisionsOf(one);
  return changeOrder(older, newer, {}, recalculate);
};

test("there are the outsider's pairs, of which 100 are two workbooks", () => {
  expect(changeCases).toHaveLength(112);
  expect(two).toHaveLength(100);
});

test.each(shown.map((one) => [one.id, one] as const))("%s", (id, one) => {
  const order = orderOf(one);
  if (order.refused) {
    expect(order.refused.join(" ")).toMatch(NONE_MADE[id] ?? /an order was to be made/);
    return;
  }
  expect(NONE_MADE[id]).toBeUndefined();
  const { paper, doubts } = order;
  expect(doubts.join("\n")).toMatch(TO_SETTLE[id] ?? /^$/);

  // What must hold of every order, to the last decimal.
  const [net, tax, total] = [by(paper.net), sum(paper.taxes.map(by)), by(paper.total)];
  expect(sum(paper.scope.map((line) => thousandths(line.net)))).toBe(net);
  expect(sum(paper.lines.map(by))).toBe(net);
  expect(net + tax).toBe(total);

  const within = (one.sum.tolerance as number | undefined) ?? 0.02;
  const wanted = {
    net: net / 1000,
    tax: tax / 1000,
    "earlier total": paper.total.before,
    "revised total": paper.total.after,
  };
  for (const [what, value] of Object.entries(wanted)) {
    const want = one.sum[what];
    if (typeof want === "number")
      expect({ what, off: Math.abs(value - want) <= within + 1e-9 }).toEqual({ what, off: true });
  }
  for (const { says, net: own } of one.scope) {
    const lines = paper.scope.filter(({ what, details }) =>
      says.every((word) => `${what} ${details}`.toLowerCase().includes(word.toLowerCase())),
    );
    expect({ says, found: lines.length > 0 }).toEqual({ says, found: true });
    if (typeof own === "number")
      expect({ says, near: lines.some((line) => Math.abs(line.net - own) <= within + 1e-9) }).toEqual({
        says,
        near: true,
      });
  }
  if (one.oneLine) expect(paper.scope).toHaveLength(1);
  const texts = textsOf(paper);
  expect(
    one.mustNotShow.filter(
      (word) => texts.includes(word.toLowerCase()) && !one.scope.some(({ says }) => says.includes(word)),
    ),
  ).toEqual([]);
  expect(texts).not.toMatch(/\b(?:margin|markup|overhead|contingency|supplier|cost|profit)|[a-z]![a-z]+\d/);
});
