/** What the page makes its elements with, as the pane does, and a few things of its own. */
import { make, painted } from "../../../pane/dom";

export { make, painted };

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The grid library measures its canvas when the window changes. */
export const measureAnew = (): void => void window.dispatchEvent(new Event("resize"));

export function download(blob: Blob, name: string): void {
  const link = make("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
