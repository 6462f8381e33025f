/** The notes of a release: what an estimator meets otherwise than in the one before. */
import { NAMESPACE } from "../formula/namespace";
import { templates } from "../workbooks/templates";
import { VERSIONS, type TemplateVersion } from "../workbooks/versions";
import type { Had } from "./releaseRecord";

type Function = Had["functions"][string];

const called = (name: string): string => `${NAMESPACE}.${name}`;
const quoted = (name: string): string => `“${name}”`;
const listed = (words: readonly string[]): string => words.join(", ") || "no values";
const mayBeLeftOut = (optional: true | undefined): string => (optional ? " (may be left out)" : "");

/**
 * @param version of this release
 * @param before the last release; absent where none is on record
 * @param versions every version of each template, with what it changed
 */
export function changes(
  version: string,
  now: Had,
  before?: readonly [version: string, had: Had],
  versions: Readonly<Record<string, readonly TemplateVersion[]>> = VERSIONS,
): string {
  const head = before
    ? `Rigsheet ${version}: what changed since ${before[0]}`
    : `Rigsheet ${version}: the first release on record`;
  const lines = [
    head,
    "",
    ...functionLines(now.functions, before?.[1].functions),
    "",
    ...templateLines(now.templates, before?.[1].templates, versions),
  ];
  return `${lines.join("\n")}\n`;
}

function functionLines(now: Had["functions"], before: Had["functions"] | undefined): string[] {
  const names = Object.keys(now);
  if (!before)
    return [
      `FUNCTIONS (${names.length})`,
      ...names.flatMap((name) => [`  ${called(name)}`, `    ${now[name]!.description}`]),
    ];
  const added = names.filter((name) => !Object.hasOwn(before, name));
  const gone = Object.keys(before).filter((name) => !Object.hasOwn(now, name));
  const changed = names.flatMap((name) => {
    const said = Object.hasOwn(before, name) ? differences(now[name]!, before[name]!) : [];
    return said.length > 0 ? [[`  ${called(name)}`, ...said.map((one) => `    ${one}`)]] : [];
  });
  const same = names.length - added.length - changed.length;
  return [
    "FUNCTIONS",
    ...headed(
      "New",
      added.map((name) => [
        `  ${called(name)}`,
        `    ${now[name]!.description}`,
        `    Takes ${listed(now[name]!.arguments.map((one) => `${one.name}${mayBeLeftOut(one.optional)}`))}.`,
      ]),
    ),
    ...headed(
      "Gone: a workbook that calls one shows an error there",
      gone.map((name) => [`  ${called(name)}`]),
    ),
    ...headed("Changed", changed),
    ...(same === names.length
      ? ["  Nothing changed: all are as they were."]
      : [`  All others (${same}) are as they were.`]),
  ];
}

const headed = (head: string, blocks: readonly (readonly string[])[]): string[] =>
  blocks.length > 0 ? [head, ...blocks.flat(), ""] : [];

/** A sentence for each thing in which a function is called, or answers, otherwise. */
function differences(now: Function, before: Function): string[] {
  const was = new Map(before.arguments.map((one, place) => [one.name, { ...one, place }]));
  const is = new Set(now.arguments.map(({ name }) => name));
  const renamed = new Set<string>();
  const said = now.arguments.flatMap((one, place): string[] => {
    const old = was.get(one.name);
    if (old) {
      return [
        ...(old.place === place
          ? []
          : [`${quoted(one.name)} stands at place ${place + 1} now, before at ${old.place + 1}.`]),
        ...(old.optional === one.optional
          ? []
          : [`${quoted(one.name)} ${one.optional ? "may be left out now" : "must be given now"}.`]),
        ...reworded(quoted(one.name), one.description, old.description),
      ];
    }
    const there = before.arguments[place];
    if (there && !is.has(there.name)) {
      renamed.add(there.name);
      return [
        `${quoted(there.name)} is called ${quoted(one.name)} now${mayBeLeftOut(one.optional)}: ${one.description}`,
      ];
    }
    return [
      `Takes one more value, ${quoted(one.name)}, at place ${place + 1}${mayBeLeftOut(one.optional)}: ${one.description}`,
    ];
  });
  const gone = before.arguments.filter(({ name }) => !is.has(name) && !renamed.has(name));
  return [
    ...reworded("What it answers", now.description, before.description),
    ...said,
    ...gone.map(({ name }) => `${quoted(name)} is taken no longer.`),
  ];
}

const reworded = (what: string, now: string, before: string): string[] =>
  now === before ? [] : [`${what} reads now: ${now}`, `  before: ${before}`];

function templateLines(
  now: Had["templates"],
  before: Had["templates"] | undefined,
  versions: Readonly<Record<string, readonly TemplateVersion[]>>,
): string[] {
  const lines = Object.entries(now).flatMap(([id, version]) => {
    const title = templates.find((one) => one.id === id)?.title ?? id;
    const had = before?.[id];
    if (had === version) return [`  ${title} (${id}): version ${version}, as it was.`];
    const all = versions[id] ?? [];
    const since = had === undefined ? [] : all.slice(all.findIndex((one) => one.version === had) + 1);
    return [
      `  ${title} (${id}): version ${version}${had === undefined ? (before ? ", new" : "") : `, before ${had}`}.`,
      ...since.map((one) => `    ${one.version}: ${one.changes}`),
    ];
  });
  const gone = Object.keys(before ?? {}).filter((id) => !Object.hasOwn(now, id));
  return [
    "TEMPLATES",
    ...lines,
    ...gone.map((id) => `  ${id}: no longer made. Workbooks of it open as before.`),
    "",
    "A workbook keeps the version that it was made with, and goes on working; Check says what is newer.",
  ];
}
