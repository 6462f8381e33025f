/** A chain of spills that is longer than the library goes on for is told, and not shown as if it were computed. */
import { onLimit } from "../../../src/hosts/grid/iterationLimit";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const library = loadLibrary();
afterEach(() => onLimit());

/** Twice as long as the library goes on for. */
const LONG = 130;

/** Each formula takes what the one two rows below spills beside itself; nothing else says in which order they stand. */
function chain(rows: number): object {
  const cells = Object.fromEntries(
    Array.from({ length: rows }, (_, row) => [`A${row + 1}`, `=TRANSPOSE(B${row + 2}:B${row + 3})`]),
  );
  const end = { [`B${rows + 1}`]: "5", [`B${rows + 2}`]: "5" };
  return { version: "19.3.2", sheets: [{ id: "s", rowNumber: rows + 9, cells: { ...cells, ...end } }] };
}
const modelOf = (rows: number) => quietly(() => new library.Model(chain(rows) as never));
const first = (model: ReturnType<typeof modelOf>): unknown =>
  model.getters.getEvaluatedCell({ sheetId: "s", row: 0, col: 0 }).value;

test("a short chain comes to its end, and nothing is told", () => {
  let told = 0;
  onLimit(() => (told += 1));
  expect(first(modelOf(20))).toBe(5);
  expect(told).toBe(0);
});

test("in a program: an error, so that no stale figure goes anywhere", () => {
  expect(() => modelOf(LONG)).toThrow("the workbook could not be computed to its end");
});

test("on a page: told, at loading and after an edit that leaves it so, and the page goes on", () => {
  let told = 0;
  onLimit(() => (told += 1));
  const model = modelOf(LONG);
  expect(told).toBe(1);
  expect(first(model)).not.toBe(5);
  quietly(() => model.dispatch("UPDATE_CELL", { sheetId: "s", row: LONG + 1, col: 1, content: "6" }));
  expect(told).toBeGreaterThan(1);
});
