/**
 * What each version of each template looked like, as a hash of its laid-out
 * book: names, words, formulas and input rules; not looks, widths or print.
 * A version that was released may never look otherwise: workbooks made from it
 * are kept by people, and the review holds them to it.
 */
import { createHash } from "node:crypto";
import type { WorkbookDefinition } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { templates } from "../workbooks/templates";

export const VERSION_RECORD = "templates/versions.json";

interface Entry {
  readonly hash: string;
  readonly released: boolean;
}
/** By template and version. */
export type VersionRecord = Readonly<Record<string, Readonly<Record<string, Entry>>>>;

const HASH_LENGTH = 16;

export function hashOf(definition: WorkbookDefinition): string {
  const { sheets, names } = layOut(definition);
  const seen = sheets.map(({ name, cells, validations }) => [
    name,
    Object.entries(cells).flatMap(([at, { value, formula, spill }]) =>
      value === undefined && formula === undefined ? [] : [[at, value, formula, spill]],
    ),
    validations.map(({ range, rule }) => [range, rule]),
  ]);
  return createHash("sha256")
    .update(JSON.stringify([seen, names]))
    .digest("hex")
    .slice(0, HASH_LENGTH);
}

/**
 * @param kept the record as the repository has it
 * @param release closes today's versions: from now on they may not change
 * @param definitions the templates' own where absent
 * @throws for a definition that is not what its released version was
 */
export function versionRecord(
  kept: VersionRecord,
  release: boolean,
  definitions: readonly WorkbookDefinition[] = templates.map(({ definition }) => definition),
): VersionRecord {
  const record: Record<string, Record<string, Entry>> = {};
  for (const definition of definitions) {
    const { id, version } = definition;
    const hash = hashOf(definition);
    const before = kept[id]?.[version];
    if (before?.released && before.hash !== hash)
      throw new Error(
        `The template ${id} is no longer what its version ${version} was when it was released. Add a line with the next version, and what changed, to src/workbooks/versions.ts; then generate again.`,
      );
    record[id] = { ...kept[id], [version]: { hash, released: release || (before?.released ?? false) } };
  }
  return record;
}
