import { HostTrouble } from "../../pane/host";

/**
 * Turns one of Office's calls with a callback into a promise.
 * @param sentence of Excel's own words, where it refuses
 */
export const officeAnswer = <T>(
  ask: (done: (result: Office.AsyncResult<T>) => void) => void,
  sentence: (detail: string) => string,
): Promise<T> =>
  new Promise((resolve, reject) =>
    ask((result) =>
      result.status === Office.AsyncResultStatus.Succeeded
        ? resolve(result.value)
        : reject(new HostTrouble(sentence(result.error.message))),
    ),
  );
