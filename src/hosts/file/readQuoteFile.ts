import { readTypedQuote } from "../../workbooks/quoteReview/typed/readQuote";
import type { TypedQuote } from "../../workbooks/quoteReview/typed/typedQuote";
import { readTables } from "./readTables";

/**
 * Somebody else's quote out of a list, text or workbook; one that is no table at all rejects with a FileTrouble.
 * @returns a sentence where no quote is in it
 */
export const readQuoteFile = async (bytes: Uint8Array): Promise<TypedQuote | string> =>
  readTypedQuote(await readTables(bytes));
