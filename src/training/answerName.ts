/** Names of the cells of a sheet. */
export const answerName = (key: string): string => `answer_${key}`;
export const givenName = (key: string, index: number): string => `given_${key}_${index + 1}`;

export const SHEET_CODE = "training_code";
export const SHEET_TRAINEE = "training_trainee";

/** Templates that the workbooks say they were made from. */
export const SHEET_TEMPLATE = "training-sheet";
export const KEY_TEMPLATE = "training-key";
export const MARKS_TEMPLATE = "training-marks";
