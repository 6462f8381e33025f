/** What the grid library can't do without. */

/** @throws Error with a sentence where a policy of the server's own forbids it */
export function requireCompiling(): void {
  try {
    // The library makes functions of its templates so.
    new Function("");
  } catch {
    throw new Error(
      "This server adds a Content-Security-Policy of its own, which forbids what the grid needs. Ask whoever keeps it to leave that header out for this folder, whose page brings its own policy; until then use rigsheet.html, the one file.",
    );
  }
}
