/** The multi-room estimate: the main template. */
import type { WorkbookDefinition } from "../definition";
import { versionNow } from "../versions";
import { about } from "./about";
import { alignment } from "./alignment";
import { bonding } from "./bonding";
import { branches } from "./branches";
import { causes } from "./causes";
import { checks } from "./checks";
import { commissioning } from "./commissioning";
import { diagnosis } from "./diagnosis";
import { headUnits } from "./headUnits";
import { labourSheet } from "./labourSheet";
import { log } from "./log";
import { materials } from "./materials";
import { parts } from "./parts";
import { price } from "./price";
import { quote } from "./quote";
import { rooms } from "./rooms";
import { sightline } from "./sightline";
import { site } from "./site";
import { terms } from "./terms";

export const multiRoom: WorkbookDefinition = {
  id: "multi-room",
  title: "Multi-room estimate",
  version: versionNow("multi-room"),
  sheets: [
    about,
    site,
    sightline,
    parts,
    branches,
    rooms,
    headUnits,
    bonding,
    materials,
    labourSheet,
    terms,
    price,
    quote,
    checks,
    alignment,
    commissioning,
    diagnosis,
    causes,
    log,
  ],
};
