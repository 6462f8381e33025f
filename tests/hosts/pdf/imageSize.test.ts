import { imageSize } from "../../../src/hosts/pdf/imageSize";
import { onePixel } from "./onePixel";

/** Put together by hand from ITU-T T.81, B.2.2: a segment of three bytes to pass over, then a frame of 3 by 2. */
const JPEG = Uint8Array.from([
  ...[0xff, 0xd8],
  ...[0xff, 0xe0, 0, 5, 1, 2, 3],
  ...[0xff, 0xc2, 0, 11, 8, 0, 2, 0, 3, 1, 1, 0x11, 0],
]);

test("a PNG of one pixel, a JPEG of 3 by 2", () => {
  expect(imageSize(onePixel, "png")).toEqual({ width: 1, height: 1 });
  expect(imageSize(JPEG, "jpeg")).toEqual({ width: 3, height: 2 });
});

test("a file that is cut off, or is something else, says no size", () => {
  for (let length = 0; length < 20; length++)
    expect(imageSize(JPEG.slice(0, Math.min(length, 17)), "jpeg")).toBeUndefined();
  expect(imageSize(onePixel.slice(0, 20), "png")).toBeUndefined();
  expect(imageSize(onePixel, "jpeg")).toBeUndefined();
});
