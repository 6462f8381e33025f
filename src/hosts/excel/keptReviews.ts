/** Reviews of workbooks that are open in Excel, in the storage that its browser keeps for the add-in. */
import type { Shelf } from "../../jobs/shelf";
import type { KeptReviews } from "../../pane/host";
import { BrowserStorage } from "../storage/browserStorage";
import { SharedShelf } from "../storage/sharedShelf";

let opened: Promise<SharedShelf> | undefined;

async function use<T>(work: (shelf: Shelf) => Promise<T>): Promise<T> {
  opened ??= BrowserStorage.open().then((storage) => new SharedShelf(storage));
  try {
    return await (await opened).use(work);
  } catch (error) {
    // Refused once, it may be allowed by the next time.
    opened = undefined;
    throw error;
  }
}

export const keptReviews: KeptReviews = {
  // A live workbook says no more of itself than its quote number.
  marks: () => [],
  keep: (asked) => use((shelf) => shelf.review(asked)),
  settle: async (settling) => (await use((shelf) => shelf.settle(settling))) ?? null,
};
