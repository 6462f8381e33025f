/** What is undone in a slice of a workbook comes to what it comes to in the whole. */
import { recalculate, trials } from "../../src/hosts/headless/recalculate";
import { SUMS, sumsOf } from "../../src/review/measures";
import { sliced } from "../../src/review/sliced";
import { withChanges } from "../../src/review/withChanges";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "./cleanJobs";

test("where what is undone leaves errors in the place of lists", () => {
  const clean = mendedGuestHouse();
  // No cable is so hot: neither dishes nor what hangs on them can be worked out.
  const job = { ...clean, fields: { ...clean.fields, site_hot: 131 } };
  const own = recalculate(layOut(multiRoom, job));
  const place = own.names.find(({ name }) => name === "site_hot")!;
  const changes = [
    { place: { sheet: place.sheet, cell: place.range.replaceAll("$", "") }, value: clean.fields.site_hot! },
  ];
  const whole = sumsOf(recalculate(withChanges(own, changes)));
  expect(sumsOf(own).total).not.toBeCloseTo(whole.total!, 0);
  expect(sumsOf(trials(sliced(own, SUMS, changes))(changes))).toEqual(whole);
});
