/**
 * Puts what was typed in a window that had lost its job into the job as it is
 * now. The grid library does it as among people who edit together: rows that
 * the other window has inserted or moved carry the edits with them.
 */
import type { Change, JobContent, JobDocument } from "../../../jobs/content";
import { address } from "../../../workbooks/address";
import type { GridModel } from "../../grid/library";
import type { GridCommand, GridPosition } from "./libraryTypes";
import { exportedBy, replayed, type Transport } from "./replayed";

/** A cell that both have changed. */
export interface Clash {
  readonly sheet: string;
  readonly cell: string;
  readonly theirs: string;
  readonly mine: string;
}

export interface PutIn {
  /** The job with both in it. */
  readonly document: JobDocument;
  /** Cells in which mine stands in the place of theirs. */
  readonly clashes: readonly Clash[];
}

/** A change with what the library puts in it. */
type Messages = Change & {
  readonly commands?: readonly GridCommand[];
  readonly undoneRevisionId?: string;
  readonly redoneRevisionId?: string;
};

/**
 * @param common the job as both had it
 * @param theirs what was changed in the job since
 * @param mine what was typed here since
 * @returns a sentence where it can't be done
 */
export function putIn(
  common: JobContent,
  theirs: readonly Change[],
  mine: readonly Change[],
): PutIn | string {
  const commands = commandsOf(mine);
  if (!commands)
    return "What was typed includes taking back an earlier edit, which can't be put into the changed job by itself. Compare the two and type it again.";
  const held = new Held();
  const { model, lost } = replayed(common, held);
  if (lost > 0) return "The two can't be put together. Compare them and type it again.";
  const cells: GridPosition[] = [];
  for (const command of commands) {
    if (!model.dispatch(command.type as never, command as never).isSuccessful)
      return "A part of what was typed is not taken any more. Compare the two and type it again.";
    if (command.type === "UPDATE_CELL") cells.push(placeOf(command));
  }
  const before = replayed({ ...common, changes: [...common.changes, ...theirs] }, new Held()).model;
  const start = replayed(common, new Held()).model;
  const written = theirs.some(hasCommands) ? (theirs as Messages[]).flatMap((one) => one.commands ?? []) : [];
  const alsoTheirs = new Set(
    written.filter(({ type }) => type === "UPDATE_CELL").map((one) => keyOf(placeOf(one))),
  );
  held.deliver(theirs);
  const clashes = cells
    .filter((place) => alsoTheirs.has(keyOf(place)) && contentOf(before, place) !== contentOf(start, place))
    .map((place) => ({
      sheet: model.getters.getSheetName(place.sheetId),
      cell: address(place.row, place.col),
      theirs: contentOf(before, place),
      mine: contentOf(model, place),
    }))
    .filter((clash) => clash.theirs !== clash.mine);
  const document = { ...exportedBy(model), revisionId: crypto.randomUUID() };
  return { document, clashes };
}

/** Holds back what a model sends, as while a server does not answer, and brings others' changes. */
class Held implements Transport {
  private listener: ((message: Change) => void) | undefined;
  async sendMessage(): Promise<void> {
    // Never confirmed: the whole is handed over as a document.
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
}

/** @returns the commands that remain when what was taken back is left out; undefined where something of before was taken back */
function commandsOf(changes: readonly Change[]): GridCommand[] | undefined {
  const out = new Map<string, readonly GridCommand[]>();
  const takenBack = new Set<string>();
  for (const { nextRevisionId, commands = [], undoneRevisionId, redoneRevisionId } of changes as Messages[]) {
    if (undoneRevisionId !== undefined) {
      if (!out.has(undoneRevisionId)) return undefined;
      takenBack.add(undoneRevisionId);
    } else if (redoneRevisionId !== undefined) {
      if (!takenBack.delete(redoneRevisionId)) return undefined;
    } else out.set(nextRevisionId, commands);
  }
  return [...out].flatMap(([id, commands]) => (takenBack.has(id) ? [] : commands));
}

const hasCommands = (change: Change): boolean => (change as Messages).commands !== undefined;
const placeOf = ({ sheetId, row, col }: GridCommand): GridPosition => ({
  sheetId: sheetId!,
  row: row!,
  col: col!,
});
const keyOf = ({ sheetId, row, col }: GridPosition): string => `${sheetId} ${row} ${col}`;

function contentOf({ getters }: GridModel, place: GridPosition): string {
  const cell = getters.getCell(place);
  // A stroke before it makes it text, and is no part of it.
  if (!cell) return "";
  return cell.isFormula
    ? cell.compiledFormula.toFormulaString(getters)
    : (cell.content ?? "").replace(/^'/, "");
}
