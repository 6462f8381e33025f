/**
 * The review as pages for a person who did not make the quote: no script,
 * nothing loaded, readable on paper and by a screen reader (WCAG 2.2).
 */
import { html, type Html } from "../help/html";
import { Html as Markup } from "../help/html";
import type { Headline } from "./amountInWords";
import { leftOutInWords, notLookedInWords, type Facts } from "./facts";
import { differ, WEIGHTS, type Finding, type Weight } from "./finding";
import type { KeptReview } from "./again/keptReview";
import { dayOf, openIn, settledIn, wordOf, type Reviewed, type Told } from "./again/told";
import { likeliest } from "./mends";
import { leadsToInWords } from "./leadsToInWords";

export interface PageFile extends Reviewed {
  readonly path: string;
  readonly headline?: Headline;
  readonly facts?: Facts;
  /** SHA-256 of the file, in hex. */
  readonly fingerprint?: string;
  /** Where the workbook lies, from the report on. */
  readonly link?: string;
  readonly unreadable?: string;
}

/** What each weight asks of the reader. */
const MEANING: Readonly<Record<Weight, string>> = {
  wrong: "cannot stand; put right before it goes out",
  doubtful: "look before it goes out",
  "worth knowing": "may stay as it is",
};

const STYLE = new Markup(`<style>
body{font:15px/1.45 system-ui,sans-serif;color:#1a1a1a;background:#fff;margin:0 auto;max-width:62rem;padding:1.2rem}
h1{font-size:1.5rem;margin:0 0 .4rem}h2{font-size:1.15rem;margin:1.4rem 0 .3rem;border-top:1px solid #767676;padding-top:.8rem;overflow-wrap:anywhere}
ol,ul{padding-left:1.6rem;margin:.2rem 0}li{margin:.45rem 0;break-inside:avoid}
dl{display:grid;grid-template-columns:max-content 1fr;gap:0 .7rem;margin:.1rem 0 0}dt{color:#4a4a4a}dd{margin:0;grid-column:2;overflow-wrap:anywhere}
a{color:#0b4a8f}.at,.headline{font-weight:600}.weight{border:1px solid #767676;padding:0 .3rem;font-size:.85em;white-space:nowrap}
table{border-collapse:collapse;width:100%;margin:.6rem 0}th,td{border:1px solid #767676;padding:.2rem .4rem;text-align:left;vertical-align:top;overflow-wrap:anywhere}
.sum{text-align:right;white-space:nowrap}thead .sum{white-space:normal}tbody th{min-width:7.5em}.small{font-size:.85em;color:#4a4a4a}
@media (max-width:40rem){body{padding:.6rem}dl{grid-template-columns:1fr}dd{grid-column:1}dt{margin-top:.2rem}table{font-size:.72rem}th,td{padding:.15rem}}
@media print{body{font-size:9.5pt;line-height:1.25;padding:0;max-width:none}li{margin:.2rem 0}h2{margin-top:.6rem;break-after:avoid}a{color:inherit}thead{display:table-header-group}tr{break-inside:avoid}@page{size:A4;margin:14mm}}
</style>`);

const MONEY = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const SHORT_FINGERPRINT = 16;

/** @returns an HTML document */
export function reviewPage(files: readonly PageFile[]): string {
  const many = files.length !== 1;
  const inOrder = [...files].sort((a, b) => atStake(b) - atStake(a));
  const title = many ? `${files.length} workbooks` : nameOf(files[0]!.path);
  const unreadable = files.filter((one) => one.unreadable !== undefined).length;
  const page = html`<html lang="en">
    <head>
      <meta charset="utf-8" />
      <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'" />
      <meta name="viewport" content="width=device-width,initial-scale=1" />
      <title>Review of ${title}</title>
      ${STYLE}
    </head>
    <body>
      <main>
        <h1>Review of ${many ? title : "a workbook"}</h1>
        <p>
          The figures were computed anew from what was filled in, and held to the template and to common
          sense. A review flags; it certifies nothing.
        </p>
        <ul>
          ${WEIGHTS.map((weight) => html`<li><b>${countOf(files, weight)} ${weight}</b>: ${MEANING[weight]}</li>`)}
          ${unreadable > 0 ? html`<li><b>${unreadable} unreadable</b>: ask for the file again</li>` : undefined}
        </ul>
        ${many ? index(inOrder) : undefined} ${inOrder.map((one, at) => section(one, at, many))}
        ${many ? lookedFor(inOrder) : undefined}
      </main>
    </body>
  </html>`;
  return `<!doctype html>\n${page.markup}\n`;
}

const countOf = (files: readonly PageFile[], weight: Weight): number =>
  files.reduce(
    (sum, file) => sum + openIn(file).filter(({ finding }) => finding.weight === weight).length,
    0,
  );

/** What is wrong with its total; of a file that cannot be read, or has none, nobody knows. */
function atStake({ headline, unreadable, findings }: PageFile): number {
  if (unreadable !== undefined) return Infinity;
  const { quoted, shouldBe } = headline ?? {};
  if (headline && quoted === undefined) return Number.MAX_VALUE;
  if (differ(quoted, shouldBe)) return Math.abs(shouldBe! - quoted!);
  // Without a sum the weightier first, under every cent.
  const weightiest = WEIGHTS.findIndex((weight) => findings.some((one) => one.weight === weight));
  return weightiest < 0 ? 0 : (WEIGHTS.length - weightiest) / 1000;
}

const index = (files: readonly PageFile[]): Html =>
  html`<table>
    <caption>
      By what is at stake
    </caption>
    <thead>
      <tr>
        <th scope="col">Workbook</th>
        <th scope="col" class="sum">Quoted</th>
        <th scope="col" class="sum">Should be about</th>
        <th scope="col" class="sum">Wrong</th>
        <th scope="col" class="sum">Doubtful</th>
      </tr>
    </thead>
    <tbody>
      ${files.map(
        (one, at) =>
          html`<tr>
            <th scope="row"><a href="#file-${at + 1}">${nameOf(one.path)}</a></th>
            <td class="sum">${sum(one.headline?.quoted)}</td>
            <td class="sum">${shouldBe(one)}</td>
            <td class="sum">${countOf([one], "wrong")}</td>
            <td class="sum">${countOf([one], "doubtful")}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;

function shouldBe({ unreadable, headline }: PageFile): string {
  if (unreadable !== undefined) return "cannot be read";
  const isSame = !differ(headline?.quoted, headline?.shouldBe);
  return headline && headline.unknown > 0 && isSame && headline.quoted !== undefined
    ? "not known"
    : sum(headline?.shouldBe);
}

const sum = (value: number | undefined): string => (value === undefined ? "–" : MONEY.format(value));

function section(file: PageFile, at: number, many: boolean): Html {
  const { path, findings, unreadable, headline, link, facts, kept } = file;
  const name = link === undefined ? html`${nameOf(path)}` : html`<a href="${link}">${nameOf(path)}</a>`;
  const heading = html`<h2 id="file-${at + 1}">${name}</h2>`;
  if (unreadable !== undefined)
    return html`<section>
      ${heading}
      <p><b>Cannot be read.</b> ${unreadable}</p>
    </section>`;
  return html`<section>
    ${heading} ${factsIn(file)}
    ${headline && findings.length > 0 ? html`<p class="headline">${headline.sentence}</p>` : undefined}
    ${facts?.leftOut === undefined ? undefined : html`<p>${leftOutInWords(facts)}</p>`}
    ${
      findings.length === 0
        ? html`<p>Nothing found.</p>`
        : html`<ol>
            ${openIn(file).map((one) => item(one, kept))}
          </ol>`
    }
    ${settledPart(file)} ${gonePart(file)}
    ${
      facts
        ? html`<p class="small">
            ${facts.checks ? `${facts.checks.ok} of the workbook's ${facts.checks.all} checks are ok. ` : ""}${
              many
                ? `${facts.passed.length} things were looked for and not found; they are listed at the end.`
                : `Looked for and not found: ${facts.passed.join(", ")}.`
            }
            ${notLookedInWords(facts)}
          </p>`
        : undefined
    }
    ${many ? html`<p><a href="#">All workbooks</a></p>` : undefined}
  </section>`;
}

/** Of many workbooks once for all of them. */
function lookedFor(files: readonly PageFile[]): Html | undefined {
  const all = new Set(
    files.flatMap(({ facts, findings }) =>
      facts ? [...facts.passed, ...findings.flatMap(({ rule }) => rule ?? [])] : [],
    ),
  );
  return all.size === 0
    ? undefined
    : html`<section>
        <h2>What was looked for</h2>
        <p class="small">${[...all].sort().join(", ")}.</p>
      </section>`;
}

function factsIn({ path, facts, fingerprint, kept }: PageFile): Html | undefined {
  const { job, template, version, printed, computed, currency = "" } = facts ?? {};
  const rows = [
    ["Job", job],
    ["File", path],
    ["Fingerprint", fingerprint && `SHA-256 ${fingerprint.slice(0, SHORT_FINGERPRINT)}…`],
    ["Reviewed before", kept?.earlier && `${dayOf(kept.earlier.at)}, ${kept.earlier.file}`],
    ["Made with", template],
    ["Reviewed by", version && `Rigsheet ${version}`],
    ["Total as the file shows it", printed !== undefined && `${MONEY.format(printed)} ${currency}`],
    ["Total as its inputs come to", computed !== undefined && `${MONEY.format(computed)} ${currency}`],
  ].flatMap(([term, text]) =>
    text
      ? [
          html`<dt>${term as string}</dt>
            <dd>${text}</dd>`,
        ]
      : [],
  );
  return html`<dl>${rows}</dl>`;
}

function settledPart(file: PageFile): Html | undefined {
  const settled = settledIn(file);
  if (settled.length === 0) return undefined;
  return html`<p><b>Settled (${settled.length})</b>, and left out of all counts:</p>
    <ul>
      ${settled.map(
        ({ finding, settled: { reason, at } }) =>
          html`<li>
            <span class="at">${placeIn(finding)}:</span> ${finding.message} Settled on ${dayOf(at)}:
            <bdi>${reason}</bdi>
          </li>`,
      )}
    </ul>`;
}

function gonePart({ kept }: PageFile): Html | undefined {
  if (!kept || kept.gone.length === 0) return undefined;
  return html`<p><b>Gone since the review before (${kept.gone.length}):</b></p>
    <ul>
      ${kept.gone.map((one) => html`<li><span class="at">${placeIn(one)}:</span> ${one.message}</li>`)}
    </ul>`;
}

const placeIn = ({ place }: Pick<Finding, "place">): string =>
  place ? `Sheet ${place.sheet}, cell ${place.cell}` : "The whole workbook";

function item(told: Told, kept: KeptReview | undefined): Html {
  const { weight, place, message, expected, effect, remedy, leadsTo = [], mends = [] } = told.finding;
  const word = wordOf(told, kept);
  const rows = (
    [
      ["Should be", [expected]],
      ["Effect", [effect]],
      ["Because of it", leadsToInWords(leadsTo)],
      ["What to do", [remedy]],
      ["Any of these", likeliest(mends).map((mend) => `${placeIn(mend)}, ${mend.what}: ${mend.does}.`)],
    ] as const
  ).flatMap(([term, texts]) => {
    const told = texts.filter((text) => text !== undefined);
    return told.length === 0
      ? []
      : [
          html`<dt>${term}</dt>
            ${told.map((text) => html`<dd>${text}</dd>`)}`,
        ];
  });
  return html`<li>
    <span class="weight">${weight}</span> ${word === undefined ? undefined : html`<b>${word}</b>`}
    <span class="at">${placeIn({ place })}:</span> ${message}
    <dl>${rows}</dl>
  </li>`;
}

const nameOf = (path: string): string => path.split(/[\\/]/).at(-1)!;
