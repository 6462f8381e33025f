/** What program this is, for whoever reads the page. */
import { RIGSHEET_VERSION } from "../../../version";
import { functionsVersion } from "../functionsVersion";
import { hasApi } from "../inExcel";

type Fact = readonly [name: string, value: string];

/** Sets that were published by August 2026 (Office add-ins documentation, "Requirement sets"). */
const NEWEST_EXCEL_API = 21;
const OTHER_SETS: readonly (readonly [set: string, versions: readonly string[]])[] = [
  ["SharedRuntime", ["1.1", "1.2"]],
  ["CustomFunctionsRuntime", ["1.1", "1.2", "1.3", "1.4", "1.5"]],
  ["OpenBrowserWindowApi", ["1.1"]],
];

export async function programFacts(): Promise<Fact[]> {
  const { diagnostics, contentLanguage, displayLanguage, requirements } = Office.context;
  const sets = [
    ["ExcelApi", Array.from({ length: NEWEST_EXCEL_API }, (_, index) => `1.${index + 1}`)] as const,
    ...OTHER_SETS,
  ].map(([set, versions]) => {
    const there = versions.filter((version) => requirements.isSetSupported(set, version));
    return `${set} ${there.length === 0 ? "none" : there.length === versions.length ? `all to ${there.at(-1)}` : there.join(" ")}`;
  });
  return [
    ["Rigsheet", `pane ${RIGSHEET_VERSION}, functions ${functionsVersion() ?? "not loaded with the pane"}`],
    ["Served from", location.origin],
    ["Excel", `${diagnostics.version} on ${diagnostics.platform}`],
    ["Sets", sets.join(", ")],
    ["Languages", `of the workbook ${contentLanguage}, of the program ${displayLanguage}`],
    ["Browser", navigator.userAgent],
    ["Here", `${new Date().toString()}`],
    ...(await settingsOfExcel()),
  ];
}

const onOff = (is: boolean): string => (is ? "yes" : "no");

async function settingsOfExcel(): Promise<Fact[]> {
  try {
    return await Excel.run(async (context) => {
      const { application, workbook } = context;
      const { numberFormat } = application.cultureInfo;
      application.load(hasApi("1.9") ? "calculationMode,calculationEngineVersion" : "calculationMode");
      if (hasApi("1.11")) numberFormat.load("numberDecimalSeparator,numberGroupSeparator");
      if (hasApi("1.9")) workbook.load("usePrecisionAsDisplayed,autoSave,readOnly,previouslySaved");
      if (hasApi("1.7")) workbook.protection.load("protected");
      await context.sync();
      return [
        ["Calculation", application.calculationMode],
        ...(hasApi("1.7") ? [["Structure protected", onOff(workbook.protection.protected)] as const] : []),
        ...(hasApi("1.9")
          ? ([
              ["Calculation engine", String(application.calculationEngineVersion)],
              ["Precision as displayed", onOff(workbook.usePrecisionAsDisplayed)],
              ["Saves by itself", onOff(workbook.autoSave)],
              ["Read only", onOff(workbook.readOnly)],
              ["Saved before", onOff(workbook.previouslySaved)],
            ] as const)
          : []),
        ...(hasApi("1.11")
          ? [
              [
                "Decimal and thousands",
                `“${numberFormat.numberDecimalSeparator}” “${numberFormat.numberGroupSeparator}”`,
              ] as const,
            ]
          : []),
      ];
    });
  } catch (error) {
    return [["Settings", `not read (${error instanceof Error ? error.message : String(error)})`]];
  }
}
