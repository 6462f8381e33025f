/** The large parts of a page without a server: beside it in its folder, or packed in the one file. */
import { gunzipSync } from "fflate";
import type { RendererParts } from "../../headless/pngRenderer";
import type { Stand } from "./stand";
import { fromBase64 } from "../../../workbooks/base64";
import { unfoldedFont } from "./unfoldedFont";

export interface PageParts {
  /** Of the grid library. */
  gridTemplates(): Promise<string>;
  /** For the pictures of a workbook that is saved. */
  renderer(): Promise<RendererParts>;
}

export function partsOf(stand: Exclude<Stand, "server">): PageParts {
  const whole = stand === "folder" ? besides : inside;
  const packed =
    stand === "folder" ? async (name: string) => gunzipSync(await besides(`${name}.pack`)) : inside;
  return {
    gridTemplates: async () => new TextDecoder().decode(await whole("library/o_spreadsheet.xml")),
    renderer: async () => ({
      wasm: await packed("pictures/renderer.wasm"),
      fonts: await Promise.all(
        ["pictures/regular.ttf", "pictures/bold.ttf"].map(async (name) => unfoldedFont(await packed(name))),
      ),
    }),
  };
}

/** @param name beside the page's own script */
async function besides(name: string): Promise<Uint8Array> {
  const address = besidesAddress(name);
  const answer = await fetch(address).catch(() => undefined);
  if (!answer?.ok)
    throw new Error(
      `${name}, a part of this page, can't be loaded now${answer ? ` (the server answers ${answer.status})` : ": there is no network, and it is not kept in this browser yet"}. Try again with the network; what was typed is not touched by it`,
    );
  return new Uint8Array(await answer.arrayBuffer());
}

/** Known only while the script is read for the first time. */
const own = (document.currentScript as HTMLScriptElement | null)?.src ?? location.href;

/** Of what lies beside the page's own script. */
export const besidesAddress = (name: string): string => new URL(name, own).href;

/** What the build put into the page itself, for a page that may ask for nothing else. */
export async function inside(name: string): Promise<Uint8Array> {
  const element = document.getElementById(`part:${name}`);
  if (!element)
    throw new Error(`${name} is missing in this page: the file is not whole. Copy or download it again`);
  return gunzipSync(fromBase64(element.textContent.trim()));
}
