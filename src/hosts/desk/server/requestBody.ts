import type { IncomingMessage } from "node:http";

/** A request that is answered with a status and one sentence. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    sentence: string,
  ) {
    super(sentence);
  }
}

/** A workbook of 10,000 outlets is about a tenth of this. */
const MOST_BYTES = 64 * 1024 * 1024;

/** @param sentence why so many bytes are not taken; the first is how many it are, as far as they were counted */
export async function bodyOf(
  request: IncomingMessage,
  most = MOST_BYTES,
  sentence: (bytes: number, most: number) => string = workbookTooLarge,
): Promise<Buffer> {
  const tooLarge = (bytes: number) => new Refused(413, sentence(bytes, most));
  const declared = Number(request.headers["content-length"] ?? 0);
  if (declared > most) throw tooLarge(declared);
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > most) throw tooLarge(size);
    parts.push(part);
  }
  return Buffer.concat(parts);
}

const workbookTooLarge = (_bytes: number, most: number): string =>
  `The workbook is larger than ${most / 1024 / 1024} MB, more than the desk takes. Split the job.`;

export async function jsonOf(request: IncomingMessage): Promise<unknown> {
  const text = (await bodyOf(request)).toString("utf8");
  try {
    return JSON.parse(text);
  } catch {
    throw new Refused(400, "The request is not JSON.");
  }
}
