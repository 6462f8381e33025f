/** Computed jobs for the tests of the pictures, changed from the demonstration. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

export type Row = Readonly<Record<string, number | string>>;

export interface Changes {
  readonly fields?: JobInputs["fields"];
  readonly blocks?: Readonly<Record<string, readonly Row[] | ((rows: readonly Row[]) => readonly Row[])>>;
}

export function changedJob({ fields, blocks = {} }: Changes = {}): JobInputs {
  const changed = Object.entries(blocks).map(([name, change]) => [
    name,
    typeof change === "function" ? change(guestHouse.blocks![name]!) : change,
  ]);
  return {
    ...guestHouse,
    fields: { ...guestHouse.fields, ...fields },
    blocks: { ...guestHouse.blocks, ...(Object.fromEntries(changed) as JobInputs["blocks"]) },
  };
}

export const computed = (changes?: Changes): Book => recalculate(layOut(multiRoom, changedJob(changes)));

/** Puts other cells into the row of that id. */
export const withRow =
  (key: string, id: string, cells: Row) =>
  (rows: readonly Row[]): readonly Row[] =>
    rows.map((row) => (row[key] === id ? { ...row, ...cells } : row));

/** The innermost groups of a picture: a box or a row of the diagram each. */
export const innerGroups = (svg: string): string[] =>
  [...svg.matchAll(/<g>((?:(?!<g[ >])[\s\S])*?)<\/g>/g)].map(([, inside]) => inside!);

/** The texts in a piece of a picture as they are read; of a text that was cut, the whole. */
export const textsIn = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)(?:<title>([^<]*)<\/title>)?<\/text>/g)].map(([, cut, whole]) =>
    unescaped(whole ?? cut!),
  );

const unescaped = (text: string): string =>
  text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, "&");
