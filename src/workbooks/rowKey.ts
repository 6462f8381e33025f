/** By which column a row of a block is known: the first of these that the block has. */
const KEYS = ["outlet", "id", "name"];

/** @returns the key of that column; undefined where rows have no name */
export const rowKey = (columns: readonly { readonly key: string }[]): string | undefined =>
  KEYS.find((one) => columns.some(({ key }) => key === one));
