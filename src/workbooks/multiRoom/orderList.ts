/** For the buyer: what to order from whom, as it was quoted. */
import { call, f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { answerPart } from "../parts";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
} from "./names/materials";
import { orders } from "./names/orderList";
import { cables, feeds, fittings, passives, plates, resistors, supplies, units } from "./names/parts";
import { price } from "./names/price";
import { site } from "./names/site";

/** Each list of parts with what is bought of it, in the order of Parts. */
export const BOUGHT = [
  [cablesBought, cables],
  [passivesBought, passives],
  [unitsBought, units],
  [suppliesBought, supplies],
  [platesBought, plates],
  [feedsBought, feeds],
  [resistorsBought, resistors],
  [fittingsBought, fittings],
] as const;

const [first, ...others] = BOUGHT.map(([bought, of]) => [bought.order, of.terms, of.article]);

/** Far more than a job buys of different parts. */
export const LINES = 60;

export const orderListSheet: SheetDefinition = {
  name: "Order list",
  kind: "print",
  alerts: ["expired", "no price", "no last day", "no supplier"],
  intro:
    "What to buy, by supplier, with prices as quoted on Parts; in whole packs and reels, spares with them.",
  print: { orientation: "landscape" },
  parts: [
    answerPart(orders, {
      heading: "Orders",
      formula: call("RIG.ORDERLIST", f`${LINES}`, ...first!, site.date, price.decimals, ...others.flat()),
      rows: LINES,
      lines: 1,
    }),
  ],
};
