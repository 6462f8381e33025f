/** What is said when something did not work. */
import { HostTrouble } from "./host";

/** @returns a sentence with the way on, whatever was thrown */
export function sentenceOf(error: unknown): string {
  if (error instanceof HostTrouble) return error.message;
  const text = (error instanceof Error ? error.message : String(error)).trim();
  return `That did not work: ${text.replace(/\.$/, "")}. Try it once more; if it stays, save the workbook and open this pane again.`;
}
