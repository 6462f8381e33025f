/** Pages that lie over the grid and what is beside it. */

/** @param isOut out of reach of the keyboard and of screen readers, while the page lies over it */
export function putBesideOut(root: HTMLElement, isOut: boolean): void {
  for (const one of root.parentElement?.children ?? [])
    if (one instanceof HTMLElement && one !== root) one.inert = isOut;
}
