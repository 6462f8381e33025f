/** The arguments that the tuner functions share. */
import { MOST_USER_BANDS, MOST_USER_BANDS_BASIC } from "../../engine/tuners/constants";
import { kindKey, type TunerCatalogue } from "../../engine/tuners/tunersOfKind";
import { faults, isFault, type Fault } from "../../engine/faults";
import { isBlank, type Matrix } from "../core/cells";
import { list, number, optional, table, text, type WholeParameter } from "../core/parameters";

const tunerCount = {
  unit: "tuners",
  integer: true,
  min: 0,
  advice: "Count whole tuners, 0 where there is none",
} as const;

export const tuners = number({
  ...tunerCount,
  name: "tuners",
  help: "Number of tuners to serve.",
  max: 1_000_000,
});

export const tunersList = list(
  number({ ...tunerCount, name: "tuners", help: "Tuners of each row, as one list.", max: 1000 }),
);

export const capacity = number({
  name: "capacity",
  help: `Tuners that one head unit serves: its user bands on one cable. ${MOST_USER_BANDS_BASIC} for the basic kind (EN 50494), up to ${MOST_USER_BANDS} (EN 50607).`,
  unit: "tuners",
  integer: true,
  min: 1,
  max: MOST_USER_BANDS,
  advice: "One output has at most 32 user bands (EN 50607)",
});

export const groups = optional(
  list(
    text({
      name: "groups",
      help: "A room or other group for each row, as one list: rows of one group stay on one head unit. A row without a group stands alone.",
    }),
  ),
);

export const headUnitsList = list(
  text({
    name: "head_units",
    help: "The head unit of each row by number or name, as one list: what ALLOT gives.",
    wanted: "the head unit's number or name",
  }),
);

const block = table({
  name: "catalogue",
  help: "Two columns, kind and tuners, from your parts list: these kinds count before the built-in ones. Rows without a kind are skipped.",
  wanted: "two columns: kind and tuners",
});
const kindTuners = number({ ...tunerCount, name: "tuners in catalogue", help: "", max: MOST_USER_BANDS });

/** Read once a call, not once a row. A bad row spoils its own kind only. */
export const catalogue: WholeParameter<TunerCatalogue | undefined> = optional({
  ...block,
  readWhole: (matrix: Matrix): TunerCatalogue | Fault => {
    const columns = matrix[0]!.length;
    if (columns !== 2) return faults.badShape(block.name, matrix.length, columns, block.wanted);
    const found = new Map<string, number | Fault>();
    for (const [index, [kind, count]] of matrix.entries()) {
      if (isFault(kind)) return faults.atRow(block.name, index + 1, kind);
      if (isBlank(kind)) continue;
      const key = kindKey(String(kind));
      const read = isBlank(count) ? faults.missing(kindTuners.name, "a number") : kindTuners.read(count!);
      const value = isFault(read) ? faults.atRow(block.name, index + 1, read) : read;
      const before = found.get(key);
      const twice = typeof before === "number" && typeof value === "number" && before !== value;
      found.set(key, twice ? faults.listedTwice(block.name, key, before, value) : (before ?? value));
    }
    return found;
  },
});
