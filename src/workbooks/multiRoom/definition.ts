/** The multi-room estimate: the main template. */
import type { WorkbookDefinition } from "../definition";
import { versionNow } from "../versions";
import { about } from "./about";
import { alignmentSheet } from "./alignment";
import { bondingSheet } from "./bonding";
import { causesSheet } from "./causes";
import { estimateChecksSheet } from "./checks";
import { commissioningSheet } from "./commissioning";
import { crewSheet } from "./crewSheet";
import { cuttingPlanSheet } from "./cuttingPlan";
import { diagnosisSheet } from "./diagnosis";
import { dishesSheet } from "./dishes";
import { distributionSheet } from "./distributionSheet";
import { headUnitsSheet } from "./headUnits";
import { labourSheet } from "./labourSheet";
import { logSheet } from "./log";
import { materialsSheet } from "./materials";
import { orderListSheet } from "./orderList";
import { partsSheet } from "./parts";
import { priceSheet } from "./price";
import { quoteSheet } from "./quote";
import { roomsSheet } from "./rooms";
import { roomTypesSheet } from "./roomTypes";
import { sightlineSheet } from "./sightline";
import { siteSheet } from "./site";
import { takenSheet } from "./taken";
import { termsSheet } from "./terms";

export const multiRoom: WorkbookDefinition = {
  id: "multi-room",
  title: "Multi-room estimate",
  version: versionNow("multi-room"),
  sheets: [
    about,
    siteSheet,
    sightlineSheet,
    partsSheet,
    roomTypesSheet,
    dishesSheet,
    headUnitsSheet,
    distributionSheet,
    roomsSheet,
    bondingSheet,
    crewSheet,
    materialsSheet,
    cuttingPlanSheet,
    orderListSheet,
    labourSheet,
    termsSheet,
    priceSheet,
    quoteSheet,
    estimateChecksSheet,
    alignmentSheet,
    commissioningSheet,
    diagnosisSheet,
    causesSheet,
    logSheet,
    takenSheet,
  ],
};
