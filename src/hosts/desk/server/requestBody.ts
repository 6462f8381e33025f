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

export async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const tooLarge = () =>
    new Refused(
      413,
      `The workbook is larger than ${MOST_BYTES / 1024 / 1024} MB, more than the desk takes. Split the job.`,
    );
  if (Number(request.headers["content-length"] ?? 0) > MOST_BYTES) throw tooLarge();
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > MOST_BYTES) throw tooLarge();
    parts.push(part);
  }
  return Buffer.concat(parts);
}

export async function jsonOf(request: IncomingMessage): Promise<unknown> {
  const text = (await bodyOf(request)).toString("utf8");
  try {
    return JSON.parse(text);
  } catch {
    throw new Refused(400, "The request is not JSON.");
  }
}
