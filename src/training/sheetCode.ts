/**
 * The code on a trainee's sheet, by which marking knows whose it is. It ties
 * the sheet to the key without telling the seed, from which anybody with
 * Rigsheet could draw the answers.
 */
import { TRAINING_VERSION, whoseText, type Trainee } from "./drawNumbers";
import type { AnySet } from "./exercise";
import { fnv1a } from "../workbooks/fnv1a";

export const sheetCode = (set: AnySet, seed: number, trainee: Trainee): string =>
  fnv1a(["sheet", set.id, TRAINING_VERSION, whoseText(seed, trainee)].join("\n"))
    .toString(16)
    .padStart(16, "0")
    .slice(0, 10)
    .toUpperCase();
