/** What empty standards start from: figures of standards and common practice; no firm, no prices. */
import type { JobInputs } from "../definition";
import { startingPoint } from "../multiRoom/startingPoint";
import { SHARED_FIELDS } from "./shared";

const { fields = {}, blocks = {} } = startingPoint;

export const standardsStart: JobInputs = {
  fields: {
    ...Object.fromEntries(
      SHARED_FIELDS.flatMap(({ name }) => (fields[name] === undefined ? [] : [[name, fields[name]]])),
    ),
    standards_edition: 1,
    standards_days: 30,
  },
  blocks: { exclusions: blocks.exclusions! },
};
