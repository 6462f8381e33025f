/** The page "What the model leaves out, and where published answers are wrong". */
import type { SheetFunction } from "../functions/core/declare";
import { exampleCall } from "./exampleCall";
import { fullName, pageOf, shownRows } from "./facts";
import { framed, wideTable } from "./frame";
import { html, type Html } from "./html";
import { LEFT_OUT, WRONG_ANSWERS, type LeftOut, type WrongAnswer } from "./modelFacts";

/** @returns a whole HTML document */
export function modelLimits(functions: readonly SheetFunction[]): string {
  const known = new Set(functions.map(({ name }) => name));
  return framed({
    title: "What the model leaves out",
    body: html`<h1>What the model leaves out, and where published answers are wrong</h1>
      <p class="lead">
        A prediction is as good as what it knows. Here is what it does not know, and which answers in print
        not to trust.
      </p>
      <h2 id="left-out">What the model leaves out</h2>
      <dl>${LEFT_OUT.map((one) => leftOut(one, known))}</dl>
      <h2 id="wrong">Where published answers are wrong</h2>
      <p>
        Somebody who checks these functions against other sources will meet them. What the function gives was
        worked out when the page was made.
      </p>
      ${wideTable(
        "Wrong published answers",
        ["Where", "Printed", "Why it is wrong", "This function gives"],
        WRONG_ANSWERS.map((one) => [one.where, one.printed, one.why, ours(one, functions)]),
      )}`,
  });
}

const leftOut = ({ topic, text, source, see }: LeftOut, known: ReadonlySet<string>): Html => {
  const names = see.filter((name) => known.has(name));
  return html`<dt id="${topic.toLowerCase().replace(/[^a-z0-9]+/g, "-")}"><strong>${topic}</strong></dt>
    <dd>
      ${text} Source: ${source}. See
      ${names.map(
        (name, index) => html`${index > 0 ? ", " : ""}<a href="${pageOf(name)}">${fullName(name)}</a>`,
      )}.
    </dd> `;
};

function ours({ formula }: WrongAnswer, functions: readonly SheetFunction[]): string | Html {
  if (formula === undefined) return "";
  const { name, args } = exampleCall(formula);
  const value = functions.find((one) => one.name === name)?.call(args) ?? null;
  return html`<code>=${formula}</code> <span class="row">${shownRows(value)[0]!.join(" | ")}</span>`;
}
