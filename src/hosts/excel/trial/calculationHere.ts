/** How this Excel calculates; nothing of it is changed, as it holds for all that is open. */
import { hasApi } from "../inExcel";
import { good, look, type Found } from "./steps";

export const calculationHere = (): Promise<{ mode: string; found: Found }> =>
  Excel.run(async (context) => {
    const { application, workbook } = context;
    const hasPrecision = hasApi("1.9");
    application.load("calculationMode");
    if (hasPrecision) workbook.load("usePrecisionAsDisplayed");
    await context.sync();
    const mode: string = application.calculationMode;
    if (mode !== "Automatic")
      return {
        mode,
        found: look("manual in whole or in part: workbooks stand still until F9 is pressed", mode),
      };
    return hasPrecision && workbook.usePrecisionAsDisplayed
      ? { mode, found: look("precision as displayed is on: figures are rounded as they are shown", mode) }
      : { mode, found: good("automatic", mode) };
  });
