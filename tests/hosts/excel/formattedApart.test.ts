/** Figures in the pane of Excel against the grid library's, which the desk and the command show them by. */
import { formattedApart } from "../../../src/hosts/excel/formattedApart";
import { formattedIn } from "../../../src/hosts/headless/formattedIn";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { layOut } from "../../../src/workbooks/layOut";
import { DATE_FORMAT } from "../../../src/workbooks/looks";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { WRITING_FIELD, WRITINGS } from "../../../src/workbooks/typed/writing";

const job = recalculate(layOut(multiRoom, guestHouse));
const shown = job.sheets.flatMap(({ cells, results }) =>
  [...new Set([...Object.keys(cells), ...Object.keys(results)])].flatMap((at) => {
    const value = results[at] ?? cells[at]?.value;
    const format = job.looks[cells[at]?.look ?? -1]?.format;
    return typeof value === "number" || typeof value === "boolean" ? [{ value, format }] : [];
  }),
);

const written = (label: string): Book =>
  layOut(multiRoom, { ...guestHouse, fields: { ...guestHouse.fields, [WRITING_FIELD]: label } } as JobInputs);

test.each(WRITINGS.map(({ label }) => label))(
  "every figure of the demonstration as %s writes it",
  (label) => {
    const book = written(label);
    const [ours, theirs] = [formattedApart(book), formattedIn(book)];
    expect(shown.length).toBeGreaterThan(1000);
    const odd = [0, -0.001, -1234.5, 1234, 12_345.678, 1_234_567.5].flatMap((value) =>
      ["0", "0.00", "#,##0.00", "#,##0", "0%", "0.0%"].map((format) => ({ value, format })),
    );
    for (const { value, format } of [...shown, ...odd, { value: 46_328, format: DATE_FORMAT }])
      expect([value, format, ours(value, format)]).toEqual([value, format, theirs(value, format)]);
  },
);
