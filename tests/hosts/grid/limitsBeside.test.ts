/** Cold above hot, or a low end above the high one, is refused where it is typed, in every host. */
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { parseAddress } from "../../../src/formula/address";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";

loadLibrary();
const book = layOut(multiRoom, guestHouse);
const model = openModel(book);
const sheetId = model.getters.getSheetIds()[book.sheets.findIndex(({ name }) => name === "Site")]!;
const at = (name: string) => {
  const { row, column } = parseAddress(book.names.find((one) => one.name === name)!.range)!;
  return { sheetId, row, col: column };
};
const type = (name: string, content: string) =>
  quietly(() => model.dispatch("UPDATE_CELL", { ...at(name), content }));
/** Whether what is typed is refused; what was there is put back. */
function refuses(name: string, content: string): boolean {
  const { content: before } = model.getters.getCell(at(name)) as { content: string };
  type(name, content);
  const refused = model.getters.isDataValidationInvalid(at(name));
  type(name, before);
  return refused;
}

test.each([
  // Site has -15 to 55 °C, 950 to 2150 MHz, 47 to 77 dBµV.
  ["site_cold", "60", false],
  ["site_cold", "20", true],
  ["site_cold", "-61", false],
  ["site_hot", "-20", false],
  ["site_hot", "91", false],
  ["site_hot", "40", true],
  ["site_low", "2200", false],
  ["site_high", "900", false],
  ["site_level_low", "78", false],
  ["site_level_high", "46", false],
  ["site_level_design", "46", false],
  ["site_level_design", "47", true],
])("%s of %s on the desk", (name, content, taken) => {
  expect(refuses(name, content)).toBe(!taken);
});

test("a blank partner sets no limit", () => {
  type("site_hot", "");
  expect(refuses("site_cold", "70")).toBe(false);
  type("site_hot", "55");
  expect(refuses("site_cold", "70")).toBe(true);
});

test("the file holds the rule over the other cell's name, and reads it back", async () => {
  const read = await readXlsx(await writeXlsx(book));
  const site = (of: typeof book) => of.sheets.find(({ name }) => name === "Site")!.validations;
  const rules = site(read).map(({ rule }) => rule);
  expect(rules).toEqual(site(book).map(({ rule }) => rule));
  expect(rules).toContainEqual({ kind: "number", min: -60, max: 90, atMost: "site_hot" });
  expect(rules).toContainEqual({ kind: "number", min: -60, max: 90, atLeast: "site_cold" });
});
