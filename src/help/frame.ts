/** What all help pages have around their own part. */
import { RIGSHEET_VERSION } from "../version";
import { html, type Html } from "./html";

export const INDEX_PAGE = "index.html";
export const LIMITS_PAGE = "model-limits.html";
export const SHEETS_PAGE = "sheets.html";
export const EXCEL_PAGE = "in-excel.html";
export const STYLE_FILE = "help.css";
export const SCRIPT_FILE = "search.js";

export interface Page {
  readonly title: string;
  readonly body: Html;
  /** Only the index has something to search. */
  readonly searches?: boolean;
}

/** @returns a whole HTML document */
export function framed({ title, body, searches }: Page): string {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${title}: Rigsheet help</title>
        <link rel="stylesheet" href="${STYLE_FILE}" />
        ${searches ? html`<script src="${SCRIPT_FILE}" defer></script>` : undefined}
      </head>
      <body>
        <a class="skip" href="#content">Skip to the content</a>
        <header>
          <nav aria-label="Help">
            <ul class="menu">
              <li><a href="${INDEX_PAGE}#by-task">By task</a></li>
              <li><a href="${INDEX_PAGE}#by-name">By name</a></li>
              <li><a href="${INDEX_PAGE}#by-group">By group</a></li>
              <li><a href="${SHEETS_PAGE}">The sheets</a></li>
              <li><a href="${LIMITS_PAGE}">What the model leaves out</a></li>
              <li><a href="${EXCEL_PAGE}">In Excel</a></li>
            </ul>
          </nav>
        </header>
        <main id="content" tabindex="-1">${body}</main>
        <footer>
          <p>
            Rigsheet ${RIGSHEET_VERSION}. It predicts and flags; it certifies nothing. Roofs, ladders,
            overhead lines, lightning, mains and bonding: the local code and licensed practice decide.
          </p>
        </footer>
      </body>
    </html> `.markup;
}

/** A table that can be scrolled sideways by keyboard when the window is narrow. */
export function wideTable(
  label: string,
  heads: readonly string[],
  rows: readonly (readonly (string | Html)[])[],
): Html {
  return html`<div class="wide" role="region" aria-label="${label}" tabindex="0">
    <table>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([first, ...rest]) =>
            html`<tr>
              <th scope="row">${first}</th>
              ${rest.map((cell) => html`<td>${cell}</td>`)}
            </tr> `,
        )}
      </tbody>
    </table>
  </div>`;
}
