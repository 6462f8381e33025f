import { columnWidths } from "../../../src/hosts/pdf/columnWidths";

test.each([
  ["by shares", [1, 3], [0, 0], 100, [25, 75]],
  ["none narrower than its longest word", [1, 3], [40, 0], 100, [40, 60]],
  ["one that is widened narrows the others in proportion", [1, 2, 1], [60, 0, 0], 120, [60, 40, 20]],
  ["words that do not fit together give way in proportion", [1, 1], [150, 50], 100, [75, 25]],
  ["exactly the room", [1, 1], [60, 40], 100, [60, 40]],
])("%s", (_, shares, least, room, wanted) => {
  const widths = columnWidths(shares, least, room);
  widths.forEach((width, index) => expect(width).toBeCloseTo(wanted[index]!, 9));
  expect(widths).toHaveLength(wanted.length);
});
