/** A name is found as by a search through all of them, whatever was renamed, added, deleted or undone before. */
import fc from "fast-check";
import { tries } from "../../support/tries";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const library = loadLibrary();
const NAMES = ["rooms_run", "ROOMS_RUN", "Rooms_run", "total", "Total", "net"];
const name = fc.constantFrom(...NAMES);
const ranges = fc
  .nat({ max: 8 })
  .map((row) => [{ _sheetId: "S", _zone: { left: 0, right: 0, top: row, bottom: row } }]);

const edit = fc.oneof(
  fc.record({ name, ranges }).map((one) => ["CREATE_NAMED_RANGE", one] as const),
  fc
    .record({ oldRangeName: name, newRangeName: name, ranges })
    .map((one) => ["UPDATE_NAMED_RANGE", one] as const),
  fc.record({ name }).map((one) => ["DELETE_NAMED_RANGE", one] as const),
  fc
    .nat({ max: 5 })
    .map(
      (row) =>
        ["REMOVE_COLUMNS_ROWS", { sheetId: "S", sheetName: "S", dimension: "ROW", elements: [row] }] as const,
    ),
  fc.constantFrom(["REQUEST_UNDO", {}] as const, ["REQUEST_REDO", {}] as const),
);

test("as by a search, after every edit", () => {
  let found = 0;
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
      const { getters, dispatch } = quietly(
        () =>
          new library.Model({
            sheets: [{ id: "S", name: "S", rowNumber: 20, colNumber: 2 }],
            namedRanges: { rooms_run: "S!A2", total: "S!A5" },
          }),
      );
      for (const [type, payload] of edits) {
        quietly(() => dispatch(type as never, payload as never));
        for (const one of NAMES) {
          const searched = getters
            .getNamedRanges()
            .find((range) => range.name.toLowerCase() === one.toLowerCase());
          expect(getters.getNamedRange(one)).toBe(searched);
          if (searched) found++;
        }
      }
    }),
    { numRuns: tries(100, 500, 2000) },
  );
  expect(found).toBeGreaterThan(0);
});
