/** What a job and the firm's standards both have: under the same names, so that one draws on the other by them. */
import type { Block, Field, WorkbookDefinition } from "../definition";
import { log } from "../multiRoom/names/log";
import { multiRoom } from "../multiRoom/definition";
import { OF } from "../names";
import { standardsWorkbook } from "./definition";

const filledFields = ({ sheets }: WorkbookDefinition): Field[] =>
  sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "fields" ? part.fields.filter(({ input }) => input) : []));

const blocksOf = ({ sheets }: WorkbookDefinition): Block[] =>
  sheets.flatMap(({ parts }) => parts).filter((part): part is Block => part.kind === "block");

const ofAJob = {
  fields: new Set(filledFields(multiRoom).map(({ name }) => name)),
  blocks: new Set(blocksOf(multiRoom).map(({ name }) => name)),
};

/** In the order of the standards. */
export const SHARED_FIELDS: readonly Field[] = filledFields(standardsWorkbook).filter(({ name }) =>
  ofAJob.fields.has(name),
);

/** Each keeps a log of its own. */
export const SHARED_BLOCKS: readonly Block[] = blocksOf(standardsWorkbook).filter(
  ({ name }) => ofAJob.blocks.has(name) && name !== log[OF].name,
);
