/**
 * The names of the inputs that each closed version of each template had. They are lasting ids: an older workbook is read
 * by them, so each is an input for good, or stands in a list of those given up, with what says the same now.
 */
import { templates } from "../workbooks/templates";
import { inputsOf } from "../workbooks/typed/inputsOf";

export const INPUT_RECORD = "templates/inputs.json";

/** By template and version. */
export type InputRecord = Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;

/** @param release closes today's versions: their inputs join the record */
export const closedInputs = (kept: InputRecord, release: boolean): InputRecord =>
  release
    ? {
        ...kept,
        ...Object.fromEntries(
          templates.map(({ id, definition }) => [
            id,
            { ...kept[id], [definition.version]: [...inputsOf(definition).keys()].sort() },
          ]),
        ),
      }
    : kept;
