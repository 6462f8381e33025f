/** Which pages of other browsers the desk's server knows to have a job open. */
import { askingOf, OpenPages } from "../../../src/hosts/desk/server/openPages";

const AT = new Date("2026-11-30T08:00:00Z");
const page = (name: string, browser: string) => ({ page: name, browser });

test("another browser is told of, with its time; the same one is not, whatever its pages", () => {
  const pages = new OpenPages();
  pages.shows(page("a1", "a"), "job-1", AT);
  pages.shows(page("a2", "a"), "job-1", new Date("2026-11-30T09:00:00Z"));
  expect(pages.elsewhere(page("a1", "a"), "job-1")).toBeUndefined();
  expect(pages.elsewhere(page("b1", "b"), "job-1")).toBe("2026-11-30T08:00:00.000Z");
  expect(pages.elsewhere(page("b1", "b"), "job-2")).toBeUndefined();
});

test("a page that saves again keeps its time; one that shows another job or is closed has this one no more", () => {
  const pages = new OpenPages();
  pages.shows(page("a1", "a"), "job-1", AT);
  pages.shows(page("a1", "a"), "job-1", new Date("2026-11-30T09:00:00Z"));
  expect(pages.elsewhere(page("b1", "b"), "job-1")).toBe("2026-11-30T08:00:00.000Z");
  pages.shows(page("a1", "a"), "job-2", AT);
  expect(pages.elsewhere(page("b1", "b"), "job-1")).toBeUndefined();
  expect(pages.elsewhere(page("b1", "b"), "job-2")).toBeDefined();
  pages.left("a1");
  expect(pages.elsewhere(page("b1", "b"), "job-2")).toBeUndefined();
});

test("of pages that never say goodbye the oldest are forgotten, not the memory filled", () => {
  const pages = new OpenPages();
  for (let index = 0; index < 101; index++) pages.shows(page(`a${index}`, "a"), `job-${index}`, AT);
  expect(pages.elsewhere(page("b1", "b"), "job-0")).toBeUndefined();
  expect(pages.elsewhere(page("b1", "b"), "job-1")).toBeDefined();
});

test.each([undefined, "", "one", "one two three", "one <b>", ` two`, `${"x".repeat(65)} b`])(
  "%p is no page's name",
  (header) => expect(askingOf(header)).toBeUndefined(),
);
test("a page's two names", () => expect(askingOf("p-1 b_2")).toEqual({ page: "p-1", browser: "b_2" }));
