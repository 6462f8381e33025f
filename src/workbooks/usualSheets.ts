import type { Book } from "./book";

const CUSTOMERS_PAGE = "Quote";

/** @returns the sheets that are printed where none is named: the customer's page; undefined, for all, where there is none */
export const usualSheets = ({ sheets }: Book): string[] | undefined =>
  sheets.some(({ name }) => name === CUSTOMERS_PAGE) ? [CUSTOMERS_PAGE] : undefined;
