/** Hands every sheet function to Excel under its id. */
import type { Argument } from "../../functions/core/cells";
import type { SheetFunction } from "../../functions/core/declare";
import { fromExcel, toExcel } from "./excelValues";
import { tellOfCall } from "./heardCalls";

export function associateAll(functions: readonly SheetFunction[]): void {
  for (const one of functions) {
    const repeats = one.parameters.at(-1)?.shape === "repeated";
    const count = one.parameters.length;
    CustomFunctions.associate(one.name, (...given: unknown[]) => {
      // Excel hands over its own record of the call after the declared arguments.
      const args = given.slice(0, count);
      tellOfCall(one.name, args);
      return toExcel(one.call(repeats ? withRest(args, count) : args.map(fromExcel)));
    });
  }
}

/** A repeating argument arrives as one list of all that were given. */
function withRest(args: readonly unknown[], count: number): Argument[] {
  const rest = args[count - 1];
  return [...args.slice(0, count - 1), ...(Array.isArray(rest) ? (rest as unknown[]) : [])].map(fromExcel);
}
