/** @returns the one text that a list holds, of the first list that holds no other; undefined where each holds several or none */
export function onlyOne(...lists: readonly (readonly string[])[]): string | undefined {
  const [only] = lists.map((list) => [...new Set(list)]).find(({ length }) => length === 1) ?? [];
  return only;
}
