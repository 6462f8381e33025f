/** The sheets that a person fills, as the checks of entries go through them. */
import type { SheetDefinition } from "../definition";
import { alignmentSheet } from "./alignment";
import { bondingSheet } from "./bonding";
import { causesSheet } from "./causes";
import { crewSheet } from "./crewSheet";
import { dishesSheet } from "./dishes";
import { distributionSheet } from "./distributionSheet";
import { headUnitsSheet } from "./headUnits";
import { logSheet } from "./log";
import { partsSheet } from "./parts";
import { roomsSheet } from "./rooms";
import { roomTypesSheet } from "./roomTypes";
import { siteSheet } from "./site";
import { termsSheet } from "./terms";

/** With a check for each of their parts. */
export const LONG_SHEETS: readonly SheetDefinition[] = [siteSheet, partsSheet];

/** With one check each. */
export const OTHER_SHEETS: readonly SheetDefinition[] = [
  roomTypesSheet,
  dishesSheet,
  headUnitsSheet,
  distributionSheet,
  roomsSheet,
  bondingSheet,
  crewSheet,
  termsSheet,
  alignmentSheet,
  causesSheet,
  logSheet,
];
