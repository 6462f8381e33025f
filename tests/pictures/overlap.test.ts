/** No word of a chart stands on another or runs over the edge, in either demonstration. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { levelsPicture } from "../../src/pictures/levelsPicture";
import type { Picture } from "../../src/pictures/picture";
import { slotsPicture } from "../../src/pictures/slotsPicture";
import { textWidth } from "../../src/pictures/textWidth";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

/** Of DejaVu Sans: how far letters and figures reach above and below their base line, in shares of the size. */
const ABOVE = 0.76;
const BELOW = 0.24;

interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxesOf({ svg }: Picture): Box[] {
  expect(svg).not.toContain("transform=");
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)/g)].map(([, attributes, text]) => {
    const of = (name: string): string | undefined =>
      new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes!)?.[1];
    const size = Number(of("font-size") ?? 11);
    const width = textWidth(text!.replace(/&[^;]+;/g, "x"), size, of("font-weight") === "bold");
    const [x, y] = [Number(of("x")), Number(of("y"))];
    const anchor = of("text-anchor");
    const left = anchor === "end" ? x - width : anchor === "middle" ? x - width / 2 : x;
    return { text: text!, left, right: left + width, top: y - ABOVE * size, bottom: y + BELOW * size };
  });
}

const apart = (a: Box, b: Box): boolean =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

describe.each([
  ["guest house", guestHouse],
  ["apartment block", apartmentBlock],
] as const)("the %s", (_, inputs) => {
  const book = recalculate(layOut(multiRoom, inputs));
  test.each([
    ["level against frequency", levelsPicture],
    ["slots and obstacles", slotsPicture],
  ] as const)("%s", (__, draw) => {
    const drawn = draw(book);
    const boxes = boxesOf(drawn);
    expect(boxes.length).toBeGreaterThan(20);
    const clashes = boxes.flatMap((a, index) =>
      boxes.slice(index + 1).flatMap((b) => (apart(a, b) ? [] : [`"${a.text}" on "${b.text}"`])),
    );
    expect(clashes).toEqual([]);
    expect(
      boxes.filter(({ left, right }) => left < 0 || right > drawn.width).map(({ text }) => text),
    ).toEqual([]);
  });
});
