/** The desk's one page, whoever hands it out. Its scripts are files, but in the one file: the policy forbids inline ones. */

export interface DeskPage {
  /** Of its root element, each with its value; a server of ours needs none. */
  readonly attributes?: Readonly<Record<string, string>>;
  /** Styles, scripts and a policy, as HTML. */
  readonly head: string;
  /** What follows the page's own parts, as HTML. */
  readonly foot?: string;
  /** Shown once the page has not started for some seconds; text. */
  readonly ifStuck?: string;
}

/** Styles of a page, in this order, by their addresses under its own. */
export const STYLES = [
  "library/bootstrap.css",
  "library/css/font-awesome.css",
  "library/o_spreadsheet.css",
  "pane.css",
  "desk.css",
] as const;
/** Scripts of a page, in this order. */
export const SCRIPTS = ["library/owl.js", "library/chart.js", "library/o_spreadsheet.js", "desk.js"] as const;

/** @param base where the files lie, as seen from the page */
export const linkedHead = (base: string, icon: string): string =>
  [
    `<link rel="icon" href="${icon}" type="image/svg+xml" />`,
    ...STYLES.map((file) => `<link rel="stylesheet" href="${base}${file}" />`),
    ...SCRIPTS.map((file) => `<script src="${base}${file}" defer></script>`),
  ].join("\n    ");

/** A stylesheet alone, so that it is said also where no script runs. */
const stuck = (sentence: string): string =>
  `<p id="starting" class="desk-starting">Rigsheet is starting… <span>${sentence}</span></p>`;

export const pageHtml = ({ attributes = {}, head, foot = "", ifStuck }: DeskPage): string => `<!doctype html>
<html lang="en"${Object.entries(attributes)
  .map(([name, value]) => ` ${name}="${value}"`)
  .join("")}>
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>Rigsheet</title>
    <style>
      .desk-starting { margin: 2em; font: 16px/1.5 sans-serif; }
      .desk-starting span { opacity: 0; animation: 0s linear 6s forwards desk-stuck; }
      @keyframes desk-stuck { to { opacity: 1; } }
    </style>
    ${head}
  </head>
  <body aria-busy="true">
    <header id="bar" class="desk-bar"></header>
    <div id="strip" class="desk-strip" role="status" hidden></div>
    <div class="desk-guide">
      <nav id="sheets" class="desk-sheets" aria-label="Sheets" hidden></nav>
      <div id="line" class="desk-line"></div>
    </div>
    <div class="desk-area">
      <main id="grid" class="desk-grid" aria-label="Workbook">${ifStuck === undefined ? "" : stuck(ifStuck)}</main>
      <aside id="reviews" class="desk-beside" aria-label="Review" hidden></aside>
      <section id="start" class="desk-start" aria-label="Start" hidden></section>
      <section id="jobs" class="desk-jobs" aria-label="Jobs" hidden></section>
      <aside id="pane" class="desk-pane" aria-label="Pane" hidden></aside>
    </div>
    <noscript>Rigsheet's workbook needs JavaScript. Allow it for this address and reload; a mail program's view of a file runs none, so save the file and open it in a browser.</noscript>
${foot}  </body>
</html>
`;

export const ICON_SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><rect width="16" height="16" rx="2" fill="#2b3f55"/><path d="M3 5h10M3 8h10M3 11h10M7 3v10" stroke="#fff" stroke-width="1"/></svg>
`;
