/** Saves in which something happened that the reader of the file must be told: one state each. */
import type { ExcelSave } from "./excelSave";
import { Fault, type Value, round } from "./formulas";
import { blanksAsZero, byMeaning } from "./byMeaning";
import { editNames } from "./harmlessSaves";
import {
  type Pack,
  addPart,
  editCells,
  editPart,
  escapeText,
  namesOf,
  openPack,
  parseArea,
  parseRef,
  putCell,
  readAttributes,
  refOf,
  relate,
  savePack,
  sheetPath,
  sheetsOf,
  textOf,
} from "./parts";
import { type Settings, CALL, recalculate, withValue } from "./recalculate";
import { storeFaults } from "./richFaults";
import { calcPr, eachFormula, excelShape } from "./shape";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

interface State {
  id: string;
  what: string;
  source: string;
  state: string;
  mustSay: string;
  cells?: string[];
  figures: ExcelSave["figures"];
  change(pack: Pack): void;
}

const save = ({ change, ...rest }: State): ExcelSave => ({
  ...rest,
  harmless: false,
  transform(bytes) {
    const pack = openPack(bytes);
    change(pack);
    excelShape(pack);
    return savePack(pack);
  },
});

const all =
  (code: string): NonNullable<Settings["call"]> =>
  () =>
    new Fault(code);

/** The cell whose formula calls the function, on that sheet: "Rooms!AG5". */
function callAt(pack: Pack, sheet: string, name: string): string {
  let found = "";
  eachFormula(pack, (at, formula) => {
    if (found === "" && at.startsWith(`${sheet}!`) && CALL.exec(formula)?.[1] === name) found = at;
  });
  if (found === "") throw new Error(`no call of ${name} on ${sheet}`);
  return found;
}

const refIn = (at: string): string => at.slice(at.lastIndexOf("!") + 1);

/** The upper left cell of a defined name, or the n-th cell below it. */
function cellOf(pack: Pack, name: string, below = 0): string {
  const place = namesOf(pack).get(name);
  if (place === undefined || place === null) throw new Error(`no name ${name}`);
  return `${place.sheet}!${refOf(place.area.r1 + below, place.area.c1)}`;
}

function enter(pack: Pack, at: string, value: Value): void {
  const [sheet, ref] = [at.slice(0, at.lastIndexOf("!")), refIn(at)];
  editPart(pack, sheetPath(pack, sheet), (xml) => putCell(xml, ref, (cell) => withValue(cell, value)));
}

/** An entry as Excel treats it: only what hangs on it computes. */
function enterAndCompute(pack: Pack, at: string, value: Value, settings: Settings): void {
  enter(pack, at, value);
  recalculate(pack, { ...settings, changed: [at] });
}

/** Busy, blocked and the like at some calls; other calls run on what is there, where byMeaning.ts knows them. */
function some(pack: Pack, places: string[], code: string): void {
  recalculate(pack, {
    call: byMeaning,
    result: (at) => (places.includes(at) ? new Fault(code) : undefined),
  });
}

/** Rewrites each call's name in each formula. */
function renameCalls(pack: Pack, edit: (call: string) => string): void {
  for (const { path } of sheetsOf(pack))
    editPart(pack, path, (xml) =>
      editCells(xml, (cell) => {
        if (cell.formula === undefined || !CALL.test(cell.formula.text)) return undefined;
        cell.formula.text = cell.formula.text.replace(/_xldudf_RIG_[A-Z0-9_]+/g, edit);
        return cell;
      }),
    );
}

function linkToOther(pack: Pack): void {
  const names = new Set<string>();
  eachFormula(pack, (_, formula) => {
    for (const match of formula.matchAll(/_xldudf_RIG_[A-Z0-9_]+/g)) names.add(match[0]);
  });
  const path = "xl/externalLinks/externalLink1.xml";
  const id = addPart(pack, {
    path,
    content:
      `<externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><externalBook xmlns:r="${OFFICE}" ` +
      `r:id="rId1"><definedNames>${[...names].map((n) => `<definedName name="${n}"/>`).join("")}</definedNames>` +
      "</externalBook></externalLink>",
    contentType: "application/vnd.openxmlformats-officedocument.spreadsheetml.externalLink+xml",
    owner: "xl/workbook.xml",
    type: `${OFFICE}/externalLink`,
  });
  const target = "file:///C:\\Program%20Files\\Office\\Library\\Analysis\\FUNCRES.XLAM";
  relate(pack, path, `${OFFICE}/externalLinkPath`, target, true);
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml.replace(
      "</sheets>",
      `</sheets><externalReferences><externalReference r:id="${id}"/></externalReferences>`,
    ),
  );
  renameCalls(pack, (call) => `[1]!${call}`);
}

function editFormula(pack: Pack, at: string, edit: (text: string) => string): void {
  editPart(pack, sheetPath(pack, at.slice(0, at.lastIndexOf("!"))), (xml) =>
    editCells(xml, (cell) => {
      if (cell.ref !== refIn(at) || cell.formula === undefined) return undefined;
      const text = edit(cell.formula.text);
      if (text === cell.formula.text) throw new Error(`nothing to change at ${at}`);
      cell.formula.text = text;
      return cell;
    }),
  );
}

/** `@` put before one name, wherever it stands in the formula. */
const cutName = (name: string) => (text: string) =>
  editNames(text, (found) => (found === name ? `_xlfn.SINGLE(${found})` : found));

/** Excel 2019 has the formula entered with Ctrl+Shift+Enter in its first row only: no cm, ref of one row. */
function shrink(pack: Pack, at: string): void {
  const { r, c } = parseRef(refIn(at));
  editPart(pack, sheetPath(pack, at.slice(0, at.lastIndexOf("!"))), (xml) => {
    let area = parseArea(refIn(at));
    const edited = editCells(xml, (cell) => {
      if (cell.ref !== refIn(at) || cell.formula === undefined) return undefined;
      area = parseArea(cell.formula.attributes.get("ref") ?? cell.ref);
      cell.formula.attributes.set("ref", refOf(r, c) + (area.c2 > c ? `:${refOf(r, area.c2)}` : ""));
      cell.attributes.delete("cm");
      return cell;
    });
    return editCells(edited, (cell) => {
      const place = parseRef(cell.ref);
      const inside = place.c >= area.c1 && place.c <= area.c2 && place.r > r && place.r <= area.r2;
      return inside ? withValue(cell, null) : undefined;
    });
  });
  recalculate(pack);
}

/** Decimals that each cell shows, by its number format; cells of General and dates have none. */
function decimals(pack: Pack): Map<string, number> {
  const styles = textOf(pack, "xl/styles.xml");
  const codes = new Map<string, string>([
    ["1", "0"],
    ["2", "0.00"],
    ["4", "#,##0.00"],
  ]);
  for (const tag of styles.match(/<numFmt [^>]*>/g) ?? []) {
    const a = readAttributes(tag);
    codes.set(a.get("numFmtId") ?? "", a.get("formatCode") ?? "");
  }
  const list = /<cellXfs[^>]*>([\s\S]*?)<\/cellXfs>/.exec(styles)?.[1] ?? "";
  const formats = (list.match(/<xf [^>]*>/g) ?? []).map((tag) =>
    codes.get(readAttributes(tag).get("numFmtId") ?? ""),
  );
  const found = new Map<string, number>();
  for (const { name, path } of sheetsOf(pack))
    editCells(textOf(pack, path), (cell) => {
      const code = formats[Number(cell.attributes.get("s") ?? "0")];
      const match = /^[#,]*0(?:\.(0+))?(%?)$/.exec(code ?? "");
      if (match !== null)
        found.set(`${name}!${cell.ref}`, (match[1]?.length ?? 0) + (match[2] === "%" ? 2 : 0));
      return undefined;
    });
  return found;
}

function precisionAsShown(pack: Pack): void {
  const digits = decimals(pack);
  const shown = (value: number, at: string): number => {
    const n = digits.get(at);
    return n === undefined ? value : round(value, n);
  };
  for (const { name, path } of sheetsOf(pack))
    editPart(pack, path, (xml) =>
      editCells(xml, (cell) => {
        if (cell.formula !== undefined || (cell.attributes.get("t") ?? "n") !== "n" || !cell.value)
          return undefined;
        const value = shown(Number(cell.value), `${name}!${cell.ref}`);
        return value === Number(cell.value) ? undefined : withValue(cell, value);
      }),
    );
  recalculate(pack, { call: byMeaning, shown });
  calcPr(pack, 'calcId="191029" fullPrecision="0"');
}

function renameSheet(pack: Pack, from: string, to: string): void {
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml
      .replace(`<sheet name="${from}"`, `<sheet name="${escapeText(to)}"`)
      .replaceAll(`'${from}'!`, `'${escapeText(to)}'!`),
  );
  for (const { path } of sheetsOf(pack))
    editPart(pack, path, (xml) =>
      xml.replace(/<(f|formula\d?)([^>]*)>([^<]*)</g, (_, tag: string, a: string, text: string) => {
        const followed = text
          .replaceAll(`'${from}'!`, `'${to}'!`)
          .replace(new RegExp(`(?<![\\w'])${from}!`, "g"), `'${to}'!`);
        return `<${tag}${a}>${followed}<`;
      }),
    );
}

const busy = (pack: Pack): string[] => [
  callAt(pack, "Distribution", "DEVICELEVELS"),
  callAt(pack, "Rooms", "OUTLETLEVELS"),
  callAt(pack, "Head units", "HEADVOLTS"),
];

const names = (pack: Pack, name: string, value: string): void => {
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml.replace(
      new RegExp(`(<definedName name="${name}">)[^<]*`),
      (_, head: string) => head + escapeText(value),
    ),
  );
};

const STATES: State[] = [
  {
    id: "missing-recalculated",
    what:
      "Opened without the add-in, everything computed, saved: each call #NAME?, the rest of each spill empty, native " +
      "formulas computed on errors and blanks (levels 0 + …, IFERROR's other answer, COUNTIF of nothing)",
    source: "excel.md 1 (I #5754; spills: M)",
    state: "add-in missing, recalculated without it",
    mustSay:
      "Saved by an Excel without the add-in, which computed it all the same: levels, volts, lengths and prices are " +
      "gone or wrong, and checks that say ok have checked nothing. The inputs are safe: load the add-in, enter the calls " +
      "again or compute the file anew, and trust no figure of this one.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: all("#NAME?") });
    },
  },
  {
    id: "missing-one-input",
    what:
      "Opened without the add-in, one run on Rooms made longer, saved: what hangs on it computed, its calls #NAME?; all " +
      "else stands as it was",
    source: "excel.md 1 (I #5754), which cells compute: from memory",
    state: "add-in missing, partly recalculated without it",
    mustSay:
      "Saved by an Excel without the add-in after an input was changed: what hangs on that input is an error or was " +
      "computed on blanks, the rest is old. The inputs are safe; compute the file anew with the add-in.",
    figures: "wrong",
    change(pack) {
      enterAndCompute(pack, cellOf(pack, "rooms_run", 1), 41, { call: all("#NAME?") });
    },
  },
  {
    id: "not-associated",
    what: "The add-in was listed but its code had not loaded: each call #VALUE!, the rest of each spill empty",
    source: "excel.md 1 (D -troubleshooting)",
    state: "functions known to Excel, but their code was not loaded",
    mustSay:
      "Every call of the add-in gave an error, so its functions were not running when this was saved; figures are " +
      "missing or computed on blanks. Open the add-in's pane, let everything compute, save again.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: all("#VALUE!") });
    },
  },
  {
    id: "busy-three",
    what: 'Saved while three calls were still computing: #BUSY! (t="e" vm), the rest of their spills empty, natives computed on',
    source: "excel.md 1 (D), 2 (O: #BUSY! 14 from one list only)",
    state: "functions still computing when saved",
    mustSay:
      "Three calls of the add-in were still computing when this was saved. Levels and volts are missing. Open, wait until " +
      "no cell says #BUSY!, save again.",
    figures: "partly missing",
    change(pack) {
      some(pack, busy(pack), "#BUSY!");
    },
  },
  {
    id: "busy-dependants-wait",
    what: "Saved while the call of the selling price was computing: #BUSY! in that one cell, everything else as before",
    source: "excel.md 1 (order: M; old values kept: I #4152, #6930)",
    state: "functions still computing when saved",
    mustSay:
      "The selling price was still computing when this was saved; the figures after it may be those of before.",
    figures: "old",
    change(pack) {
      const at = callAt(pack, "Price", "SELLPRICE");
      enter(pack, at, new Fault("#BUSY!"));
      storeFaults(pack, new Map([[at, "#BUSY!"]]));
    },
  },
  {
    id: "getting-data",
    what: "The same three calls in an Excel before build 11505: #GETTING_DATA, what hangs on them not yet computed",
    source: "excel.md 1 (I Excel-Custom-Functions #120)",
    state: "functions still computing when saved",
    mustSay:
      "Three calls were still computing when an older Excel saved this; what hangs on them shows old values.",
    figures: "old",
    change(pack) {
      for (const at of busy(pack)) enter(pack, at, new Fault("#GETTING_DATA"));
    },
  },
  {
    id: "connect",
    what: "The network failed while one call was running: #CONNECT! at the compass bearings, the rest computed on",
    source: "excel.md 2 (O)",
    state: "a call could not connect",
    mustSay:
      "The compass bearings could not be computed: the add-in had no connection. The declination beside them was " +
      "computed on blanks and is nonsense (178°); other figures stand.",
    figures: "partly missing",
    change(pack) {
      some(pack, [callAt(pack, "Sightline", "COMPASS")], "#CONNECT!");
    },
  },
  {
    id: "blocked",
    what: "The office's policy refused the add-in's functions: #BLOCKED! at every call, natives computed on",
    source: "excel.md 2 (O); that policy shows so: from memory",
    state: "add-in's functions refused by this Excel",
    mustSay:
      "Excel refused to run the add-in's functions (a policy or a trust setting): no figure that hangs on them is there, " +
      "and checks that say ok have checked nothing. Ask whoever administers Office.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: all("#BLOCKED!") });
    },
  },
  {
    id: "spill-blocked",
    what: "Somebody typed a word into the columns that the levels fill: #SPILL!, all levels gone",
    source: "excel.md 2 (D, O)",
    state: "a result has no room",
    mustSay: "A word was typed where the levels of Rooms go, so none of them is shown. Clear that cell.",
    figures: "wrong",
    change(pack) {
      const at = callAt(pack, "Rooms", "OUTLETLEVELS");
      some(pack, [at], "#SPILL!");
      const { r, c } = parseRef(refIn(at));
      enter(pack, `Rooms!${refOf(r + 28, c + 2)}`, "later");
    },
  },
  {
    id: "clash-link",
    what: "Another add-in file was loaded: calls were bound to it and saved as [1]!_xldudf_…, results still stand",
    source: "excel.md 1 (I #4811, #2568, #3872)",
    state: "calls bound to another add-in, results stand still",
    mustSay:
      "Every call points to another add-in file (FUNCRES.XLAM) and stays broken once saved. The results shown are those of " +
      "before and will not follow changes. The inputs are safe; take them into a clean copy of the template.",
    figures: "old",
    change: linkToOther,
  },
  {
    id: "clash-link-recalculated",
    what: "The same, and Excel computed: every call #REF!, the rest of each spill empty, natives computed on",
    source: "excel.md 1 (I as above; #REF! for a name taken: D -naming)",
    state: "calls bound to another add-in, recalculated without ours",
    mustSay:
      "Every call points to another add-in file and gives an error; figures are missing or computed on blanks. Inputs are safe.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: all("#REF!") });
      linkToOther(pack);
    },
  },
  {
    id: "clash-path",
    what: "The same with the path written out: 'C:\\…\\FUNCRES.XLAM'!_xldudf_RIG_…, every call #NAME?",
    source: "excel.md 1 (I #4811)",
    state: "calls bound to another add-in, recalculated without ours",
    mustSay:
      "Every call names the path of another add-in file and gives an error; figures are missing or computed on blanks. " +
      "Inputs are safe.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: all("#NAME?") });
      const path = "'C:\\Program Files\\Office\\Library\\Analysis\\FUNCRES.XLAM'";
      renameCalls(pack, (one) => `${path}!${one}`);
    },
  },
  {
    id: "blanks-as-zero",
    what:
      "An older Excel handed 0 for each blank: cables whose coefficients are blank (all take a built-in type) have no " +
      "loss and no resistance; levels at outlets and volts are too high, the weak outlet and the head unit short of volts " +
      "look well, and the price is the same",
    source: "excel.md 1 (I #4702, #5262); values worked out from About!A29 and the prompts of Parts",
    state: "blanks were read as zero",
    mustSay:
      "This Excel gave the functions 0 for every blank cell: cable losses and resistances are 0, so levels and volts are " +
      "wrong and the checks on them mean nothing, although the price looks right. Use a newer Excel, the desk or the command.",
    figures: "wrong",
    change(pack) {
      recalculate(pack, { call: blanksAsZero });
    },
  },
  {
    id: "manual-input-changed",
    what: "Manual calculation: the crew rate was raised, nothing computed, saved (also not before saving)",
    source: "excel.md 6 (M)",
    state: "manual calculation, old values",
    mustSay:
      "Calculation was manual: the crew rate on Parts was changed and the price is still the one of before. Switch to " +
      "automatic, or press F9, and read the total again.",
    figures: "old",
    change(pack) {
      enter(pack, cellOf(pack, "labour_rate"), 66);
      calcPr(pack, 'calcId="191029" calcMode="manual" calcCompleted="0" calcOnSave="0"');
    },
  },
  {
    id: "calculation-stopped",
    what: 'Automatic calculation was interrupted (Esc) after the length of a run was changed: calcCompleted="0", results old',
    source: "from memory",
    state: "old values: calculation was not finished",
    mustSay:
      "A run on Rooms was changed and calculation stopped before the end: levels and price are those of before.",
    figures: "old",
    change(pack) {
      enter(pack, cellOf(pack, "rooms_run", 24), 58);
      calcPr(pack, 'calcId="191029" calcCompleted="0"');
    },
  },
  {
    id: "single-cuts-runs",
    what: "The formula of the outlets' own parts was entered with @rooms_run_used: the whole column takes its first row's run, none",
    source: "excel.md 2 (D, O)",
    state: "an @ cuts a column to one row",
    mustSay:
      "An @ before the runs makes every outlet take the run of row 5, which is blank: the cost of its own parts lacks " +
      "the cable, and the prices by group are wrong. Take the @ out.",
    figures: "wrong",
    change(pack) {
      editFormula(pack, cellOf(pack, "rooms_parts_cost"), cutName("rooms_run_used"));
      recalculate(pack);
    },
  },
  {
    id: "single-cuts-outlets",
    what: 'The verdicts at longest lengths were entered with @rooms_level_low_hot: the column is cut to its first row, ""',
    source: "excel.md 2 (D, O)",
    state: "an @ cuts a column to one row",
    mustSay:
      "An @ cuts the verdicts at longest lengths to one row, so no outlet is counted as too weak there, and that " +
      "check says ok by mistake. Take the @ out.",
    figures: "wrong",
    change(pack) {
      editFormula(pack, cellOf(pack, "rooms_stretched_check"), cutName("rooms_level_low_hot"));
      recalculate(pack);
    },
  },
  {
    id: "array-shrunk",
    what: "An Excel without dynamic arrays entered the column of weakest levels in one cell: no cm, ref of one row",
    source: "excel.md 2 and 5 (M)",
    state: "a column of results was cut to one row",
    mustSay: "The weakest levels stand in one row only; other outlets have none.",
    figures: "wrong",
    change(pack) {
      shrink(pack, cellOf(pack, "rooms_weakest"));
    },
  },
  {
    id: "precision-as-displayed",
    what: "“Set precision as displayed” was on: every number is stored as its format shows it, sums add the rounded ones",
    source:
      'from memory (fullPrecision="0"); calls that byMeaning.ts does not know keep their results, rounded as shown',
    state: "precision as displayed",
    mustSay:
      "“Set precision as displayed” is on: workings are rounded at each step, so figures differ a little, for good. Turn " +
      "it off and compute again; the inputs themselves may have lost digits.",
    figures: "wrong",
    change: precisionAsShown,
  },
  {
    id: "sheet-renamed",
    what: "The Rooms sheet was renamed “Rooms and flats”; names and formulas followed",
    source: "from memory",
    state: "a sheet was renamed",
    mustSay: "The sheet Rooms is now called “Rooms and flats”; everything follows it, the figures are right.",
    figures: "right",
    change(pack) {
      renameSheet(pack, "Rooms", "Rooms and flats");
    },
  },
  {
    id: "name-lost",
    what: "Another cell was cut and pasted over the clearance on Site: its name is now #REF!, what uses it too",
    source: "from memory",
    state: "a name points nowhere",
    mustSay:
      "The name site_clearance has lost its cell, so the clearance of the slots is not judged. Give it Site!B19 again.",
    figures: "partly missing",
    change(pack) {
      names(pack, "site_clearance", "Site!#REF!");
      recalculate(pack);
    },
  },
  {
    id: "iteration-on",
    what: "Iterative calculation was on (another workbook wanted it); nothing goes round in this one",
    source: "from memory",
    state: "iterative calculation on",
    mustSay:
      "Iterative calculation is on: a formula that feeds itself would not be reported. The figures are right.",
    figures: "right",
    change(pack) {
      calcPr(pack, 'calcId="191029" iterate="1"');
    },
  },
];

export const STATE_SAVES: readonly ExcelSave[] = STATES.map(save);
