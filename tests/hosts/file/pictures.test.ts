/** The pictures inside an .xlsx: there, described, sized, the same every time, and never in the way of the job. */
import { inflateSync } from "node:zlib";
import { scaledJob } from "../../../src/build/scaledJob";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx, type WriteXlsxOptions } from "../../../src/hosts/file/writeXlsx";
import { palettePng } from "../../../src/hosts/headless/palettePng";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { renderPng } from "../../../src/hosts/headless/renderPng";
import { levelsPicture } from "../../../src/pictures/levelsPicture";
import { oneLineDiagram } from "../../../src/pictures/oneLineDiagram";
import { slotsPicture } from "../../../src/pictures/slotsPicture";
import { textWidth } from "../../../src/pictures/textWidth";
import { withoutPictures, withPictures } from "../../../src/pictures/withPictures";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { bookOf, emptySheet } from "../../support/books";
import { partOf, partsOf } from "../../support/parts";
import { computed, withRow } from "../../support/pictureJobs";
import { recalculated, withLibreOffice } from "../../support/tools";

const book = computed();
const writeJob = (job: Book, options: WriteXlsxOptions = {}): Promise<Uint8Array> =>
  writeXlsx(withPictures(job), { ...options, renderPng });

const drawingOf = (file: Uint8Array): string =>
  partOf(
    file,
    [...partsOf(file).keys()].find((name) => /^xl\/drawings\/drawing\d+\.xml$/.test(name))!,
  );

interface Image {
  readonly width: number;
  readonly height: number;
  readonly kind: number;
  /** Red, green and blue of a pixel. */
  readonly pixel: (x: number, y: number) => number[];
}

/** A PNG of indexed colours without filters, read by the specification's chunks. */
function imageOf(png: Uint8Array): Image {
  const bytes = Buffer.from(png);
  expect(bytes.subarray(0, 8).toString("latin1")).toBe("\x89PNG\r\n\x1a\n");
  const chunks = new Map<string, Buffer>();
  for (let at = 8; at < bytes.length;) {
    const length = bytes.readUInt32BE(at);
    chunks.set(bytes.toString("latin1", at + 4, at + 8), bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const head = chunks.get("IHDR")!;
  const [width, height] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  const rows = head[9] === 3 ? inflateSync(chunks.get("IDAT")!) : Buffer.alloc(0);
  const palette = chunks.get("PLTE")!;
  return {
    width,
    height,
    kind: head[9]!,
    pixel: (x, y) => {
      const index = rows[y * (width + 1) + 1 + x]! * 3;
      return [...palette.subarray(index, index + 3)];
    },
  };
}

describe("a picture as PNG", () => {
  test("is twice its size in pixels, dark on white, and the same bytes twice", async () => {
    const picture = oneLineDiagram(book);
    const png = await renderPng(picture);
    expect(Buffer.from(await renderPng(picture)).equals(Buffer.from(png))).toBe(true);
    const image = imageOf(png);
    expect([image.width, image.height, image.kind]).toEqual([2 * picture.width, 2 * picture.height, 3]);
    expect(image.pixel(0, 0)).toEqual([255, 255, 255]);
  });

  test("shows the text: a letter fewer leaves fewer dark pixels", async () => {
    const drawn = async (room: string): Promise<number> => {
      const { svg } = oneLineDiagram(computed({ blocks: { rooms: withRow("outlet", "G-01", { room }) } }));
      const image = imageOf(await renderPng({ svg, width: 1, height: 1 }));
      let dark = 0;
      for (let y = 0; y < image.height; y++)
        for (let x = 0; x < image.width; x++) if (image.pixel(x, y)[0]! < 128) dark++;
      return dark;
    };
    expect(await drawn("MMMM")).toBeGreaterThan(await drawn("MMM"));
  });

  test("more colours than a palette holds are left to the renderer", () => {
    const pixels = new Uint8Array(300 * 4).map((_, at) => (at % 4 === 3 ? 255 : (at >> 2) >> (at % 4)));
    expect(palettePng(pixels, 300, 1)).toBeUndefined();
    expect(palettePng(Uint8Array.of(1, 2, 3, 254), 1, 1)).toBeUndefined();
    const two = imageOf(palettePng(Uint8Array.of(1, 2, 3, 255, 4, 5, 6, 255), 2, 1)!);
    expect([two.pixel(0, 0), two.pixel(1, 0)]).toEqual([
      [1, 2, 3],
      [4, 5, 6],
    ]);
  });

  test("text is as wide in the font that is installed as it is taken to be", async () => {
    // A bar as long as the text: its right edge and the last letter's ink end within a letter's side.
    for (const bold of [false, true]) {
      const text = "Flat 12, kitchen MW 0123456789 il.";
      const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="600" height="40"><rect width="600" height="40" fill="#fff"/><text x="0" y="20" font-size="20" font-family="'DejaVu Sans'" font-weight="${bold ? "bold" : "normal"}">${text}</text></svg>`;
      const image = imageOf(await renderPng({ svg, width: 600, height: 40 }));
      let last = 0;
      for (let x = 0; x < image.width; x++)
        for (let y = 0; y < image.height; y++) if (image.pixel(x, y)[0]! < 128) last = x;
      const width = textWidth(text, 20, bold);
      expect(last / 2).toBeLessThan(width + 0.5);
      expect(last / 2).toBeGreaterThan(width - 5);
    }
  });
});

describe("a job's file", () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await writeJob(book);
  });

  test("has each picture as an image with its words as alternative text, in its own size", () => {
    const drawing = drawingOf(bytes);
    const alternative = [...drawing.matchAll(/<xdr:cNvPr [^>]*descr="([^"]*)"/g)].map(([, text]) => text!);
    // The diagram goes over two pages, none of which cuts a head unit's part in two.
    expect(alternative).toHaveLength(4);
    expect(alternative[0]).toContain("2 head units, 6 devices, 17 outlets");
    expect(alternative[1]).toContain("outlet A-07 low");
    expect(alternative[2]).toContain("worst outlet A-07");
    expect(alternative[3]).toContain("97W at true azimuth");
    expect(drawing).not.toContain("twoCellAnchor");
    const sizes = [...drawing.matchAll(/<xdr:ext cx="(\d+)" cy="(\d+)"/g)].map(([, cx, cy]) => [
      Number(cx) / 9525,
      Number(cy) / 9525,
    ]);
    expect(sizes).toHaveLength(4);
    for (const [width, height] of sizes) {
      expect(width).toBeLessThanOrEqual(980);
      expect(height).toBeLessThanOrEqual(580);
    }
    expect([...partsOf(bytes).keys()].filter((name) => /^xl\/media\/image\d\.png$/.test(name))).toHaveLength(
      4,
    );
  });

  test("is the same bytes for the same job", async () => {
    expect(Buffer.from(await writeJob(computed())).equals(Buffer.from(bytes))).toBe(true);
  });

  test("is read back as the job alone, exactly as if no pictures had been drawn", async () => {
    expect(await readXlsx(bytes)).toEqual(await readXlsx(await writeXlsx(book)));
  });

  test("carries them in an office copy and in a sealed copy too", async () => {
    for (const copy of [{ frozen: true }, { sealed: true }]) {
      expect([...partsOf(await writeJob(book, copy)).keys()]).toContain("xl/media/image4.png");
    }
  });

  test("markup, quotes and line ends in a room's name stay text in the alternative text", async () => {
    const rooms = withRow("outlet", "A-07", { outlet: '"><x/>\n&' });
    const drawing = drawingOf(await writeJob(computed({ blocks: { rooms } })));
    expect(drawing).toContain("outlet &quot;&gt;&lt;x/&gt; &amp; low");
  });

  withLibreOffice("shows them in print, one to a page, under the repeated head", async () => {
    const pdf = (
      await recalculated(await writeJob(book, { sealed: true }), { to: "pdf", recalculate: false })
    ).toString("latin1");
    const images = [...pdf.matchAll(/\/Subtype\s*\/Image\s*\/Width (\d+)\s*\/Height (\d+)/g)].map(
      ([, width, height]) => `${width} × ${height}`,
    );
    const drawn = [...partsOf(await writeJob(book)).keys()].filter((name) => name.startsWith("xl/media/"));
    expect(new Set(images).size).toBe(drawn.length);
    for (const { width, height } of [levelsPicture(book), slotsPicture(book)])
      expect(images).toContain(`${2 * width} × ${2 * height}`);
  });
});

describe("the sheet of pictures", () => {
  test("stands last, for print, with the master verdict in its head", () => {
    const sheet = withPictures(book).sheets.at(-1)!;
    expect(sheet.name).toBe("Pictures");
    expect(sheet.cells.D1!.formula).toBe("checks_verdict");
    expect(sheet.results.D1).toBe(book.sheets[0]!.results.D1);
    expect(sheet.print!.breaks).toHaveLength(3);
    expect(sheet.pictures!.map(({ at }) => at)[0]).toBe("A5");
    // Each begins right behind the page break of the one before.
    expect(sheet.pictures!.slice(1).map(({ at }) => Number(at.slice(1)) - 1)).toEqual(sheet.print!.breaks);
  });

  test("is drawn once, however often, and taken away without a trace", () => {
    const once = withPictures(book);
    expect(withPictures(once)).toEqual(once);
    expect(withoutPictures(once)).toEqual({ ...book, looks: once.looks });
    expect(book.sheets.some(({ pictures }) => pictures)).toBe(false);
  });

  test("leaves a person's own sheet of that name alone", () => {
    const own = { ...emptySheet("pictures"), cells: { A1: { value: "mine" } } };
    const both = withPictures({ ...book, sheets: [...book.sheets, own] });
    expect(both.sheets.slice(-2).map(({ name }) => name)).toEqual(["pictures", "Pictures 2"]);
    expect(withoutPictures(both).sheets.at(-1)).toBe(own);
  });

  test("there is none for an empty job, or a workbook that is not ours", () => {
    const empty = recalculate(layOut(multiRoom));
    expect(withPictures(empty)).toBe(empty);
    const other = bookOf(emptySheet("S"));
    expect(withPictures(other)).toBe(other);
  });

  test("says so when the diagram would take too many pages, and draws the others", () => {
    const big = recalculate(layOut(multiRoom, scaledJob(guestHouse, 504)));
    const sheet = withPictures(big).sheets.at(-1)!;
    expect(sheet.cells.A4!.value).toMatch(
      /diagram of 504 outlets would take too many pages.*rigsheet picture/,
    );
    expect(sheet.pictures).toHaveLength(2);
  });

  test("a book with pictures and no way to render them is a mistake of ours, not a file without them", async () => {
    await expect(writeXlsx(withPictures(book))).rejects.toThrow(/need a renderer/);
  });
});
