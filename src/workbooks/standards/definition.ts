/** The firm's standards: what all jobs of a firm draw on. */
import type { WorkbookDefinition } from "../definition";
import { versionNow } from "../versions";
import { about } from "./about";
import { standardsChecksSheet } from "./checks";
import { offersSheet } from "./offers";
import {
  crewSheet,
  logSheet,
  partsSheet,
  rangesSheet,
  standardsSheet,
  suppliersSheet,
  termsSheet,
} from "./sheets";

export const standardsWorkbook: WorkbookDefinition = {
  id: "standards",
  title: "Firm's standards",
  version: versionNow("standards"),
  sheets: [
    about,
    standardsSheet,
    partsSheet,
    crewSheet,
    suppliersSheet,
    offersSheet,
    termsSheet,
    rangesSheet,
    standardsChecksSheet,
    logSheet,
  ],
};
