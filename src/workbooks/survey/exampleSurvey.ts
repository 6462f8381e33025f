/** The heads of a survey as we write it, and the columns of Rooms that they fill. */
export const SURVEY_HEADS = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "fed from",
  "cable",
  "run (m)",
  "wall plate",
  "note",
  "route",
  "user bands kept",
];
export const SURVEY_KEYS = [
  "floor",
  "room",
  "outlet",
  "receiver",
  "quantity",
  "from",
  "cable",
  "run",
  "plate",
  "note",
  "route",
  "kept",
];
