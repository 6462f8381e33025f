/** An estimator's whole job in Excel, on the stand-in. */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { ExcelStandIn } from "../../support/excelStandIn";
import { expectScenario, runScenario } from "../scenario";

test.each([false, true])(
  "the scenario runs in Excel (spilled cells show their formula: %s)",
  async (ghostFormulas) => {
    const excel = new ExcelStandIn({ ghostFormulas });
    const remove = excel.install();
    try {
      const result = await runScenario({
        host: new ExcelHost(),
        type: (sheet, at, value) => excel.type(sheet, at, value),
        choose: (sheet, at) => excel.choose(sheet, at),
        forget: (sheet, at) => void excel.state.forgotten.add(`${sheet}!${at}`),
        copies: () => excel.created,
      });
      expectScenario(result);
      expect(result.enteredAgain).toBe(1);
      expect(excel.openFiles).toBe(0);
    } finally {
      remove();
    }
  },
);
