/**
 * The metadata from which Excel knows our functions, made from the
 * declarations. Every argument is declared as a matrix of any kind, so that one
 * call brings a whole column across the process boundary.
 */
import type { SheetFunction } from "../../functions/core/declare";
import { pageOf } from "../../help/facts";
import { argumentHelp } from "../grid/registerFunctions";

interface ExcelParameter {
  readonly name: string;
  readonly description: string;
  readonly type: "any";
  readonly dimensionality: "matrix";
  readonly optional?: true;
  readonly repeating?: true;
}

interface ExcelFunction {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl?: string;
  readonly parameters: readonly ExcelParameter[];
  readonly result: { readonly type: "any"; readonly dimensionality: "matrix" };
}

export interface FunctionMetadata {
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly ExcelFunction[];
}

/** @param help address of the folder with the help pages; without it functions have no help link */
export const functionMetadata = (functions: readonly SheetFunction[], help?: string): FunctionMetadata => ({
  // Without it Excel answers for us whenever an argument holds an error, and spoils the whole column.
  allowErrorForDataTypeAny: true,
  functions: functions.map(({ name, summary, parameters }) => ({
    id: name,
    name,
    description: summary,
    ...(help !== undefined && { helpUrl: `${help}/${pageOf(name)}` }),
    parameters: parameters.map((parameter) => ({
      name: parameter.name,
      description: argumentHelp(parameter),
      type: "any",
      dimensionality: "matrix",
      ...(parameter.shape === "repeated"
        ? { repeating: true }
        : parameter.optional
          ? { optional: true }
          : {}),
    })),
    result: { type: "any", dimensionality: "matrix" },
  })),
});
