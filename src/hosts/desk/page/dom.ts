/** What the page makes its elements with, as the pane does, and a few things of its own. */
export { download, make, painted } from "../../../pane/dom";

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** The grid library measures its canvas when the window changes. */
export const measureAnew = (): void => void window.dispatchEvent(new Event("resize"));
