/** That a workbook could not be computed to its end, told to whoever shows or writes its figures. */

/** An error where nobody has asked to be told: figures that may be stale must not go anywhere. */
const STOP = (): never => {
  throw new Error("the workbook could not be computed to its end");
};

let listener: () => void = STOP;

/** @param tell is called after every computing that did not come to its end; a page shows it, and goes on */
export const onLimit = (tell: () => void = STOP): void => {
  listener = tell;
};

export const limitReached = (): void => listener();
