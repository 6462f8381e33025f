/** Time and size of what is asked of this Excel. */
import { bad, refusalOf, good, look, sheetOf, type Step } from "./steps";

const TRIPS = 20;
const USUAL_MS = 150;
/** A web page that holds Excel up so long is started anew (Office add-ins documentation, "Resource limits"). */
const TOO_LONG_MS = 5_000;

/** Reads only, so it needs no sheet. */
export const roundTrip: Step = {
  what: "Round trip",
  run: async (context) => {
    const { application } = context;
    const times: number[] = [];
    for (let trip = 0; trip <= TRIPS; trip++) {
      const began = performance.now();
      application.load("calculationMode");
      await context.sync();
      times.push(performance.now() - began);
    }
    const [, ...counted] = times.map(Math.round);
    const sorted = [...counted].sort((a, b) => a - b);
    const middle = sorted[TRIPS / 2]!;
    const sentence = `reads: ${middle} ms in the middle of ${TRIPS}, ${sorted[0]!} to ${sorted.at(-1)!} ms`;
    const read = `${counted.join(" ")} ms`;
    if (middle >= TOO_LONG_MS)
      return bad(`${sentence}: Excel starts an add-in anew that holds it up so long`, read);
    return middle > USUAL_MS ? look(`${sentence}: slow`, read) : good(sentence, read);
  },
};

const MEGABYTE = 1_000_000;
/** Excel on the web takes 5 MB in one request. */
const SIZES = [1, 4];
/** A cell holds 32,767 letters. */
const LETTERS = 10_000;

export const sizeOfRequest: Step = {
  what: "Size of a request",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const told: string[] = [];
    let isRefused = false;
    for (const size of SIZES) {
      const rows = (size * MEGABYTE) / LETTERS;
      const range = sheet.getRange(`N1:N${rows}`);
      const began = performance.now();
      try {
        range.values = Array.from({ length: rows }, () => ["x".repeat(LETTERS)]);
        await context.sync();
        range.clear("Contents");
        await context.sync();
        told.push(`${size} MB taken in ${Math.round(performance.now() - began)} ms`);
      } catch (error) {
        isRefused = true;
        told.push(`${size} MB refused (${refusalOf(error)})`);
      }
    }
    const read = told.join("; ");
    return isRefused ? look(`${read}: large workbooks are written in parts here`, read) : good(read);
  },
};
