/** The index of the help: by task, by name and by group. */
import type { SheetFunction } from "../functions/core/declare";
import { fullName, GROUPS, pageOf } from "./facts";
import { EXCEL_PAGE, framed, LIMITS_PAGE } from "./frame";
import { html, type Html } from "./html";

/** @returns a whole HTML document */
export function helpIndex(functions: readonly SheetFunction[]): string {
  return framed({
    title: "Index",
    searches: true,
    body: html`<h1>Help of the trade functions</h1>
      <p class="lead">
        ${functions.length} functions for planning, pricing and checking multi-room single-cable satellite
        reception. In a cell they begin with <code>RIG.</code>
      </p>
      <form id="search" role="search" hidden>
        <label for="words">Find a task or a function</label>
        <input id="words" type="search" autocomplete="off" spellcheck="false" />
        <p id="found" role="status"></p>
      </form>
      <p>
        Read also
        <a href="${LIMITS_PAGE}">what the model leaves out, and where published answers are wrong</a>, and
        <a href="${EXCEL_PAGE}">what Excel shows of functions that come from an add-in</a>.
      </p>
      <h2 id="by-task">By task</h2>
      ${GROUPS.map((group) =>
        tasksOf(
          group,
          functions.filter((one) => one.group === group),
        ),
      )}
      <h2 id="by-name">By name</h2>
      <dl>${[...functions].sort((a, b) => (a.name < b.name ? -1 : 1)).map(nameEntry)}</dl>
      <h2 id="by-group">By group</h2>
      ${GROUPS.map((group) =>
        groupPart(
          group,
          functions.filter((one) => one.group === group),
        ),
      )}`,
  });
}

const link = (name: string): Html => html`<a href="${pageOf(name)}">${fullName(name)}</a>`;

/** A task that several functions answer stands once, with all of them. */
function tasksOf(group: string, functions: readonly SheetFunction[]): Html | undefined {
  const byTask = new Map<string, string[]>();
  for (const { name, tasks } of functions) {
    for (const task of tasks) byTask.set(task, [...(byTask.get(task) ?? []), name]);
  }
  if (byTask.size === 0) return undefined;
  return html`<h3>${group}</h3>
    <ul class="tasks">
      ${[...byTask].map(
        ([task, names]) =>
          html`<li>${task} ${names.map((name, index) => html`${index > 0 ? ", " : ""}${link(name)}`)}</li> `,
      )}
    </ul>`;
}

const nameEntry = ({ name, summary }: SheetFunction): Html =>
  html`<div class="entry">
    <dt>${link(name)}</dt>
    <dd>${summary}</dd>
  </div> `;

function groupPart(group: string, functions: readonly SheetFunction[]): Html | undefined {
  if (functions.length === 0) return undefined;
  return html`<h3>${group}</h3>
    <ul class="links">
      ${functions.map(({ name }) => html`<li>${link(name)}</li>`)}
    </ul>`;
}
