/** The help page of one function, made from its declaration. */
import { shownWork } from "./shownWork";
import type { SheetFunction } from "../functions/core/declare";
import {
  argumentFacts,
  columnsInWords,
  COMMON_FAULTS,
  executed,
  faultFacts,
  fullName,
  pageOf,
  syntaxOf,
} from "./facts";
import { framed, wideTable } from "./frame";
import { html, type Html } from "./html";

/** @returns a whole HTML document */
export function helpPage(one: SheetFunction): string {
  const { name, summary, group, tasks, caution, equation, source, accuracy, seeAlso } = one;
  return framed({
    title: fullName(name),
    body: html`<h1>${fullName(name)}</h1>
      <p class="lead">${summary}</p>
      ${caution ? html`<p class="caution" role="note"><strong>Caution.</strong> ${caution}</p>` : undefined}
      <h2 id="overview">Overview</h2>
      <p>Group: ${group}. It answers questions such as:</p>
      <ul>
        ${tasks.map((task) => html`<li>${task}</li>`)}
      </ul>
      <h2 id="syntax">Syntax</h2>
      <pre tabindex="0" aria-label="Syntax"><code>=${syntaxOf(one)}</code></pre>
      <p>
        ${one.parameters.length > 0 ? `${columnsInWords(one)} Arguments in square brackets may be left out.` : "It takes no arguments."}
      </p>
      ${argumentsPart(one)} ${resultPart(one)}
      <h2 id="equation">The equation</h2>
      <p class="equation">${equation}</p>
      <h2 id="source">Source and accuracy</h2>
      <p>Source: ${source}</p>
      <p>Accuracy: ${accuracy}</p>
      ${faultsPart(one)} ${examplesPart(one)} ${workPart(one)}
      ${
        seeAlso.length > 0
          ? html`<h2 id="see-also">See also</h2>
              <ul class="links">
                ${seeAlso.map((other) => html`<li><a href="${pageOf(other)}">${fullName(other)}</a></li>`)}
              </ul>`
          : undefined
      }`,
  });
}

function argumentsPart({ parameters }: SheetFunction): Html | undefined {
  if (parameters.length === 0) return undefined;
  const rows = parameters.map((parameter) => {
    const { name, help, takes, unit, allowed, whenLeftOut } = argumentFacts(parameter);
    return [html`<code>${name}</code>`, help, takes, unit, allowed, whenLeftOut];
  });
  return html`<h2 id="arguments">Arguments</h2>
    ${wideTable("Arguments", ["Argument", "Meaning", "Takes", "Unit", "Allowed", "When left out"], rows)}`;
}

function resultPart({ result }: SheetFunction): Html {
  return html`<h2 id="result">Result</h2>
    <p>${result.help}${result.unit ? ` Unit: ${result.unit}.` : ""}</p>
    ${
      result.columns
        ? html`<p>Its columns, from the left:</p>
            <ol>
              ${result.columns.map((column) => html`<li>${column}</li>`)}
            </ol>`
        : undefined
    }`;
}

function faultsPart(one: SheetFunction): Html {
  const facts = faultFacts(one);
  const own = one.faultsWhen ?? [];
  const common = one.parameters.length > 0 ? COMMON_FAULTS : COMMON_FAULTS.slice(-1);
  return html`<h2 id="errors">Error conditions</h2>
    ${
      own.length > 0
        ? html`<p>Of this function:</p>
            <ul>
              ${own.map((when) => html`<li>${when}</li>`)}
            </ul>`
        : undefined
    }
    ${
      facts.length > 0
        ? html`<p>Of its arguments, with an example of what the cell says:</p>
            ${wideTable(
              "Errors of the arguments",
              ["When", "Code", "The cell says"],
              facts.map(({ when, code, message }) => [when, html`<code>${code}</code>`, message]),
            )}`
        : undefined
    }
    <p>Of every function:</p>
    <ul>
      ${common.map((when) => html`<li>${when}</li>`)}
    </ul>`;
}

function examplesPart(one: SheetFunction): Html {
  const rows = one.examples.map((example) => {
    const { formula, ours, theirs, tolerance, source } = executed(one, example);
    return [html`<code>=${formula}</code>`, cells(ours), cells(theirs), tolerance, source];
  });
  return html`<h2 id="examples">Examples</h2>
    <p>
      Each was worked out by this function when the page was made, and stands beside the value of its source.
    </p>
    ${wideTable("Examples", ["Formula", "This function gives", "The source has", "Agreement asked for", "Source"], rows)}`;
}

/** A block of cells within a table's cell: a line a row, its cells set apart. */
const cells = (rows: readonly (readonly string[])[]): Html =>
  html`${rows.map((row) => html`<span class="row">${row.join(" | ")}</span>`)}`;

function workPart(one: SheetFunction): Html | undefined {
  const work = shownWork(one);
  if (!work) return undefined;
  return html`<h2 id="working">Step by step</h2>
    <p>The spreadsheet shows this for your own figures with <code>=${work.formula}</code>.</p>
    ${wideTable("Step by step", ["Symbol", "Meaning", "Value", "Unit", "Line of arithmetic", "Source"], work.rows)}`;
}
