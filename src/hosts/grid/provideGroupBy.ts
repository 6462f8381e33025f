/**
 * The library (19.3.7) gathers the cells of one step with Object.groupBy, which Node has from version 21 and browsers
 * from 2023 or 2024 on: where it is missing it is added.
 */
export function provideGroupBy(): void {
  if ("groupBy" in Object) return;
  Object.defineProperty(Object, "groupBy", {
    configurable: true,
    writable: true,
    value: <T>(items: Iterable<T>, keyOf: (item: T, index: number) => string): Record<string, T[]> => {
      const groups = Object.create(null) as Record<string, T[]>;
      let index = 0;
      for (const item of items) (groups[keyOf(item, index++)] ??= []).push(item);
      return groups;
    },
  });
}
