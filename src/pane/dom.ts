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

export const paragraph = (text: string, className = ""): HTMLParagraphElement =>
  make("p", { className }, text);

export const button = (label: string, onclick: () => void, className = "pane-button"): HTMLButtonElement =>
  make("button", { type: "button", className, onclick }, label);

/** Leaves equal text alone, so that a screen reader isn't told again. */
export function setText(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/** A page in the background is given no frame to paint. */
const LONGEST_WAIT_MS = 100;

/** Lets the browser paint before work that holds it up. */
export const painted = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, LONGEST_WAIT_MS);
  });

export function download(blob: Blob, name: string): void {
  const link = make("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
