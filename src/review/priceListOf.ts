/** The prices of a workbook's Parts sheet, to hold others to. */
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { filledCells, namedCells, plainWord, PRICED_BLOCKS } from "./namedCells";
import type { PriceList } from "./rule";

export const priceListOf = (book: Book): PriceList =>
  Object.fromEntries(
    PRICED_BLOCKS.map((block) => {
      const prices = namedCells(book, estimate[block].price.name);
      return [
        block,
        Object.fromEntries(
          filledCells(book, estimate[block].name.name).flatMap(({ value, index }) => {
            const price = prices[index]?.value;
            return typeof price === "number" ? [[plainWord(value), price]] : [];
          }),
        ),
      ];
    }),
  );
