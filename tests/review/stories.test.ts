/**
 * Reviews of a job one after the other, told by somebody who had seen neither code nor tests
 * (tests/fixtures/stories/README.md): what is new, still there, settled, gone and back.
 * Some run; all do with RIGSHEET_RUNS=most.
 */
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { MemoryStorage } from "../../src/hosts/storage/memoryStorage";
import { trials } from "../../src/hosts/headless/recalculate";
import { askForReview } from "../../src/jobs/askForReview";
import { Refusal } from "../../src/jobs/refusal";
import { Reviews } from "../../src/jobs/reviews";
import type { KeptReview } from "../../src/review/again/keptReview";
import type { FindingPlace } from "../../src/review/finding";
import { placesNow } from "../../src/review/again/noted";
import { reviewInFull, type FullReview } from "../../src/review/reviewInFull";
import type { Book } from "../../src/workbooks/book";
import { spoilt, type BaseName, type SpoiltEdit, type SpoiltPlace } from "../support/spoilt";
import { isMost } from "../support/tries";
import { TOLD_OTHERWISE } from "./storiesWeaker";

type Told = "new" | "still" | "settled" | "gone" | "settled-gone" | "back";

interface Step {
  readonly review?: { readonly file: string; readonly book: BaseName; readonly edits: readonly SpoiltEdit[] };
  readonly expect?: readonly {
    readonly place: SpoiltPlace;
    /** Another at which it may stand. */
    readonly orPlace?: SpoiltPlace;
    readonly state: Told;
    /** Right as well. */
    readonly or?: Told | readonly Told[];
    readonly reason?: string;
  }[];
  readonly absent?: readonly SpoiltPlace[];
  /** A check that is not told beside what brings it about. */
  readonly once?: readonly { readonly check: SpoiltPlace; readonly under: readonly SpoiltPlace[] }[];
  readonly job?: "first" | "again";
  readonly settle?: { readonly place: SpoiltPlace; readonly reason: string };
  readonly unsettle?: { readonly place: SpoiltPlace };
  readonly refused?: boolean;
  readonly delete?: { readonly quote?: string; readonly file?: string };
}

interface Story {
  readonly id: string;
  readonly kind: string;
  readonly steps: readonly Step[];
}

const EVERY = 32;
const LONG_MS = 3_600_000;
/** Where every outcome is written to, to be read by a person. */
const { STORIES_OUT } = process.env;

const stories = JSON.parse(
  readFileSync(join(__dirname, "../fixtures/stories/stories.json"), "utf8"),
) as Story[];
const { STORIES } = process.env;
const chosen = stories.filter(({ id }, index) =>
  STORIES === undefined ? isMost || index % EVERY === 0 : STORIES.split(",").includes(id),
);

interface Reviewed {
  readonly book: Book;
  readonly full: FullReview;
}

const reviewed = new Map<string, Promise<Reviewed>>();

function reviewOf(book: BaseName, edits: readonly SpoiltEdit[], mark: string): Promise<Reviewed> {
  const known = reviewed.get(mark);
  if (known) return known;
  const made = spoilt({ book, edits } as Parameters<typeof spoilt>[0]).then((read) => ({
    book: read,
    full: reviewInFull(read, trials),
  }));
  reviewed.set(mark, made);
  return made;
}

const isAt = (place: FindingPlace | undefined, at: SpoiltPlace): boolean =>
  place?.sheet === at.sheet && place.cell === at.cell;

/** @returns what went otherwise than told, in words */
async function told({ steps }: Story): Promise<string[]> {
  const reviews = await Reviews.open(new MemoryStorage());
  const wrong: string[] = [];
  let last: { readonly kept: KeptReview; readonly full: FullReview } | undefined;
  const filed = new Map<string, string>();
  for (const [index, step] of steps.entries()) {
    const say = (words: string): void => void wrong.push(`step ${index + 1}: ${words}`);
    const { review, settle, unsettle } = step;
    if (step.delete) {
      // A job of the desk's: it is on the shelf under the id that its reviews were told.
      const { quote, file } = step.delete;
      await reviews.forget(`job ${quote ?? filed.get(file!)!}`);
    }
    if (settle || unsettle) {
      const { place } = (settle ?? unsettle)!;
      const at = last?.full.findings.findIndex((one) => isAt(one.place, place) || isAt(one.cause, place));
      const refused =
        last === undefined || at === undefined || at < 0
          ? "there is no such finding"
          : await reviews
              .settle({
                id: last.kept.id,
                key: last.kept.now[at]!.key,
                ...(settle && { reason: settle.reason }),
              })
              .then(
                () => undefined,
                (error: unknown) => {
                  if (!(error instanceof Refusal)) throw error;
                  return error.message;
                },
              );
      if (step.refused === true && refused === undefined) say("was not refused");
      if (step.refused !== true && refused !== undefined && settle) say(`was refused: ${refused}`);
    }
    if (!review) continue;
    const mark = createHash("sha256")
      .update(JSON.stringify([review.book, review.edits]))
      .digest("hex");
    const { book, full } = await reviewOf(review.book, review.edits, mark);
    const asked = askForReview(book, full, review.file, [mark]);
    const shelved = `job ${asked.job.number || mark}`;
    filed.set(review.file, asked.job.number || mark);
    const isDeletedLater = steps.some((one) => one.delete !== undefined);
    const kept = await reviews.take(
      isDeletedLater ? { ...asked, job: { ...asked.job, marks: [mark, shelved] } } : asked,
    );
    last = { kept, full };
    const placeNow = placesNow(book);
    if (step.job && (kept.earlier !== undefined) !== (step.job === "again"))
      say(`the job was taken for one that is ${kept.earlier ? "known" : "new"}`);
    for (const { place, orPlace, state, or = [], reason } of step.expect ?? []) {
      const isThere = (one: FindingPlace | undefined): boolean =>
        isAt(one, place) || (orPlace !== undefined && isAt(one, orPlace));
      const at = full.findings.flatMap((one, nth) => (isThere(one.place) || isThere(one.cause) ? [nth] : []));
      const now = at.map((nth) => kept.now[nth]!);
      const gone = kept.gone.filter((one) => isThere(one.place) || isThere(placeNow(one)));
      const words = [
        ...now.map((one) => one.state),
        ...gone.map(({ settled }) => (settled ? "settled-gone" : "gone")),
      ];
      if (![state, ...[or].flat()].some((one) => words.includes(one)))
        say(`${place.sheet} ${place.cell} is ${words.join(", ") || "nothing"}, not ${state}`);
      else if (
        reason !== undefined &&
        state === "settled" &&
        !now.some(({ settled }) => settled?.reason === reason.trim())
      )
        say(`${place.sheet} ${place.cell} has another reason`);
    }
    for (const place of step.absent ?? [])
      if (full.findings.some((one) => one.weight !== "worth knowing" && isAt(one.place, place)))
        say(`${place.sheet} ${place.cell} is on the list`);
    for (const { check, under } of step.once ?? [])
      if (
        full.findings.some((one) => isAt(one.place, check)) &&
        full.findings.some((one) => under.some((place) => isAt(one.place, place)))
      )
        say(`the check ${check.cell} stands beside its cause`);
  }
  return wrong;
}

test(
  `${chosen.length} stories of reviews one after the other`,
  async () => {
    expect(stories.length).toBeGreaterThan(100);
    const outcomes: [string, string, string[]][] = [];
    for (const one of chosen) outcomes.push([one.id, one.kind, await told(one)]);
    if (STORIES_OUT !== undefined) writeFileSync(STORIES_OUT, JSON.stringify(outcomes, null, 1));
    const otherwise = outcomes.filter(([, , wrong]) => wrong.length > 0);
    process.stdout.write(
      `of ${outcomes.length} stories ${outcomes.length - otherwise.length} went as they were told\n`,
    );
    expect(otherwise.filter(([id]) => !(id in TOLD_OTHERWISE))).toEqual([]);
  },
  LONG_MS,
);
