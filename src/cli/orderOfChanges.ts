/** `rigsheet compare OLD NEW --change-order FILE`: the paper for the customer. */
import { changeOrder } from "../compare/order/changeOrder";
import { money as moneyInWords } from "../compare/words";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeXlsx } from "../hosts/file/writeXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import type { Book } from "../workbooks/book";
import {
  changeOrderBook,
  datesInOrder,
  type OrderWords,
  type QuoteLine,
} from "../workbooks/changeOrder/changeOrderBook";
import { withPageBreaks, withPrint } from "../workbooks/printFoot";
import { sheetDate } from "../workbooks/sheetDate";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { plain } from "./plain";

export const ORDER_OPTIONS = {
  "change-order": { type: "string" },
  number: { type: "string" },
  reason: { type: "string" },
  date: { type: "string" },
  "valid-until": { type: "string" },
  paper: { type: "string", default: "a4" },
  anyway: { type: "boolean", default: false },
  force: { type: "boolean", default: false },
} as const;

export const ORDER_HELP = `  --change-order CHANGE.xlsx
                       write the change order to the customer: what changes by
                       what was bought, net, tax, total, and the revised total of
                       the order. OLD is the accepted quotation. Options cost what
                       it said; costs, margins, suppliers and notes stay inside
  --number CO-1        the order's number, its reason, its date and the last day
  --reason "…"         on which it can be accepted; what is left out is a blank
  --date 2026-11-20    to fill
  --valid-until 2026-12-15
  --paper a4           or letter
  --anyway             write it although something should be settled first
  --force              replace CHANGE.xlsx if it exists`;

const PAPERS = ["a4", "letter"] as const;

export interface OrderOptions {
  readonly "change-order": string;
  readonly number?: string;
  readonly reason?: string;
  readonly date?: string;
  readonly "valid-until"?: string;
  readonly paper: string;
  readonly anyway: boolean;
  readonly force: boolean;
}

/** @returns what the words say, before any file is read. @throws UsageTrouble */
export function orderAsked(values: OrderOptions, files: readonly string[]) {
  for (const file of files) outFile(values["change-order"], file, "xlsx", values.force, "--change-order");
  const out = values["change-order"];
  const paper = PAPERS.find((one) => one === values.paper.toLowerCase());
  if (!paper) throw new UsageTrouble(`--paper is "${values.paper}"; it can be ${PAPERS.join(" or ")}.`);
  const date = dayOf("--date", values.date);
  const until = dayOf("--valid-until", values["valid-until"]);
  const words: OrderWords = {
    ...(values.number?.trim() && { number: values.number.trim() }),
    ...(values.reason?.trim() && { reason: values.reason.trim() }),
    ...(date !== undefined && { date }),
    ...(until !== undefined && { until }),
  };
  const trouble = datesInOrder(words);
  if (trouble !== undefined) throw new UsageTrouble(trouble);
  return { out, paper, words, anyway: values.anyway };
}

/** @returns the exit code */
export async function writeOrder(
  older: Book,
  newer: Book,
  { out, paper, words, anyway }: ReturnType<typeof orderAsked>,
  console: Console,
): Promise<number> {
  const order = changeOrder(older, newer, words, recalculate);
  if (order.refused) {
    for (const line of order.refused) console.err(plain(line));
    console.err("No change order was written.");
    return EXIT.look;
  }
  for (const line of [...order.doubts, ...order.notes]) console.err(plain(line));
  if (order.doubts.length > 0 && !anyway) {
    console.err("No change order was written: settle this first, or add --anyway.");
    return EXIT.look;
  }
  const book = withPageBreaks(withPrint(changeOrderBook(order.paper), { paper }));
  await saveAtomically(out, await writeXlsx(book));
  const { net, total, currency, decimals } = order.paper;
  const cents = ({ before, after }: QuoteLine): string =>
    `${after < before ? "" : "+"}${(after - before).toFixed(decimals)}`;
  console.out(
    plain(
      `${out}: without tax ${cents(net)}, with tax ${cents(total)}, revised total ${moneyInWords(Math.round(total.after * 100))} ${currency}`,
    ),
  );
  return EXIT.ok;
}

function dayOf(option: string, text: string | undefined): number | undefined {
  if (text === undefined || text.trim() === "") return undefined;
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text.trim());
  const [year, month, day] = (found?.slice(1) ?? []).map(Number);
  const date = found ? new Date(Date.UTC(year!, month! - 1, day)) : undefined;
  if (date?.getUTCMonth() !== month! - 1 || year! < 1901)
    throw new UsageTrouble(`${option} is "${text}"; give the day as 2026-11-20.`);
  return sheetDate(year!, month!, day!);
}
