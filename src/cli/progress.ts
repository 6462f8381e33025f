/** Fewer are done before anybody wonders. */
const FEWEST = 20;

/** @returns tells how many of so many are done, on one line of a terminal; nothing elsewhere */
export function progressOf(total: number): (done: number) => void {
  if (!process.stderr.isTTY || total < FEWEST) return () => undefined;
  return (done) => void process.stderr.write(`\r${done} of ${total}${done === total ? "\n" : ""}`);
}
