/** The static folder and the one file, made of what is built, once for a file of tests. */
import path from "node:path";
import type { Files } from "../../../src/build/static/deskFiles";
import { oneFile } from "../../../src/build/static/oneFile";
import { staticFolder } from "../../../src/build/static/staticFolder";

export const DIST = path.join(__dirname, "..", "..", "..", "dist");

let folder: Promise<Files> | undefined;
export const builtFolder = (): Promise<Files> => (folder ??= staticFolder(DIST));

let file: Promise<Uint8Array> | undefined;
export const builtFile = (): Promise<Uint8Array> => (file ??= oneFile(DIST));
