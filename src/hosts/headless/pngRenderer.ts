/**
 * SVG as a PNG, the same bytes on every host: a renderer compiled to
 * WebAssembly and an open font that come with us, none of the system's.
 * Letters that the font lacks (it has Latin, Greek, Cyrillic, Hebrew, Arabic
 * and more, but not Chinese, Japanese or Korean) are left out of the PNG; in
 * the SVG they stand.
 */
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { palettePng } from "./palettePng";

const FAMILY = "DejaVu Sans";
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

/** What the renderer is made of, wherever it lies. */
export interface RendererParts {
  readonly wasm: Uint8Array;
  /** The regular and the bold face. */
  readonly fonts: readonly Uint8Array[];
}

/** @param load is called once, when the first picture is drawn; again after it has failed */
export function pngRenderer(load: () => Promise<RendererParts>): (drawing: Drawing) => Promise<Uint8Array> {
  let ready: Promise<Uint8Array[]> | undefined;
  const begin = async (): Promise<Uint8Array[]> => {
    const { wasm, fonts } = await load();
    await initWasm(wasm as Uint8Array<ArrayBuffer>);
    return [...fonts];
  };
  return async ({ svg, width, height }) => {
    ready ??= begin().catch((error: unknown) => {
      ready = undefined;
      throw error;
    });
    const fontBuffers = await ready;
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
  };
}
