/**
 * The version of the functions that answer in the sheet. The functions and the
 * pane are two files, and Excel may have kept an older one of either, so each
 * says its own version.
 */
const KEY = "rigsheetFunctionsVersion";

export function noteFunctionsVersion(version: string): void {
  (globalThis as Record<string, unknown>)[KEY] = version;
}

/** @returns undefined where the functions have not been loaded */
export function functionsVersion(): string | undefined {
  const version = (globalThis as Record<string, unknown>)[KEY];
  return typeof version === "string" ? version : undefined;
}
