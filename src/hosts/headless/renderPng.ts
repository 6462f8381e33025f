/**
 * SVG as a PNG, the same bytes on every machine: a renderer compiled to
 * WebAssembly and an open font that is installed with us, none of the system's.
 * Letters that the font lacks (it has Latin, Greek, Cyrillic, Hebrew, Arabic
 * and more, but not Chinese, Japanese or Korean) are left out of the PNG; in
 * the SVG they stand.
 */
import { readFile } from "node:fs/promises";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { libraryFile } from "./libraryFile";
import { palettePng } from "./palettePng";

const FAMILY = "DejaVu Sans";
const FONTS = ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"];
/** Twice the pixels of the screen: sharp on paper. */
const SCALE = 2;
/** Beyond this many pixels a picture is drawn smaller: it would need gigabytes of memory. */
const MOST_PIXELS = 40_000_000;

/** What is needed of an SVG to render it. */
export interface Drawing {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

let fonts: Promise<Uint8Array[]> | undefined;

async function load(): Promise<Uint8Array[]> {
  await initWasm(await readFile(libraryFile("@resvg/resvg-wasm", "index_bg.wasm")));
  return Promise.all(FONTS.map((name) => readFile(libraryFile("dejavu-fonts-ttf", `ttf/${name}`))));
}

export async function renderPng({ svg, width, height }: Drawing): Promise<Uint8Array> {
  fonts ??= load();
  const fontBuffers = await fonts;
  const zoom = Math.min(SCALE, Math.sqrt(MOST_PIXELS / (width * height)));
  const drawing = new Resvg(svg, {
    fitTo: { mode: "zoom", value: zoom },
    font: { fontBuffers, defaultFontFamily: FAMILY, sansSerifFamily: FAMILY },
  });
  const image = drawing.render();
  const png = palettePng(image.pixels, image.width, image.height) ?? image.asPng();
  image.free();
  drawing.free();
  return png;
}
