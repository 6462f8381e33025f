/** The filling steps, held to the states of a job that an outsider wrote (fixtures/firstMinutes/steps.json). */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { fillingSteps, nextStep, stateInWords, type FillingStep } from "../../src/review/fillingSteps";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { templates } from "../../src/workbooks/templates";
import { states } from "../fixtures/firstMinutes/steps.json";

type Row = Readonly<Record<string, number | string>>;
type Fields = Readonly<Record<string, number | string>>;

const whole = guestHouse as Required<JobInputs>;
const start = startingPoint as Required<JobInputs>;

const fieldsOf = (prefix: RegExp): Fields =>
  Object.fromEntries(Object.entries(whole.fields).filter(([name]) => prefix.test(name)));
const without = (fields: Fields, ...names: string[]): Fields =>
  Object.fromEntries(Object.entries(fields).filter(([name]) => !names.includes(name)));
const blocks = (...names: string[]): Record<string, readonly Row[]> =>
  Object.fromEntries(names.map((name) => [name, whole.blocks[name] ?? []]));
const mapped = (block: string, change: (row: Row, index: number) => Row): Record<string, readonly Row[]> => ({
  [block]: whole.blocks[block]!.map(change),
});

/** Blocks by the sheet that they stand on. */
const ON = {
  parts: multiRoom.sheets
    .find(({ name }) => name === "Parts")!
    .parts.flatMap((part) => (part.kind === "block" ? [part.name] : [])),
  site: ["slots", "taxes", "rests"],
  upToHeads: ["types", "dishes", "feeders", "heads", "branches", "rooms"],
};
const SITE = fieldsOf(/^(?:site|tax_class|commission)_|^written_as$/);
const of = (fields: Fields, ...rows: Record<string, readonly Row[]>[]): JobInputs => ({
  fields: { ...start.fields, ...fields },
  blocks: Object.assign({}, start.blocks, ...rows) as Record<string, readonly Row[]>,
});
const upToParts = blocks(...ON.site, ...ON.parts);
const threeOutlets = whole.blocks.rooms!.slice(0, 3);
const unfed = (row: Row): Row => Object.fromEntries(Object.entries(row).filter(([key]) => key !== "from"));
const upToHeads = blocks(...ON.site, ...ON.parts, ...ON.upToHeads);
const oneHead = [whole.blocks.heads![0]!];
/** Of the first head unit's kind, what its power is judged by. */
const kindOfHead = String(oneHead[0]!.type);

/** What each state is made of, from the invented guest house. */
const MADE: Readonly<Record<string, JobInputs>> = {
  "fs-01": startingPoint,
  "fs-02": of({ site_customer: "Invented customer", site_date: whole.fields.site_date! }),
  "fs-03": of(
    without(SITE, "site_usual_cable", "site_usual_plate", "site_usual_route", "site_closes"),
    blocks(...ON.site),
  ),
  "fs-04": of(SITE, {
    ...upToParts,
    cables: whole.blocks.cables!.map((row, index) => ({
      ...row,
      ...(index === 0 && { price: "" }),
      ...(index === 1 && { price: 0 }),
    })),
  }),
  "fs-05": of(SITE, upToParts, { rooms: threeOutlets.map(unfed) }),
  "fs-06": of(SITE, upToParts, blocks("dishes"), {
    feeders: whole.blocks.feeders!.filter(({ to }) => to === oneHead[0]!.id),
    // Three outlets need as many ports.
    ...mapped("units", (row) => ({ ...row, ...(row.name === kindOfHead && { outputs: 4 }) })),
    heads: oneHead,
    rooms: threeOutlets.map((row) => ({ ...row, from: String(oneHead[0]!.id) })),
  }),
  "fs-07": of(
    SITE,
    upToHeads,
    mapped("rooms", (row, index) => ({
      ...row,
      ...(index === 10 && { run: 3.81 }),
      ...(index === 11 && { run: "about 20" }),
    })),
  ),
  "fs-08": of(SITE, upToHeads, {
    branches: whole.blocks.branches!.filter(({ id }) => id !== "G1"),
    ...mapped("rooms", (row, index) => ({
      ...row,
      ...(index < 3 && { room: ["007", "3-16", "1E5"][index]! }),
    })),
  }),
  "fs-09": of(
    SITE,
    upToHeads,
    mapped("branches", (row) => ({
      ...row,
      ...(row.id === "A0" && { from: "A1" }),
    })),
  ),
  "fs-10": guestHouse,
  "fs-11": of(
    whole.fields,
    whole.blocks,
    mapped("units", (row) => ({ ...row, ...(row.name === kindOfHead && { least: "", load: "" }) })),
  ),
  "fs-12": of(
    { site_customer: "Invented customer" },
    {
      rooms: Array.from({ length: 20 }, (_, index) => ({
        floor: "1",
        room: `1${index}`,
        outlet: `S-${index}`,
        quantity: 2,
        run: 15,
      })),
    },
  ),
  "fs-13": of(without(whole.fields, "site_customer"), whole.blocks, {}),
  "fs-14": of(
    Object.fromEntries(
      Object.entries(whole.fields).filter(([name]) => !/^(?:discount|proposal)_/.test(name)),
    ),
    {
      ...whole.blocks,
      ...Object.fromEntries(
        ["options", "made", "provisional", "assumptions", "exclusions", "letterhead", "payment", "warranty"]
          .concat("onpurpose")
          .map((name) => [name, start.blocks[name] ?? []]),
      ),
    },
  ),
  "fs-15": of({ ...whole.fields, site_rounding: "" }, whole.blocks),
};

const stepsOf = (inputs: JobInputs): FillingStep[] => fillingSteps(recalculate(layOut(multiRoom, inputs)));
const shown = ({ state }: FillingStep): string => (state === "may stay empty" ? "not begun" : state);

describe("an outsider's states of a job", () => {
  test.each(states.map((one) => [one.id, one] as const))("%s", (id, { shown: wanted }) => {
    const steps = stepsOf(MADE[id]!);
    const found = Object.fromEntries(
      Object.keys(wanted).map((sheet) => [sheet, shown(steps.find((one) => one.sheet === sheet)!)]),
    );
    expect(found).toEqual(wanted);
  });
});

describe("steps in words", () => {
  const steps = (): FillingStep[] => stepsOf(MADE["fs-05"]!);

  test("rows of one column are counted together, and named", () => {
    const rooms = steps().find(({ sheet }) => sheet === "Rooms")!;
    expect(rooms.open.map(({ what }) => what)).toEqual([
      `Fed from is blank in 3 rows: ${threeOutlets.map(({ outlet }) => outlet).join(", ")}.`,
    ]);
    expect(rooms.open[0]!.place).toEqual({ sheet: "Rooms", cell: "F6" });
    expect(stateInWords(rooms)).toMatch(/^begun: 3 missing/);
  });

  test("of what is blank no check is told beside it", () => {
    const [site] = stepsOf(startingPoint);
    expect(site!.open.map(({ what }) => what)).toContain("Quote valid until is blank.");
    expect(site!.look).toEqual([]);
  });

  test("the next step is the first that is not filled", () => {
    expect(nextStep(steps())?.sheet).toBe("Dishes");
    expect(nextStep(stepsOf(guestHouse))).toBeUndefined();
  });

  test("a 0 that needs a reason is told beside a blank", () => {
    const prices: readonly (number | string)[] = ["", 0];
    const steps = stepsOf({
      ...guestHouse,
      blocks: {
        ...whole.blocks,
        ...mapped("cables", (row, index) => ({ ...row, price: prices[index] ?? row.price! })),
      },
    });
    const parts = steps.find(({ sheet }) => sheet === "Parts")!;
    const words = parts.open.map(({ what }) => what).join(" ");
    expect(words).toContain(`Price per reel is blank: ${whole.blocks.cables![0]!.name}.`);
    expect(words).toMatch(/Entries missing or out of bounds: Parts, cables: 2\./);
  });

  test("every template has steps, none is called begun before anybody has typed", () => {
    for (const { id, empty } of templates) {
      const found = fillingSteps(recalculate(empty()));
      expect([id, found.length]).not.toEqual([id, 0]);
      expect([id, found.filter(({ state }) => state === "begun" || state === "done")]).toEqual([id, []]);
    }
  });

  test("a workbook that is none of ours has none", () => {
    expect(fillingSteps({ ...layOut(multiRoom, {}), template: "" })).toEqual([]);
  });
});
