/**
 * The review as one page for a person who did not make the quote: no script,
 * nothing loaded, readable on paper and by a screen reader (WCAG 2.2).
 */
import { escaped } from "../help/html";
import { WEIGHTS, type Finding, type Weight } from "./finding";

export interface PageFile {
  readonly path: string;
  readonly job?: string;
  readonly findings: readonly Finding[];
  readonly unreadable?: string;
}

/** What each weight asks of the reader. */
const MEANING: Readonly<Record<Weight, string>> = {
  wrong: "cannot stand; put right before it goes out",
  doubtful: "look before it goes out",
  "worth knowing": "may stay as it is",
};

const STYLE = `
body{font:15px/1.45 system-ui,sans-serif;color:#1a1a1a;background:#fff;margin:0 auto;max-width:62rem;padding:1.2rem}
h1{font-size:1.5rem;margin:0 0 .4rem}h2{font-size:1.15rem;margin:1.4rem 0 .3rem;border-top:1px solid #767676;padding-top:.8rem;overflow-wrap:anywhere}
h3{font-size:1rem;margin:.9rem 0 .3rem}
ol{padding-left:1.6rem;margin:.2rem 0}li{margin:.45rem 0;break-inside:avoid}
dl{display:grid;grid-template-columns:max-content 1fr;gap:0 .7rem;margin:.1rem 0 0}dt{color:#4a4a4a}dd{margin:0;overflow-wrap:anywhere}
.at{font-weight:600}
@media print{body{font-size:9.5pt;line-height:1.25;padding:0;max-width:none}li{margin:.2rem 0}h2{margin-top:.6rem}@page{size:A4;margin:14mm}}
`;

/** @returns an HTML document */
export function reviewPage(files: readonly PageFile[]): string {
  const count = (weight: Weight): number =>
    files.reduce((sum, { findings }) => sum + findings.filter((one) => one.weight === weight).length, 0);
  const unreadable = files.filter((one) => one.unreadable !== undefined).length;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>Review of ${files.length === 1 ? escaped(nameOf(files[0]!.path)) : `${files.length} workbooks`}</title><style>${STYLE}</style></head>
<body><main><h1>Review of ${files.length === 1 ? "a workbook" : `${files.length} workbooks`}</h1>
<p>The figures were computed anew from what was filled in, and held to the template and to common sense. A review flags; it certifies nothing.</p>
<ul>${WEIGHTS.map((weight) => `<li><b>${count(weight)} ${weight}</b>: ${MEANING[weight]}</li>`).join("")}${
    unreadable > 0 ? `<li><b>${unreadable} unreadable</b>: ask for the file again</li>` : ""
  }</ul>
${files.map(section).join("\n")}
</main></body></html>
`;
}

function section({ path, job, findings, unreadable }: PageFile): string {
  const head = `<h2>${escaped(nameOf(path))}</h2>${job ? `<p>${escaped(job)}</p>` : ""}`;
  if (unreadable !== undefined)
    return `<section>${head}<p><b>Cannot be read.</b> ${escaped(unreadable)}</p></section>`;
  if (findings.length === 0) return `<section>${head}<p>Nothing found.</p></section>`;
  const lists = WEIGHTS.flatMap((weight) => {
    const own = findings.filter((one) => one.weight === weight);
    return own.length === 0
      ? []
      : [`<h3>${heading(weight)} (${own.length})</h3><ol>${own.map(item).join("")}</ol>`];
  });
  return `<section>${head}${lists.join("")}</section>`;
}

const heading = (weight: Weight): string => weight[0]!.toUpperCase() + weight.slice(1);

function item({ place, message, expected, effect, remedy }: Finding): string {
  const at = place ? `Sheet ${place.sheet}, cell ${place.cell}` : "The whole workbook";
  const rows = [
    ["Should be", expected],
    ["Effect", effect],
    ["What to do", remedy],
  ].flatMap(([term, text]) => (text === undefined ? [] : [`<dt>${term}</dt><dd>${escaped(text)}</dd>`]));
  return `<li><span class="at">${escaped(at)}:</span> ${escaped(message)}<dl>${rows.join("")}</dl></li>`;
}

const nameOf = (path: string): string => path.split(/[\\/]/).at(-1)!;
