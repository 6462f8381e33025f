/** Makes an element with its properties and children; text is never taken as HTML. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<Omit<HTMLElementTagNameMap[K], "style" | "dataset">> = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Lets the browser paint before work that holds it up. */
export const painted = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));

/** The grid library measures its canvas when the window changes. */
export const measureAnew = (): void => void window.dispatchEvent(new Event("resize"));

export function download(blob: Blob, name: string): void {
  const link = make("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
