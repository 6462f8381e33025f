/** A comparison as one self-contained page: no script, nothing loaded, every text of the files escaped. */
import { Html, html } from "../help/html";
import type { Comparison } from "./compareJobs";
import { moreInWords, movesInWords } from "./movesInWords";
import { howMany, kindOf, money, ORDER } from "./words";

const STYLE = new Html(`<style>
body { font: 16px/1.5 system-ui, sans-serif; max-width: 62rem; margin: 2rem auto; padding: 0 1rem; color: #1a1a1a; background: #fff; }
table { border-collapse: collapse; width: 100%; margin: 1rem 0; }
caption { text-align: left; font-weight: 600; }
th, td { border: 1px solid #767676; padding: .3rem .5rem; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
th[scope="col"] { overflow-wrap: break-word; }
.sum { text-align: right; }
td.sum { white-space: nowrap; }
@media (max-width: 40rem) { body { padding: 0 .4rem; } table { font-size: .75rem; } th, td { padding: .2rem; } }
tfoot th, tfoot td { border-top-width: 3px; }
@media print { body { margin: 0; font-size: 10pt; } tr { break-inside: avoid; } thead { display: table-header-group; } }
</style>`);

/** @param names the two files, the older first */
export function report(comparison: Comparison, [older, newer]: readonly [string, string]): string {
  const title = `${older} and ${newer} compared`;
  const page = html`<html lang="en">
    <head>
      <meta charset="utf-8" />
      <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'" />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <title>${title}</title>
      ${STYLE}
    </head>
    <body>
      <main>
        <h1>${title}</h1>
        <p>${comparison.title}. The older workbook is ${older}, the newer one is ${newer}.</p>
        ${priceSection(comparison)} ${movesSection(comparison)} ${changesSection(comparison)}
        <p>Rigsheet compares and flags; it certifies nothing.</p>
      </main>
    </body>
  </html>`;
  return `<!doctype html>\n${page.markup}\n`;
}

function priceSection({ olderCents, newerCents, differenceCents, currency, steps, notes }: Comparison): Html {
  const told = notes.map((note) => html`<p>${note}</p>`);
  if (olderCents === null || newerCents === null || differenceCents === null) {
    return html`<h2>Price</h2>
      ${told}`;
  }
  const together = steps.reduce((sum, { cents }) => sum + cents, 0);
  const table = html`<table>
    <caption>
      What each change adds
    </caption>
    <thead>
      <tr>
        <th scope="col">Change</th>
        <th scope="col" class="sum">Adds, ${currency}</th>
        <th scope="col" class="sum">Total after it</th>
      </tr>
    </thead>
    <tbody>
      ${steps.map(
        ({ what, cents, totalCents }) =>
          html`<tr>
            <td>${what}</td>
            <td class="sum">${money(cents, true)}</td>
            <td class="sum">${money(totalCents)}</td>
          </tr>`,
      )}
    </tbody>
    <tfoot>
      <tr>
        <th scope="row">Together</th>
        <td class="sum">${money(together, true)}</td>
        <td class="sum">${money(newerCents)}</td>
      </tr>
    </tfoot>
  </table>`;
  return html`<h2>Price</h2>
    <p>
      Total ${money(olderCents)}, now ${money(newerCents)} ${currency}: a difference of
      <strong>${money(differenceCents, true)}</strong>.
    </p>
    ${told} ${steps.length > 0 ? table : undefined}
    <p>${ORDER}</p>`;
}

function movesSection({ moves }: Comparison): Html | undefined {
  const headed = movesInWords(moves);
  if (headed.length === 0) return undefined;
  return html`<h2>Levels, volts, user bands and checks</h2>
    ${headed.map(
      ({ heading, rows, more }) =>
        html`<table>
          <caption>
            ${heading}
          </caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Before</th>
              <th scope="col">After</th>
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              ([what, before, after]) =>
                html`<tr>
                  <th scope="row">${what}</th>
                  <td>${before}</td>
                  <td>${after}</td>
                </tr>`,
            )}
            ${
              more > 0
                ? html`<tr>
                    <td colspan="3">${moreInWords(more)}</td>
                  </tr>`
                : undefined
            }
          </tbody>
        </table>`,
    )}`;
}

function changesSection({ changes }: Comparison): Html {
  if (changes.length === 0) {
    return html`<h2>Changes</h2>
      <p>No input and no formula has changed.</p>`;
  }
  return html`<h2>Changes</h2>
    <table>
      <caption>
        ${howMany(changes)}, rows matched by their names
      </caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Row</th>
          <th scope="col">What</th>
          <th scope="col">Before</th>
          <th scope="col">After</th>
        </tr>
      </thead>
      <tbody>
        ${changes.flatMap((change) =>
          change.cells.map(
            ({ label, before, after }) =>
              html`<tr>
                <td>${change.sheet}, ${change.part}</td>
                <th scope="row">${change.row}</th>
                <td>${label} (${kindOf(change)})</td>
                <td>${before ?? "blank"}</td>
                <td>${after ?? "blank"}</td>
              </tr>`,
          ),
        )}
      </tbody>
    </table>`;
}
