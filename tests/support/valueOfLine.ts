/** Works out a line of arithmetic as a reader with a calculator would; shares nothing with what wrote it. */

const RAD = Math.PI / 180;
const FUNCTIONS: Readonly<Record<string, (...args: number[]) => number>> = {
  "√": Math.sqrt,
  sin: (degrees) => Math.sin(degrees! * RAD),
  cos: (degrees) => Math.cos(degrees! * RAD),
  tan: (degrees) => Math.tan(degrees! * RAD),
  arccos: (cosine) => Math.acos(cosine!) / RAD,
  atan2: (y, x) => Math.atan2(y!, x!) / RAD,
  log10: Math.log10,
  ceil: Math.ceil,
  round: Math.round,
};
const TOKEN = /\d+(?:\.\d+)?(?:e[+-]?\d+)?|√|[a-z][a-z0-9]*|π|[-−+·/^();]/g;

/**
 * @returns the result, and the greatest magnitude among the numbers that were
 *   met on the way, to judge how far rounding in the line may carry
 */
export function valueOfLine(line: string): { result: number; greatest: number } {
  const tokens = line.match(TOKEN) ?? [];
  if (tokens.join("") !== line.replace(/\s/g, "")) throw new Error(`not arithmetic: ${line}`);
  let at = 0;
  let greatest = 0;
  const note = (value: number): number => {
    greatest = Math.max(greatest, Math.abs(value));
    return value;
  };
  const take = (token: string): void => {
    if (tokens[at] !== token) throw new Error(`expected ${token} at ${at} of ${line}`);
    at += 1;
  };
  const sum = (): number => {
    let value = product();
    while (tokens[at] === "+" || tokens[at] === "−") {
      value = tokens[at++] === "+" ? value + product() : value - product();
      note(value);
    }
    return value;
  };
  const product = (): number => {
    let value = power();
    while (tokens[at] === "·" || tokens[at] === "/") {
      value = tokens[at++] === "·" ? value * power() : value / power();
      note(value);
    }
    return value;
  };
  const power = (): number => {
    const base = atom();
    if (tokens[at] !== "^") return base;
    at += 1;
    return note(base ** atom());
  };
  const atom = (): number => {
    const token = tokens[at++];
    if (token === "-") return -atom();
    if (token === "π") return Math.PI;
    if (token === "(") {
      const inside = sum();
      take(")");
      return inside;
    }
    const known = FUNCTIONS[token ?? ""];
    if (!known) return note(Number(token));
    take("(");
    const args = [sum()];
    while (tokens[at] === ";") {
      at += 1;
      args.push(sum());
    }
    take(")");
    return note(known(...args));
  };
  const result = sum();
  if (at !== tokens.length) throw new Error(`left over at ${at} of ${line}`);
  return { result, greatest };
}
