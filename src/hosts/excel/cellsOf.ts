/** The cells that a loaded range covers, as `C5:C30`: without its sheet and without dollar signs. */
export const cellsOf = ({ address }: Pick<Excel.Range, "address">): string =>
  address.slice(address.lastIndexOf("!") + 1).replace(/\$/g, "");
