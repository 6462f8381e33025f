import type { Page } from "playwright-core";

/** Lets files go over the grid, as a person who drags them there does. */
export const dropOnGrid = (
  page: Page,
  files: readonly (readonly [name: string, base64: string])[],
): Promise<void> =>
  page.evaluate((given) => {
    const data = new DataTransfer();
    for (const [name, base64] of given)
      data.items.add(new File([Uint8Array.from(atob(base64), (one) => one.charCodeAt(0))], name));
    const target = document.querySelector("#grid")!;
    for (const type of ["dragover", "drop"])
      target.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
  }, files);
