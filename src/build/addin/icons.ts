/** The add-in's icons: our own drawings, rendered at each size that Excel asks for. */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { renderPng } from "../../hosts/headless/renderPng";
import { ICON_SIZES } from "../../hosts/excel/addIn/facts";

/** Up to this size the drawing is another: fewer and thicker lines. */
const SMALL_PX = 24;
/** Sizes in the package of a unified manifest. */
const COLOR_PX = 192;
const OUTLINE_PX = 32;
/** The renderer draws at twice the size that a drawing gives. */
const RENDERED_SCALE = 2;

/** @returns the PNG files by their name */
export async function icons(drawings: string): Promise<Map<string, Uint8Array>> {
  const rendered = async (file: string, size: number): Promise<Uint8Array> => {
    const drawing = await readFile(path.join(drawings, file), "utf8");
    const side = size / RENDERED_SCALE;
    const svg = drawing.replace("<svg ", `<svg width="${side}" height="${side}" `);
    return renderPng({ svg, width: side, height: side });
  };
  const files = new Map<string, Uint8Array>();
  for (const size of ICON_SIZES) {
    files.set(`icon-${size}.png`, await rendered(size <= SMALL_PX ? "icon-small.svg" : "icon.svg", size));
  }
  files.set("color.png", await rendered("icon.svg", COLOR_PX));
  files.set("outline.png", await rendered("outline.svg", OUTLINE_PX));
  return files;
}
