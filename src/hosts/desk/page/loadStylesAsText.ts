/** Styles that a server calls something else, which a browser then leaves aside: put into the page by their text. */

/** Before anything is measured. Where a file can't be read as text either, the page stays without it. */
export async function loadStylesAsText(): Promise<void> {
  for (const link of document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]')) {
    if (isApplied(link)) continue;
    const answer = await fetch(link.href).catch(() => undefined);
    // Another page in its place is none.
    if (!answer?.ok || /html/i.test(answer.headers.get("Content-Type") ?? "")) continue;
    const style = document.createElement("style");
    style.textContent = withWholeAddresses(await answer.text(), link.href);
    link.after(style);
  }
}

function isApplied({ sheet }: HTMLLinkElement): boolean {
  try {
    return sheet !== null && sheet.cssRules.length > 0;
  } catch {
    return false;
  }
}

/** In the page they would be looked for beside it. */
const withWholeAddresses = (css: string, base: string): string =>
  css.replace(
    /url\((["']?)(?!data:|#)([^"')]+)\1\)/g,
    (_all, _quote, address: string) => `url("${new URL(address, base).href}")`,
  );
