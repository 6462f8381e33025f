/**
 * In the place of the unpacking in a worker that the PDF library's reader of PNG has in a page: a policy forbids such
 * workers, and a logo with transparent parts would never be done. The build puts this file there.
 */
import { unzlibSync } from "fflate";

export function unzlib(bytes: Uint8Array, done: (error: Error | null, data: Uint8Array) => void): void {
  done(null, unzlibSync(bytes));
}
