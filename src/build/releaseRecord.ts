/**
 * What releases had, as far as people meet it: the functions with their
 * arguments, and the templates' versions. The notes of a release are made by
 * comparing with the one before.
 */
import { allFunctions } from "../functions/all";
import { functionMetadata } from "../hosts/excel/functionMetadata";
import { RIGSHEET_VERSION } from "../version";
import { templates } from "../workbooks/templates";

export const RELEASE_RECORD = "manifest/released.json";

interface Argument {
  readonly name: string;
  /** With its unit, range and default, as the formula bar shows it. */
  readonly description: string;
  readonly optional?: true;
}

export interface Had {
  readonly functions: Readonly<
    Record<string, { readonly description: string; readonly arguments: readonly Argument[] }>
  >;
  /** The version of each. */
  readonly templates: Readonly<Record<string, string>>;
}

/** By the release's version, the older first. */
export type ReleaseRecord = Readonly<Record<string, Had>>;

/** What the sources have now. */
export const hasNow = (): Had => ({
  functions: Object.fromEntries(
    functionMetadata(allFunctions).functions.map(({ name, description, parameters }) => [
      name,
      {
        description,
        arguments: parameters.map(({ name, description, optional, repeating }) => ({
          name,
          description,
          ...((optional ?? repeating) && { optional: true as const }),
        })),
      },
    ]),
  ),
  templates: Object.fromEntries(templates.map(({ id, definition }) => [id, definition.version])),
});

/** The last release before this version, and what it had. */
export const lastBefore = (
  record: ReleaseRecord,
  version: string = RIGSHEET_VERSION,
): readonly [version: string, had: Had] | undefined =>
  Object.entries(record)
    .filter(([one]) => one !== version)
    .at(-1);

/**
 * @param kept the record as the repository has it
 * @param release notes what there is now as released; of earlier releases only the last is kept
 */
export function releaseRecord(
  kept: ReleaseRecord,
  release: boolean,
  version: string = RIGSHEET_VERSION,
  has: Had = hasNow(),
): ReleaseRecord {
  if (!release) return kept;
  const before = lastBefore(kept, version);
  return { ...(before && { [before[0]]: before[1] }), [version]: has };
}
