/**
 * The protection of sheets of ours, which has no password: taken off for a
 * change that it stands in the way of, and put on again as it was. Where a
 * person has set a password, Excel refuses, and the change with it.
 */

export interface Guard {
  readonly sheet: string;
  readonly options: Excel.WorksheetProtectionOptions;
}

/** Queues the loading of the protection of sheets that are there. @returns after the next sync those that are protected */
export function loadGuards({ workbook }: Excel.RequestContext, sheets: Iterable<string>): () => Guard[] {
  const loaded = [...new Set(sheets)].map((sheet) => {
    const { protection } = workbook.worksheets.getItem(sheet);
    protection.load("protected,options");
    return { sheet, protection };
  });
  return () =>
    loaded.flatMap(({ sheet, protection }) =>
      protection.protected ? [{ sheet, options: protection.options }] : [],
    );
}

/** Queues the end of their protection. */
export function liftGuards({ workbook }: Excel.RequestContext, guards: readonly Guard[]): void {
  for (const { sheet } of guards) workbook.worksheets.getItem(sheet).protection.unprotect();
}

/** Queues their protection. */
export function setGuards({ workbook }: Excel.RequestContext, guards: readonly Guard[]): void {
  for (const { sheet, options } of guards) workbook.worksheets.getItem(sheet).protection.protect(options);
}

/** Protects those again that a change has left without. */
export async function setMissingGuards(
  context: Excel.RequestContext,
  guards: readonly Guard[],
): Promise<void> {
  if (guards.length === 0) return;
  const loaded = loadGuards(
    context,
    guards.map(({ sheet }) => sheet),
  );
  await context.sync();
  const there = new Set(loaded().map(({ sheet }) => sheet));
  setGuards(
    context,
    guards.filter(({ sheet }) => !there.has(sheet)),
  );
  await context.sync();
}
