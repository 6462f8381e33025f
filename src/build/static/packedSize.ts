/** What files weigh on the way from a server that packs what is worth packing. */
import { gzipSync } from "node:zlib";
import type { Files } from "./deskFiles";

/** A phone in a stairwell fetches it in half a minute. */
export const MOST_FIRST_KILOBYTES = 3000;

/** Of each file the smaller of its two forms, in kilobytes; as most servers are set, at the sixth of nine levels. */
export const packedSize = (files: Files): number =>
  Math.ceil(
    [...files.values()].reduce(
      (sum, bytes) => sum + Math.min(bytes.length, gzipSync(bytes, { level: 6 }).length),
      0,
    ) / 1000,
  );
