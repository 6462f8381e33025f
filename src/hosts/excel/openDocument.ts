/** The open workbook as the bytes of the .xlsx that Excel would save now. */
import { HostTrouble } from "../../pane/host";
import { troubles } from "./excelTrouble";
import { officeAnswer } from "./officeAnswer";

const SLICE_BYTES = 1_048_576;

const answered = <T>(ask: (done: (result: Office.AsyncResult<T>) => void) => void): Promise<T> =>
  officeAnswer(ask, troubles.notHandedOver);

export async function openDocument(): Promise<Uint8Array> {
  const file = await answered<Office.File>((done) =>
    Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize: SLICE_BYTES }, done),
  );
  try {
    // Seen on the web, where Excel's documents disagree on which kinds of file it hands over.
    if (file.size === 0) throw new HostTrouble(troubles.emptyFile());
    const bytes = new Uint8Array(file.size);
    let at = 0;
    for (let index = 0; index < file.sliceCount; index++) {
      const slice = await answered<Office.Slice>((done) => file.getSliceAsync(index, done));
      bytes.set(slice.data as number[], at);
      at += slice.size;
    }
    return bytes;
  } finally {
    // Excel keeps at most two files open for an add-in.
    file.closeAsync();
  }
}
