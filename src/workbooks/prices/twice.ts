/** An article that stands more than once: the newest price that is valid is taken and said; what is equal is asked. */
import { isoDate } from "../sheetDate";
import { articleWord } from "./articleWord";
import { asWord } from "../typed/plainText";
import type { ListedPrice } from "./list";

/** Lines of one article; those without a number go by their description. */
export const articleKey = ({ article, description }: Pick<ListedPrice, "article" | "description">): string =>
  article === "" ? `=${asWord(description)}` : articleWord(article);

/** @param quantityOf from which quantity the price of a line holds, where a column says it */
export function settleTwice(
  lines: readonly ListedPrice[],
  today: number,
  quantityOf: (line: number) => number | undefined,
): ListedPrice[] {
  const groups = new Map<string, number[]>();
  for (const [index, line] of lines.entries()) {
    if (line.article === "" && line.description === "") continue;
    const key = articleKey(line);
    const before = groups.get(key);
    if (before) before.push(index);
    else groups.set(key, [index]);
  }
  const out = [...lines];
  for (const group of groups.values()) if (group.length > 1) settle(group, out, today, quantityOf);
  return out;
}

function settle(
  group: readonly number[],
  out: ListedPrice[],
  today: number,
  quantityOf: (line: number) => number | undefined,
): void {
  const leave = (index: number, left: string): void => {
    out[index] = { ...out[index]!, doubts: [], left };
  };
  const note = (index: number, said: string): void => {
    out[index] = { ...out[index]!, note: said };
  };
  const askAll = (indices: readonly number[], sentence: (others: string, price: string) => string): void => {
    const prices = new Map(indices.map((index) => [index, out[index]!.perUnit ?? out[index]!.perPack]));
    for (const index of indices) {
      const others = indices
        .filter((one) => one !== index)
        .map(
          (one) => `line ${out[one]!.line}${prices.get(one) === undefined ? "" : ` at ${prices.get(one)}`}`,
        );
      const said = sentence(
        others.join(" and "),
        prices.get(index) === undefined ? "" : ` at ${prices.get(index)}`,
      );
      out[index] = { ...out[index]!, doubts: [...out[index]!.doubts, said] };
    }
  };
  let live = group.filter((index) => out[index]!.left === undefined);
  const scales = live.map((index) => quantityOf(out[index]!.line));
  if (
    scales.length > 1 &&
    scales.every((from) => from !== undefined) &&
    new Set(scales).size === scales.length
  ) {
    const least = Math.min(...(scales as number[]));
    live = live.filter((index, at) => {
      if (scales[at] === least) return true;
      leave(index, `Its price holds from ${scales[at]} on; the price from ${least} on is taken.`);
      return false;
    });
  }
  if (live.length < 2) return;
  const [first, ...again] = live;
  const same = (one: ListedPrice, other: ListedPrice): boolean =>
    one.perUnit === other.perUnit &&
    one.perPack === other.perPack &&
    one.pack === other.pack &&
    one.currency === other.currency &&
    one.doubts.length === 0 &&
    other.doubts.length === 0;
  if (again.every((index) => same(out[first!]!, out[index]!))) {
    const best = newest(live, out) ?? first!;
    for (const index of live)
      if (index !== best) leave(index, `The same article and price stand on line ${out[best]!.line}.`);
    return;
  }
  if (live.some((index) => out[index]!.doubts.length > 0)) {
    askAll(
      live,
      (others, price) =>
        `The article stands here${price} and on ${others}, and not all of it can be read. Leave out all but one.`,
    );
    return;
  }
  const now = live.filter((index) => {
    const { from, until } = out[index]!;
    return (from === undefined || from <= today) && (until === undefined || until >= today);
  });
  const valid = now.length > 0 ? now : live;
  const best = valid.length === 1 ? valid[0] : newest(valid, out);
  if (best === undefined) {
    askAll(
      live,
      (others, price) =>
        `The article stands here${price} and on ${others}, and no date says which is newer. Leave out all but one.`,
    );
    return;
  }
  const taken = out[best]!;
  for (const index of live) {
    if (index === best) continue;
    const { from, until } = out[index]!;
    const why =
      from !== undefined && from > today
        ? `holds only from ${isoDate(from)}`
        : until !== undefined && until < today
          ? `ended on ${isoDate(until)}`
          : "is older";
    const { perUnit, perPack } = out[index]!;
    leave(
      index,
      `The same article stands on line ${taken.line}, whose price is taken; this one, ${perUnit ?? perPack}, ${why}.`,
    );
  }
  const others = live.filter((index) => index !== best).map((index) => out[index]!);
  note(
    best,
    `It stands ${live.length === 2 ? "twice" : `${live.length} times`}: the newest price that is valid is taken, not ${others
      .map(({ line, perUnit, perPack }) => `${perUnit ?? perPack} of line ${line}`)
      .join(" and ")}.`,
  );
}

/** @returns undefined where two are equally new, or have no dates to tell */
function newest(indices: readonly number[], out: readonly ListedPrice[]): number | undefined {
  const latest = (among: readonly number[], key: "from" | "until"): number[] => {
    const dates = among.map((index) => out[index]![key]);
    if (dates.some((date) => date === undefined)) return [...among];
    const last = Math.max(...(dates as number[]));
    return among.filter((_, at) => dates[at] === last);
  };
  const byBegin = latest(indices, "from");
  const left = byBegin.length === 1 ? byBegin : latest(byBegin, "until");
  return left.length === 1 ? left[0] : undefined;
}
