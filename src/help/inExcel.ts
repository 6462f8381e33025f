/**
 * The page "In Excel": what Excel shows of an add-in's functions that looks
 * wrong and is not, or is.
 *
 * Source: Office add-ins documentation (custom-functions-troubleshooting,
 * -synchronous, -errors, automatically-open-a-task-pane-with-a-document;
 * support page "Implicit intersection operator") and issues of
 * OfficeDev/office-js (#3352, #4702, #6611). Not seen in an Excel.
 */
import { framed, wideTable } from "./frame";
import { html, type Html } from "./html";

const SHOWN: readonly (readonly (string | Html)[])[] = [
  [
    html`<code>#NAME?</code> in cells of ours`,
    "The add-in is not loaded, or was loaded after the workbook.",
    "Press Rigsheet pane on the Home tab. Where it stays, press Check, Repair formulas in the pane: it enters those formulas again as they are, and sets the sheets' protection again.",
  ],
  [
    html`<code>#BUSY!</code>`,
    "A function computes still, or the add-in has stopped answering.",
    "Wait. If it stays for a minute, close the pane and open it again. In older versions of Excel it reads #GETTING_DATA.",
  ],
  [
    html`<code>#VALUE!</code> with a card`,
    "The function refuses an input.",
    "Point at the small sign beside the cell: the card says what is wrong, the range with its unit, and what to do. Why? in the pane says it too.",
  ],
  [
    html`<code>#SPILL!</code>`,
    "Something stands where the column should go.",
    "Clear the cells below or beside the formula.",
  ],
  [
    html`<code>#REF!</code> in every cell of ours`,
    "Another add-in has the name RIG.",
    "Take that add-in out, or ask whoever looks after Excel.",
  ],
  [
    html`an <code>@</code> in a formula of ours`,
    "Excel lets it give one value instead of a column: it came from an older Excel or another program.",
    html`Delete the <code>@</code> and press Enter. Check names such formulas.`,
  ],
  [
    "“This program reads blanks as 0” at the head of a sheet",
    "This version of Excel hands blank cells to add-ins as 0, so levels and volts are wrong though prices look right.",
    "Update Excel, or work on the desk. Until then trust no level and no volts.",
  ],
  [
    "nothing moves when an input changes",
    "Calculation is set to manual, for all workbooks that are open.",
    "Formulas tab, Calculation Options, Automatic.",
  ],
];

/** @returns a whole HTML document */
export const inExcel = (): string =>
  framed({
    title: "In Excel",
    body: html`<h1>In Excel</h1>
      <p class="lead">
        What Excel shows of functions that come from an add-in. Nobody who made Rigsheet had an Excel: this
        follows Microsoft's documentation. Press Start, Try this Excel in the pane to see what yours does.
      </p>
      <h2 id="shows">What a cell shows</h2>
      ${wideTable("What a cell shows", ["You see", "Why", "What to do"], SHOWN)}
      <h2 id="insert">Insert Function</h2>
      <p>
        The fx beside the formula bar finds our functions by <code>RIG</code>, with a sentence for each and
        for each argument; “Help on this function” opens its page here. The result shown in that window is a
        preview, and where two workbooks are open it may show <code>#VALUE!</code> beside an argument that is
        text: the cell computes all the same. The pane's Learn, Functions finds a function by what you want to
        know, and puts a worked example into a cell.
      </p>
      <h2 id="evaluate">Evaluate Formula, and F9 on a part</h2>
      <p>
        Excel can't step through a function that comes from an add-in: at that step it shows
        <code>#CALC!</code> or <code>#VALUE!</code>, and so does a part of a formula that is selected and
        computed with F9. Press Esc, not Enter, after F9, or the error is kept in the formula. In its place
        the pane has, under Check, Why? (what a cell is worked out from, step by step, with values) and, under
        Learn, Show calculation (the equation with your figures in it).
      </p>
      <h2 id="rules">Where our functions do not work</h2>
      <p>
        In conditional formats, in input rules and from macros Excel does not wait for an add-in. The
        workbooks use native formulas there; do so in yours.
      </p>
      <h2 id="window">A workbook in a window of its own</h2>
      <p>
        New workbook and Upgrade (Start) and Copies (Hand over) open a new workbook, and the pane stays with
        the old one. A workbook to work in brings the pane with it where the add-in was given out by the admin
        center; elsewhere press Rigsheet pane in its window. Settings in the pane turns that off for a
        workbook. Save it: nothing is kept until you do.
      </p>
      <h2 id="undo">Taking back</h2>
      <p>
        What a button of the pane changes is one step of Ctrl+Z in Microsoft 365 from version 2509 on, and a
        few steps before. Repair formulas, and sheets that are inserted from a file, can't be taken back:
        Excel does not take back a sheet's protection.
      </p>`,
  });
