/** SVG as a PNG in Node, with the renderer and the fonts that are installed with us. */
import { readFile } from "node:fs/promises";
import { libraryFile } from "./libraryFile";
import { pngRenderer } from "./pngRenderer";

const FONTS = ["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"];

export const renderPng = pngRenderer(async () => ({
  wasm: await readFile(libraryFile("@resvg/resvg-wasm", "index_bg.wasm")),
  fonts: await Promise.all(FONTS.map((name) => readFile(libraryFile("dejavu-fonts-ttf", `ttf/${name}`)))),
}));
