/**
 * The inputs of an estimate from before the distribution was one tree (up to version 4), as today's sheets have them.
 * Then a head unit named its supply wherever that stood, and a receiver that feeds was a row among the supplies.
 */
import type { Book, BookResult } from "../book";
import type { JobInputs } from "../definition";
import { namedColumn } from "../named";
import { isGivenUp, type GivenUp } from "./givenUp";
import { estimate } from "./names";

/** Something that stands elsewhere now, or nowhere. */
export interface Rearranged {
  /** Of the older workbook's input. */
  readonly name: string;
  /** Counted from the top of the name. */
  readonly index: number;
  /** What became of it, in sentences. */
  readonly became: string;
  /** Nothing of today's says it. */
  readonly lost: boolean;
}

type Row = Record<string, number | string>;

const { heads, branches, rooms, supplies, passives } = estimate;

/** What a receiver gives where its row on Parts is blank: 13 V at rest (EN 50494), 0.4 A (from memory). */
const USUAL_RECEIVER = { volts: 13, amps: 0.4 } as const;

/** As lookups compare. */
const same = (one: unknown, other: unknown): boolean => wordOf(one) === wordOf(other);
const wordOf = (value: unknown): string => (value === undefined ? "" : String(value).toLowerCase());

/**
 * @param old a workbook of any version
 * @param inputs what it fills in of today's template
 */
export function asOneTree(
  old: Book,
  inputs: JobInputs,
): { readonly inputs: JobInputs; readonly rearranged: readonly Rearranged[] } {
  if (!old.names.some(({ name }) => isGivenUp(name))) return { inputs, rearranged: [] };
  const job = new Older(old, inputs);
  return { inputs: job.inputs(), rearranged: job.rearranged };
}

class Older {
  readonly rearranged: Rearranged[] = [];
  private readonly rows: Record<"heads" | "branches" | "supplies", Row[]>;
  private readonly fromReceivers: ReadonlySet<number>;

  constructor(
    private readonly old: Book,
    private readonly given: JobInputs,
  ) {
    const copied = (block: string): Row[] => (given.blocks?.[block] ?? []).map((row) => ({ ...row }));
    this.rows = { heads: copied("heads"), branches: copied("branches"), supplies: copied("supplies") };
    const by = this.column("supplies_by");
    this.fromReceivers = new Set(
      this.rows.supplies.flatMap((_, row) => (same(by[row], "a receiver") ? [row] : [])),
    );
    this.rows.heads.forEach((_, row) => this.feed(row));
    for (const row of this.fromReceivers) this.giveUpReceiver(row);
  }

  inputs(): JobInputs {
    return { ...this.given, blocks: { ...this.given.blocks, ...this.rows } };
  }

  /** Between its two thin rows. */
  private column(name: GivenUp): readonly (BookResult | undefined)[] {
    return namedColumn(this.old, name).slice(1, -1);
  }

  private text(name: GivenUp, row: number): string {
    const value = this.column(name)[row];
    return typeof value === "string" || typeof value === "number" ? String(value) : "";
  }

  private tell(name: string, row: number, became: string, lost = false): void {
    this.rearranged.push({ name, index: row + 1, became, lost });
  }

  private isReceivers(supply: number | string | undefined): boolean {
    const row = this.rows.supplies.findIndex(({ name }) => supply !== undefined && same(name, supply));
    return this.fromReceivers.has(row);
  }

  private feed(row: number): void {
    const head = this.rows.heads[row]!;
    const [at, shares, common] = (["heads_at", "heads_shares", "heads_common"] as const).map((name) =>
      this.text(name, row),
    ) as [string, string, string];
    const who = String(head.id ?? "");
    if (common !== "" && Number(common) !== 0)
      this.tell(
        "heads_common",
        row,
        `The loop resistance of ${who}'s shared lead has no cell of its own. Give ${who} a supply with its own cable, and let the cable's length and loop resistance say it.`,
        true,
      );
    if (shares !== "") this.share(row, shares);
    const { supply } = head;
    if (supply === undefined) return;
    if (this.isReceivers(supply)) {
      delete head.supply;
      if (at !== "")
        this.tell(
          "heads_at",
          row,
          "No receiver needs to be named as the one that feeds: each is asked alone.",
        );
      this.tell(heads.supply.name, row, `The receivers feed ${who}, so its supply is blank.`);
    } else if (at !== "" && !same(at, who)) this.feedFarther(row, at, supply);
  }

  private share(row: number, other: string): void {
    const who = String(this.rows.heads[row]!.id ?? "");
    const first = this.given.blocks?.heads?.find(({ id }) => id !== undefined && same(id, other));
    const isFed = this.isReceivers(first?.supply);
    this.tell(
      "heads_shares",
      row,
      isFed
        ? `The receivers feed ${who} as they feed ${other}.`
        : `${who} shared the supply of ${other}. A supply feeds the cable that it stands in: choose one for ${who} too, or put an inserter on Distribution; until then only receivers feed it.`,
      !isFed,
    );
  }

  /** A supply at a branch's port is an inserter there, as long as the branch has a port for it. */
  private feedFarther(row: number, at: string, supply: number | string): void {
    const head = this.rows.heads[row]!;
    const who = String(head.id ?? "");
    delete head.supply;
    const port = this.portAt(at);
    if (port === undefined) {
      this.tell(
        "heads_at",
        row,
        `“${supply}” fed ${who} from ${at}, where no port is free for an inserter. Put it in the line on Distribution, and let it be fed from what came before; until then only receivers feed ${who}.`,
        true,
      );
      return;
    }
    const id = this.freshName();
    this.rows.branches.push({ id, from: at, device: supply, ...(port !== "" && { port }) });
    this.tell(
      "heads_at",
      row,
      `“${supply}” is the inserter ${id} on Distribution, at ${at}, and feeds ${who} from there.`,
    );
  }

  /** @returns the port that a supply needs, blank for any; undefined where none is free */
  private portAt(at: string): number | string | undefined {
    const branch = this.rows.branches.find(({ id }) => id !== undefined && same(id, at));
    const part = this.given.blocks?.passives?.find(({ name }) => branch && same(name, branch.device));
    if (!branch || typeof part?.ways !== "number") return undefined;
    const fedFrom = (rows: readonly Readonly<Row>[]): number =>
      rows.filter(({ from }) => from !== undefined && same(from, at)).length;
    const isTap = same(part.kind, "tap");
    const used = fedFrom(this.rows.branches) + fedFrom(this.given.blocks?.rooms ?? []);
    if (used >= part.ways + (isTap ? 1 : 0)) return undefined;
    const isOne = same(part[passives.power.key], "one port");
    if (isOne && isTap) return fedFrom(this.rows.branches) === 0 ? "through" : undefined;
    return isOne ? 1 : "";
  }

  private freshName(): string {
    const taken = new Set(
      [
        ...this.rows.branches.map((row) => row[branches.id.key]),
        ...this.rows.heads.map((row) => row[heads.id.key]),
        ...(this.given.blocks?.rooms ?? []).map((row) => row[rooms.outlet.key]),
      ].map(wordOf),
    );
    for (let count = 1; ; count++) if (!taken.has(`p${count}`)) return `P${count}`;
  }

  /** Its figures went to the receivers of Parts, whose usual ones they mostly are. */
  private giveUpReceiver(row: number): void {
    const { name, volts, amps } = this.rows.supplies[row]!;
    this.rows.supplies[row] = {};
    const isUsual = volts === USUAL_RECEIVER.volts && amps === USUAL_RECEIVER.amps;
    this.tell(
      supplies.name.name,
      row,
      isUsual
        ? `“${name}” is no supply of this job: a receiver gives ${USUAL_RECEIVER.volts} V at rest and at most ${USUAL_RECEIVER.amps} A wherever Receivers on Parts says nothing else.`
        : `“${name}” is no supply of this job, and its ${volts ?? "?"} V and ${amps ?? "?"} A were not carried over. Receivers on Parts has them by kind: enter there what your receivers give where it is not ${USUAL_RECEIVER.volts} V and ${USUAL_RECEIVER.amps} A.`,
      !isUsual,
    );
  }
}
