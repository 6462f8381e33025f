import { cutLength } from "../../engine/estimate/cutLength";
import { packReels } from "../../engine/estimate/packReels";
import { isFault } from "../../engine/faults";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { rooms, branches, heads, feeders, rests } = estimate;

const RUNS = [
  { named: rooms.outlet.name, run: rooms.run.name, cable: rooms.cable.name },
  { named: branches.id.name, run: branches.length.name, cable: branches.cable.name },
  { named: heads.id.name, run: heads.length.name, cable: heads.cable.name },
  { named: feeders.from.name, run: feeders.length.name, cable: feeders.cable.name },
] as const;

export const reelLengths: Rule = {
  id: "run longer than its reel",
  reason: "A run is cut in one piece; one that no reel holds is a slip, or wants a longer reel.",
  example: "A trunk of 180 m from reels of 150 m.",
  find: ({ read }) => {
    const slack = Number(namedValue(read, estimate.site.slack.name) ?? 0);
    const waste = Number(namedValue(read, estimate.site.waste.name) ?? 0);
    if (!(slack >= 0 && waste >= 0 && waste <= 1)) return [];
    const usual = namedValue(read, estimate.site.usual_cable.name);
    const reels = namedCells(read, estimate.cables.reel.name);
    const beyond = filledCells(read, estimate.cables.name.name).flatMap(({ value, index }) => {
      const reel = reels[index];
      if (typeof reel?.value !== "number" || reel.value <= 0) return [];
      // A reel in stock may be longer than a new one.
      const [inStock, lefts] = [namedCells(read, rests.cable.name), namedCells(read, rests.length.name)];
      const holds = Math.max(
        reel.value,
        ...inStock.flatMap(({ value: cable }, at) => {
          const left = lefts[at]?.value;
          return typeof left === "number" && plainWord(cable) === plainWord(value) ? [left] : [];
        }),
      );
      const runs = RUNS.flatMap((one) => {
        const [lengths, cables] = [namedCells(read, one.run), namedCells(read, one.cable)];
        return filledCells(read, one.named).flatMap((row) => {
          const length = lengths[row.index];
          const own = cables[row.index]?.value;
          return length &&
            typeof length.value === "number" &&
            plainWord(isBlank(own) ? usual : own) === plainWord(value)
            ? [{ of: String(row.value), cell: length, length: length.value }]
            : [];
        });
      });
      const cut = (length: number): number => cutLength(length, slack, waste);
      // The sheet's own count decides, so that a run which just fills its reel comes off it here as well.
      const tooLong = runs.filter(({ of: label, length }) =>
        isFault(packReels([{ label, length }], holds, slack, waste)),
      );
      if (tooLong.length === 0) return [];
      // Where most do not fit, the reel or the slack is off, not every run.
      if (tooLong.length > runs.length / 2 && runs.length > 1) {
        const alone = cut(0) > holds ? namedCells(read, estimate.site.slack.name)[0] : reel;
        return [
          longer(
            alone ?? reel,
            `A reel of ${String(value)} holds ${figure(holds)}, and ${tooLong.length} of its ${runs.length} runs are cut longer with a slack of ${figure(slack)}.`,
          ),
        ];
      }
      return tooLong.map(({ of, cell, length }): Finding => ({
        ...longer(
          cell,
          `${of}: ${figure(length)} of ${String(value)} is cut at ${figure(Number(cut(length).toFixed(1)))} with slack and waste, and a reel holds ${figure(holds)}.`,
        ),
        // A decimal point that was lost.
        ...(cut(length / 10) <= holds && length / 10 >= SHORTEST && { meant: length / 10, isGuess: true }),
      }));
    });
    return [...beyond, ...inStockTooLong(read)];
  },
};

/** No run is shorter, in either unit. */
const SHORTEST = 3;

/** A rest may come off a larger reel than is bought now; no reel is so much larger. */
const LARGEST_REST = 4;

/** What is said to be left on one reel, and is many. */
const inStockTooLong = (read: Book): Finding[] =>
  rowsIn(read, rests.cable, { length: rests.length }).flatMap(({ called, cell, number }): Finding[] => {
    const reel = rowsIn(read, estimate.cables.name, { reel: estimate.cables.reel })
      .find((row) => plainWord(row.called) === plainWord(called))
      ?.number("reel");
    const left = number("length");
    if (reel === undefined || left === undefined || left <= LARGEST_REST * reel) return [];
    return [
      {
        weight: "doubtful",
        place: cell("length")!.place,
        message: `${figure(left)} of ${called} are said to be left on one reel; a new one has ${figure(reel)}.`,
        expected: "What is left on this reel; each reel in stock has a row of its own.",
        usual: { low: 1, high: reel },
        effect: "Runs are cut from it, and no cable is bought for them.",
        remedy: "Look at the reels in the store, and at the decimal point.",
      },
    ];
  });

const longer = ({ place }: NamedCell, message: string): Finding => ({
  weight: "wrong",
  place,
  message,
  expected: "Runs that a reel holds.",
  effect: "The cable cannot be counted, so there is no price.",
  remedy:
    "Compare the length with the plan; or choose a longer reel, or part the run with a joint on purpose.",
});
