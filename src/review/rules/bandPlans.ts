import { plans } from "../../workbooks/multiRoom/names/parts";
import type { Finding } from "../finding";
import { figure } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn, type ReadRow } from "../rowsIn";

type Band = ReadRow<"band" | "centre" | "width">;

export const bandPlans: Rule = {
  id: "user bands that overlap",
  reason:
    "Two user bands on one cable are two channels: where they overlap, both receivers lose their picture.",
  example:
    "Band 2 at 1605 MHz where its neighbours are at 990 and 1140 and band 9 is at 1590: 1065 was meant.",
  find: ({ read }) => {
    const { band, centre, width } = plans;
    const all = new Map<string, Band[]>();
    for (const row of rowsIn(read, plans.plan, { band, centre, width }))
      all.set(row.called, [...(all.get(row.called) ?? []), row]);
    return [...all].flatMap(([plan, rows]) => ofPlan(plan, rows));
  },
};

function ofPlan(plan: string, rows: readonly Band[]): Finding[] {
  return [...twice(plan, rows), ...overlaps(plan, rows)];
}

/** A number that stands twice; where one of the row of numbers is missing, that one was meant. */
function twice(plan: string, rows: readonly Band[]): Finding[] {
  const numbers = rows.map((row) => row.number("band"));
  const missing = rows.map((_, index) => index + 1).filter((number) => !numbers.includes(number));
  return rows.flatMap((row, index): Finding[] => {
    const is = numbers[index];
    if (is === undefined || numbers.indexOf(is) === index) return [];
    return [
      {
        weight: "wrong",
        place: row.cell("band")!.place,
        message: `User band ${figure(is)} of ${plan} stands twice.`,
        expected: missing.length === 1 ? `${missing[0]!}, which is missing.` : "Each number once.",
        ...(missing.length === 1 && { meant: missing[0]! }),
        effect: "Nothing that takes this plan can be worked out.",
        remedy: "Take the numbers from the maker's sheet.",
      },
    ];
  });
}

function overlaps(plan: string, rows: readonly Band[]): Finding[] {
  const bands = rows
    .filter((row) => row.number("centre") !== undefined && row.number("width") !== undefined)
    .sort((a, b) => (a.number("band") ?? 0) - (b.number("band") ?? 0));
  const overlapping = bands.flatMap((one, at) =>
    bands.slice(at + 1).flatMap((other) => (overlap(one, other) ? [[one, other] as const] : [])),
  );
  const told = new Set<Band>();
  return overlapping.flatMap(([one, other]): Finding[] => {
    // The one that leaves the order of its neighbours is the slip.
    const odd =
      isOutOfOrder(bands, one) &&
      !isOutOfOrder(
        bands.filter((band) => band !== one),
        other,
      )
        ? one
        : other;
    if (told.has(odd)) return [];
    told.add(odd);
    const between = likely(bands, odd);
    return [
      {
        weight: "wrong",
        place: odd.cell("centre")!.place,
        message: `User bands ${figure(one.number("band") ?? 0)} and ${figure(other.number("band") ?? 0)} of ${plan} overlap: ${figure(one.number("centre")!)} and ${figure(other.number("centre")!)} MHz.`,
        expected:
          between === undefined
            ? "Bands apart by at least their width."
            : `About ${figure(between)} MHz, half-way between its neighbours.`,
        ...(between !== undefined && { meant: between }),
        effect: "Both receivers would lose their picture.",
        remedy: "Take the centre from the maker's sheet: were digits exchanged?",
      },
    ];
  });
}

const overlap = (a: Band, b: Band): boolean =>
  Math.abs(a.number("centre")! - b.number("centre")!) < (a.number("width")! + b.number("width")!) / 2;

function isOutOfOrder(bands: readonly Band[], band: Band): boolean {
  const at = bands.indexOf(band);
  const centre = band.number("centre")!;
  const [before, after] = [bands[at - 1]?.number("centre"), bands[at + 1]?.number("centre")];
  return (before !== undefined && before >= centre) || (after !== undefined && after <= centre);
}

function likely(bands: readonly Band[], band: Band): number | undefined {
  const at = bands.indexOf(band);
  const [before, after] = [bands[at - 1]?.number("centre"), bands[at + 1]?.number("centre")];
  return before !== undefined && after !== undefined && before < after ? (before + after) / 2 : undefined;
}
