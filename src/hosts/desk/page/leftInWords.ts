/** Why a cell of a guarded sheet takes nothing that is typed or pasted. */
export type WhyLeft = "calculated" | "label" | "unasked";

const UNLOCK = "use “Unlock sheet” in the bar above.";
const NOTES = `Choose a boxed cell; “Add rows” makes a block longer; notes of your own go on a sheet that you add. To write here anyway, ${UNLOCK}`;

const ONE: Readonly<Record<WhyLeft, string>> = {
  calculated: `This cell is calculated, so it was left as it is. To change it anyway, ${UNLOCK}`,
  label: `This cell is one of the workbook's own labels, so it was left as it is. To change it anyway, ${UNLOCK}`,
  unasked: `Nothing is asked for in this cell, so nothing was entered. ${NOTES}`,
};

/** @returns one sentence or two for all the cells that one step left as they were */
export function leftInWords(reasons: readonly WhyLeft[]): string {
  const [only, more] = reasons;
  if (only === undefined) return "";
  if (more === undefined) return ONE[only];
  const unasked = reasons.filter((why) => why === "unasked").length;
  const kept = reasons.length - unasked;
  const what = reasons.includes("calculated") ? "calculated" : "the workbook's own labels";
  const sentences = [
    kept === 1 && `One of these cells is ${what}, so it was left as it is.`,
    kept > 1 && `${kept} of these cells are ${what}, so they were left as they are.`,
    unasked === 1 && "In one of these cells nothing is asked for, so nothing was entered there.",
    unasked > 1 && `In ${unasked} of these cells nothing is asked for, so nothing was entered there.`,
    unasked > 0 ? NOTES : `To change them anyway, ${UNLOCK}`,
  ];
  return sentences.filter(Boolean).join(" ");
}
