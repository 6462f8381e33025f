/**
 * Puts what was typed in a window that had lost its job into the job as it is
 * now. The grid library does it as among people who edit together: rows that
 * the other window has inserted or moved carry the edits with them.
 */
import type { Change, JobContent } from "../../../jobs/content";
import { address } from "../../../formula/address";
import type { GridModel } from "../../grid/library";
import type { GridCommand, GridPosition } from "./libraryTypes";
import { NOWHERE, replayed, type Transport } from "./replayed";

/** A cell that both have changed. */
export interface Clash {
  readonly sheet: string;
  readonly cell: string;
  readonly theirs: string;
  readonly mine: string;
}

export interface PutIn {
  /** What is to be done in the job as it is now. */
  readonly commands: readonly GridCommand[];
  /** Cells in which mine comes in the place of theirs. */
  readonly clashes: readonly Clash[];
  /** What was typed and has no place any more, since its row or sheet was removed. */
  readonly homeless: readonly string[];
}

/** A change with what the library puts in it. */
type Message = Change & {
  readonly commands?: readonly GridCommand[];
  readonly undoneRevisionId?: string;
  readonly redoneRevisionId?: string;
};

/**
 * @param common the job as both had it
 * @param theirs what was changed in the job since
 * @param mine what was typed here since; the first of it may have reached the job
 * @returns a sentence where it can't be done
 */
export function putIn(
  common: JobContent,
  theirs: readonly Change[],
  mine: readonly Change[],
): PutIn | string {
  const arrived = mine.filter(
    ({ nextRevisionId }, at) => theirs[at]?.nextRevisionId === nextRevisionId,
  ).length;
  const there = new Set(theirs.map(({ nextRevisionId }) => nextRevisionId));
  if (mine.slice(arrived).some(({ nextRevisionId }) => there.has(nextRevisionId)))
    return "A part of what was typed is in the job already, among what others typed. Compare the two and type the rest again.";
  const both = { document: common.document, changes: [...common.changes, ...mine.slice(0, arrived)] };
  const others = theirs.slice(arrived);
  const commands = commandsOf(mine.slice(arrived));
  if (!commands)
    return "What was typed includes taking back an earlier edit, which can't be put into the changed job by itself. Compare the two and type it again.";

  const held = new Held();
  const { model, lost } = replayed(both, held);
  if (lost > 0) return "The two can't be put together. Compare them and type it again.";
  for (const command of commands)
    if (!model.dispatch(command.type as never, command as never).isSuccessful)
      return "A part of what was typed is not taken any more. Compare the two and type it again.";
  held.deliver(others);
  const moved = held.inTurn();
  if (moved.length !== commands.length)
    return "The two can't be put together. Compare them and type it again.";

  const start = replayed(both, NOWHERE).model;
  const now = replayed({ document: both.document, changes: [...both.changes, ...others] }, NOWHERE);
  if (now.lost > 0) return "The two can't be put together. Compare them and type it again.";
  const clashes: Clash[] = [];
  const homeless: string[] = [];
  for (const [index, command] of commands.entries()) {
    const after = moved[index]!.commands ?? [];
    if (command.type !== "UPDATE_CELL") {
      if (after.length === 0) homeless.push("a change of rows or sheets");
      continue;
    }
    const place = after.find(({ type }) => type === "UPDATE_CELL");
    if (!place) {
      homeless.push(`“${command.content ?? ""}” in ${placeInWords(start, placeOf(command))}`);
      continue;
    }
    const was = contentOf(start, placeOf(command));
    const theirsNow = contentOf(now.model, placeOf(place));
    const mineNow = (command.content ?? was).replace(/^'/, "");
    if (theirsNow !== was && theirsNow !== mineNow)
      clashes.push({
        sheet: now.model.getters.getSheetName(place.sheetId!),
        cell: address(place.row!, place.col!),
        theirs: theirsNow,
        mine: mineNow,
      });
  }
  return { commands: moved.flatMap((one) => one.commands ?? []), clashes, homeless };
}

/** Holds back what a model sends, as while a server does not answer, and brings others' changes. */
class Held implements Transport {
  private listener: ((message: Change) => void) | undefined;
  private waiting: Message | undefined;

  async sendMessage(message: Message): Promise<void> {
    if (message.nextRevisionId !== undefined) this.waiting = message;
  }
  onNewMessage(_id: string, listener: (message: Change) => void): void {
    this.listener = listener;
  }
  leave(): void {
    this.listener = undefined;
  }
  deliver(changes: readonly Change[]): void {
    for (const change of changes) this.listener?.(change);
  }

  /** Takes what waits, one after another, as a server does: the library has made each follow what came in. */
  inTurn(): Message[] {
    const taken: Message[] = [];
    for (let next = this.waiting; next; next = this.waiting) {
      this.waiting = undefined;
      taken.push(next);
      this.listener?.(next);
    }
    return taken;
  }
}

/** @returns the commands that remain when what was taken back is left out; undefined where something of before was taken back */
function commandsOf(changes: readonly Change[]): GridCommand[] | undefined {
  const out = new Map<string, readonly GridCommand[]>();
  const takenBack = new Set<string>();
  for (const { nextRevisionId, commands = [], undoneRevisionId, redoneRevisionId } of changes as Message[]) {
    if (undoneRevisionId !== undefined) {
      if (!out.has(undoneRevisionId)) return undefined;
      takenBack.add(undoneRevisionId);
    } else if (redoneRevisionId !== undefined) {
      if (!takenBack.delete(redoneRevisionId)) return undefined;
    } else out.set(nextRevisionId, commands);
  }
  return [...out].flatMap(([id, commands]) => (takenBack.has(id) ? [] : commands));
}

const placeOf = ({ sheetId, row, col }: GridCommand): GridPosition => ({
  sheetId: sheetId!,
  row: row!,
  col: col!,
});

const placeInWords = ({ getters }: GridModel, { sheetId, row, col }: GridPosition): string =>
  `${getters.getSheetName(sheetId)} ${address(row, col)}`;

function contentOf({ getters }: GridModel, place: GridPosition): string {
  const cell = getters.getCell(place);
  if (!cell) return "";
  // A stroke before it makes it text, and is no part of it.
  return cell.isFormula
    ? cell.compiledFormula.toFormulaString(getters)
    : (cell.content ?? "").replace(/^'/, "");
}
