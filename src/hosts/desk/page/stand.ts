/**
 * Who keeps the jobs of this page: the desk's server, or the page itself in the
 * browser's storage, where it came from a static folder or is one file.
 */
export type Stand = "server" | "folder" | "file";

/** The build writes it into the page. */
const written = (document.documentElement.dataset as { stand?: string }).stand;

export const stand: Stand = written === "folder" || written === "file" ? written : "server";

/** Its name in a sentence. */
export const keeper = stand === "server" ? "the server" : "the browser's storage";
