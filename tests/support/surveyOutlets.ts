import type { SurveyRow } from "../../src/workbooks/survey/survey";

/** Outlets as a survey of the guest house might bring them: invented, fed from H2, each run a metre longer. */
export const surveyOutlets = (count: number, noteOf: (index: number) => string): SurveyRow[] =>
  Array.from({ length: count }, (_, index) => ({
    floor: "second",
    room: `${index + 1}`,
    outlet: `S-${index + 1}`,
    receiver: "receiver",
    from: "H2",
    cable: "indoor drop",
    run: 10.5 + index,
    plate: "single outlet",
    note: noteOf(index),
  }));
