/** Opens bytes of an .xlsx as a new workbook. */
import { base64 } from "../../workbooks/base64";
import { HostTrouble } from "../../pane/host";
import { asTrouble, codeOf, troubles } from "./excelTrouble";
import { hasApi } from "./inExcel";

/** The set with which `createWorkbook` came. */
const CREATE_WORKBOOK = "1.8";

/** Throws a {@link HostTrouble} where this Excel has no such call, or refuses it: by a policy, its size, or anything else. */
export async function openAsNew(bytes: Uint8Array): Promise<void> {
  if (!hasApi(CREATE_WORKBOOK)) throw new HostTrouble(troubles.noNewWorkbook());
  try {
    await Excel.createWorkbook(base64(bytes));
  } catch (error) {
    const refused = (message: string, code = codeOf(error)!): string =>
      troubles.newWorkbookRefused(code, message);
    throw asTrouble(error, {
      AccessDenied: refused,
      GeneralException: refused,
      UnsupportedOperation: refused,
      RequestPayloadSizeLimitExceeded: refused,
    });
  }
}
