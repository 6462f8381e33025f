/** What program this is, for whoever reads the page. */
import { RIGSHEET_VERSION } from "../../../version";
import { functionsVersion } from "../functionsVersion";
import { hasApi } from "../inExcel";

/** Sets that were published by August 2026 (Office add-ins documentation, "Requirement sets"). */
const NEWEST_EXCEL_API = 21;
const OTHER_SETS: readonly (readonly [set: string, versions: readonly string[]])[] = [
  ["SharedRuntime", ["1.1", "1.2"]],
  ["CustomFunctionsRuntime", ["1.1", "1.2", "1.3", "1.4", "1.5"]],
  ["OpenBrowserWindowApi", ["1.1"]],
];

export async function programFacts(): Promise<(readonly [string, string])[]> {
  const { diagnostics, contentLanguage, displayLanguage, requirements } = Office.context;
  const newest = Array.from({ length: NEWEST_EXCEL_API }, (_, index) => `1.${NEWEST_EXCEL_API - index}`).find(
    hasApi,
  );
  const others = OTHER_SETS.map(
    ([set, versions]) =>
      `${set} ${versions.filter((version) => requirements.isSetSupported(set, version)).at(-1) ?? "none"}`,
  );
  return [
    ["Rigsheet", `pane ${RIGSHEET_VERSION}, functions ${functionsVersion() ?? "not loaded with the pane"}`],
    ["Served from", location.origin],
    ["Excel", `${diagnostics.version} on ${diagnostics.platform}`],
    ["Sets", [`ExcelApi ${newest ?? "none"}`, ...others].join(", ")],
    ["Languages", `of the workbook ${contentLanguage}, of the program ${displayLanguage}`],
    ["Browser", navigator.userAgent],
    ...(await settingsOfExcel()),
  ];
}

async function settingsOfExcel(): Promise<(readonly [string, string])[]> {
  try {
    return await Excel.run(async ({ application, workbook, sync }) => {
      application.load("calculationMode");
      if (hasApi("1.11")) application.cultureInfo.numberFormat.load("numberDecimalSeparator");
      if (hasApi("1.9")) workbook.load("usePrecisionAsDisplayed");
      await sync();
      return [
        ["Calculation", application.calculationMode],
        ...(hasApi("1.11")
          ? [["Decimal sign", application.cultureInfo.numberFormat.numberDecimalSeparator] as const]
          : []),
        ...(hasApi("1.9")
          ? [["Precision as displayed", workbook.usePrecisionAsDisplayed ? "on" : "off"] as const]
          : []),
      ];
    });
  } catch (error) {
    return [["Settings", `not read (${error instanceof Error ? error.message : String(error)})`]];
  }
}
