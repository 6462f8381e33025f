/** What a floor is copied from, and the job with the copy: the rows of Rooms and Distribution as they were typed. */
import type { Book } from "../book";
import type { JobInputs } from "../definition";
import { jobInputsOf } from "../jobInputsOf";
import { multiRoom } from "../multiRoom/definition";
import { branches } from "../multiRoom/names/branches";
import { heads } from "../multiRoom/names/headUnits";
import { rooms } from "../multiRoom/names/rooms";
import { OF } from "../names";
import type { FloorCopy, Floors } from "./copyFloor";

/** @returns undefined for a workbook without a Rooms sheet of ours */
export const inputsWithFloors = (book: Book): JobInputs | undefined =>
  book.template === multiRoom.id && book.names.some(({ name }) => name === rooms.outlet.name)
    ? jobInputsOf(multiRoom, book)
    : undefined;

export const floorsIn = ({ blocks = {} }: JobInputs): Floors => ({
  rooms: blocks[rooms[OF].name] ?? [],
  devices: blocks[branches[OF].name] ?? [],
  heads: (blocks[heads[OF].name] ?? []).map((row) => String(row[heads.id.key] ?? "")),
});

/** The rows of the copy stand below the last filled ones. */
export const withCopy = (inputs: JobInputs, copy: FloorCopy): JobInputs => ({
  ...inputs,
  blocks: {
    ...inputs.blocks,
    [branches[OF].name]: [...(inputs.blocks?.[branches[OF].name] ?? []), ...copy.devices],
    [rooms[OF].name]: [...(inputs.blocks?.[rooms[OF].name] ?? []), ...copy.rooms],
  },
});
