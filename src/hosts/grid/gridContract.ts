/**
 * What we stand on in the grid library: every part of it that we replace or
 * call and that it does not document. Each is looked for when the library is
 * prepared, before a job is opened. Where one is missing, the library's own way
 * stays, and a sentence says what is worse for it; where figures would be wrong
 * without it, nothing is computed, and a sentence says so.
 */
import type { GridLibrary } from "./library";

/** The library lacks what figures or work depend on; its message is for whoever uses the program. */
export class GridTrouble extends Error {}

/** The version that all of this was tried with. */
export const TRIED_VERSION = "19.3.7";

interface Contract {
  /** Where they are found: `a.b` is a member, `a[b]` what a registry keeps under a name, `a<b` a member of each of its objects. */
  readonly needs: readonly string[];
  /** What is said when one of them is missing. */
  readonly without: string;
  /** Without it figures would be wrong or work would be lost. */
  readonly isVital?: true;
}

/** Of the library's cell editor, in whose place something of ours goes. */
export const EDITOR_METHODS = [
  "startEdition",
  "stopEdition",
  "_stopEdition",
  "cancelEdition",
  "canStopEdition",
  "autoCompleteOrStop",
  "canStartComposerRangeSelection",
  "getComposerContent",
  "getCurrentCanonicalContent",
] as const;

const EDITOR = "stores.CellComposerStore.prototype";
const EVALUATION = "registries.coreViewsPluginRegistry[evaluation]<evaluator";
const CLIPBOARD = "registries.statefulUIPluginRegistry[clipboard].prototype";
const AUTOFILL = "registries.featurePluginRegistry[autofill].prototype";
const inside = (place: string, members: readonly string[]): string[] =>
  members.map((name) => `${place}.${name}`);

/** Of every plugin of ours. */
const PLUGINS = ["UIPlugin", "registries.featurePluginRegistry.add"];

export const CONTRACT = {
  model: {
    needs: [
      "Model",
      "CorePlugin",
      "registries.corePluginRegistry.add",
      ...PLUGINS,
      "registries.errorTypes.add",
      "registries.errorTypes.has",
      "addFunction",
      "helpers.arg",
      "helpers.isNumber",
      "helpers.isDateTime",
      "helpers.formatValue",
    ],
    without: "jobs can't be opened",
    isVital: true,
  },
  libraryMessages: {
    needs: ["setTranslationMethod"],
    without: "some sentences of the grid stand in its own words",
  },
  ruleRanges: {
    needs: [
      "registries.corePluginRegistry.replace",
      "registries.corePluginRegistry[dataValidation].prototype.adaptRanges",
    ],
    without: "after rows were added, a drop-down may offer less than all of them",
  },
  namesStayText: {
    needs: ["registries.corePluginRegistry.replace", "registries.corePluginRegistry[cell].prototype.handle"],
    without:
      "a name such as 3-16 or 007 may turn into a date or a number when it is filled down or replaced; look at such names",
  },
  evaluationOrder: {
    needs: [
      "registries.coreViewsPluginRegistry.replace",
      ...inside(EVALUATION, [
        "evaluate",
        "compilationParams.ensureRange",
        "compilationParams.referenceDenormalizer",
        "compilationParams.evalContext.getFormulaResult",
        "evaluatedCells.has",
        "cellsBeingComputed.has",
        "nextRangesToUpdate.addMany",
        "nextRangesToUpdate.isEmpty",
        "updateCompilationParameters",
        "computeAndSave",
        "spreadingRelations.getArrayResultZone",
        "getCellsDependingOn",
        "invalidatePositionsDependingOnSpread",
        "getters.getCell",
        "getters.getSheetZone",
        "getters.getNamedRanges",
      ]),
    ],
    without: "formulas would be computed before what they read",
    isVital: true,
  },
  keptSpills: {
    needs: inside(EVALUATION, [
      "spreadValues",
      "evaluatedCells.get",
      "evaluatedCells.set",
      "getters.getLocale",
    ]),
    without: "an edit of a long job takes longer",
  },
  columnCriteria: {
    needs: [
      "registries.functionRegistry.get",
      "registries.functionRegistry.replace",
      ...inside("registries.functionRegistry.mapping", ["COUNTIF", "SUMIFS"]),
    ],
    without: "long jobs take longer, and a name with ~ in it may not be found",
  },
  columnOperators: {
    needs: [
      "registries.functionRegistry.get",
      ...inside("registries.functionRegistry.mapping", [
        ...["ADD", "MINUS", "MULTIPLY", "DIVIDE", "EQ", "NE", "GT", "GTE", "LT", "LTE"],
        ...["IF", "IFERROR"],
      ]),
    ],
    without: "long jobs take longer, and an error in one row may show in all of its column",
  },
  styledColors: {
    needs: [
      "registries.coreViewsPluginRegistry.replace",
      "registries.coreViewsPluginRegistry[custom_colors].prototype.handle",
    ],
    without: "an edit of a long job takes longer",
  },
  shownFormats: {
    needs: [
      "registries.coreViewsPluginRegistry.replace",
      "CompiledFormula.Compile",
      ...inside("registries.coreViewsPluginRegistry[evaluation_cf].prototype", [
        "finalize",
        "getCellConditionalFormatStyle",
        "getRuleResultForTarget",
      ]),
    ],
    without: "an edit of a long job takes longer",
  },
  knownNames: {
    needs: [
      "registries.corePluginRegistry.replace",
      "registries.corePluginRegistry[named_ranges].prototype.getNamedRangeIndex",
    ],
    without: "an edit takes longer",
  },
  asWritten: {
    needs: [
      "helpers.formatValue",
      "constants.DEFAULT_LOCALE",
      "registries.coreViewsPluginRegistry.replace",
      "registries.coreViewsPluginRegistry[evaluation].prototype.getEvaluatedCell",
      "registries.featurePluginRegistry.replace",
      "registries.featurePluginRegistry[ui_sheet].prototype.getCellText",
      ...inside(EVALUATION, ["getters.getLocale"]),
    ],
    without: "figures are shown and typed with decimal points, whatever the workbook says",
  },
  tooDeep: {
    needs: ["CompiledFormula.Compile", "EvaluationError"],
    without: "a formula of your own with very many parts inside one another may show 0",
  },
  exportedBy: {
    needs: ["Model.prototype._exportData"],
    without: "saving a long job takes longer",
  },
  guard: { needs: PLUGINS, without: "labels and formulas would not be kept", isVital: true },
  rows: { needs: PLUGINS, without: "rows could not be added", isVital: true },
  paste: {
    needs: [
      "registries.statefulUIPluginRegistry.replace",
      ...inside(CLIPBOARD, ["allowDispatch", "handle", "convertTextToClipboardData", "copy", "paste"]),
    ],
    without: "what is pasted would overwrite names, labels and formulas",
    isVital: true,
  },
  fill: {
    needs: [
      "registries.featurePluginRegistry.replace",
      ...inside(AUTOFILL, [
        "autofillCell",
        "autofillMerge",
        "autofillBorders",
        "autofillConditionalFormats",
        "autofillDataValidations",
      ]),
    ],
    without: "filling by the corner of a selection brings boxes and rules along",
  },
  typing: {
    needs: [...inside(EDITOR, [...EDITOR_METHODS, "setCurrentContent"]), ...PLUGINS],
    without: "what is typed would be taken unread, and a name could turn into a date",
    isVital: true,
  },
  growing: {
    needs: inside(EDITOR, ["confirmEdition", "setContent"]),
    without: "a block does not grow by typing under it; use “Add rows”",
  },
  printMenu: {
    needs: ["registries.topbarMenuRegistry.replaceChild"],
    without: "the grid's own menu prints the screen; use “Print…” in the bar",
  },
  writingMenu: {
    needs: ["registries.topbarMenuRegistry.replaceChild"],
    without: "File, Settings of the grid's own menu has no effect where a workbook says how its people write",
  },
  wholeRows: {
    needs: ["registries.clipboardHandlersRegistries.cellHandlers.remove"],
    without: "a row that is copied whole is refused at the frozen columns",
  },
} as const satisfies Readonly<Record<string, Contract>>;

export type Part = keyof typeof CONTRACT;

/** What was said of a library, each once. */
const said = new WeakMap<GridLibrary, string[]>();

/** @returns what is missing in the library that was prepared, in sentences */
export const troublesOf = (library: GridLibrary): readonly string[] => said.get(library) ?? [];

/**
 * Uses a part of the library in our way, where all is there that it stands on.
 * @param use puts ours in its place
 * @throws GridTrouble where it is vital and something is missing
 */
export function requireMembers(library: GridLibrary, part: Part, use: () => void): void {
  const contract: Contract = CONTRACT[part];
  const missing = contract.needs.filter(
    (path) => !path.includes("<") && memberAt(library, path) === undefined,
  );
  if (missing.length === 0) use();
  else report(library, contract, missing);
}

/**
 * What is only there in an object of the library's is looked for when the first of them is made.
 * @param made holds what `<` points at, under its name
 * @returns whether all of it is there
 * @throws GridTrouble as {@link requireMembers} does
 */
export function requireMembersInside(library: GridLibrary, part: Part, made: object): boolean {
  const contract: Contract = CONTRACT[part];
  const missing = contract.needs.filter(
    (path) => path.includes("<") && memberAt(made, path.slice(path.indexOf("<") + 1)) === undefined,
  );
  if (missing.length > 0) report(library, contract, missing);
  return missing.length === 0;
}

/** Says once that the library is another than the one that was tried. */
export function checkVersion(library: GridLibrary): void {
  const { version } = library.__info__ as { readonly version?: string };
  if (version !== TRIED_VERSION)
    say(
      library,
      `The grid library is version ${version ?? "unknown"}; Rigsheet was tried with ${TRIED_VERSION} only. Compare a job whose total you know before you trust its figures.`,
    );
}

function report(library: GridLibrary, { without, isVital }: Contract, missing: readonly string[]): void {
  const names = missing.map((path) => `“${path.split(/[.<]/).at(-1)!}”`).join(", ");
  const sentence = `This grid library has no ${names}, on which Rigsheet stands: ${without}.`;
  if (isVital)
    throw new GridTrouble(
      `${sentence} So nothing is shown or computed. Put version ${TRIED_VERSION} of it back.`,
    );
  say(library, sentence);
}

function say(library: GridLibrary, sentence: string): void {
  const all = said.get(library) ?? [];
  if (!all.includes(sentence)) said.set(library, [...all, sentence]);
}

/** @returns undefined where something on the way is missing */
function memberAt(from: object, path: string): unknown {
  let value: unknown = from;
  for (const [, member, key] of path.matchAll(/([^.[\]]+)|\[([^\]]+)\]/g)) {
    if (value === undefined || value === null) return undefined;
    try {
      value =
        key === undefined
          ? (value as Record<string, unknown>)[member!]
          : (value as { get(name: string): unknown }).get(key);
    } catch {
      // A registry throws for what it does not hold.
      return undefined;
    }
  }
  return value;
}
