/** Every column and field of the estimate, for whoever reads a filled one by its names. */
import { align, alignment } from "./alignment";
import { bonds } from "./bonding";
import { branches } from "./branches";
import { causes } from "./causes";
import { commission } from "./commissioning";
import { diagnosis, readings } from "./diagnosis";
import { heads, headsNeeded } from "./headUnits";
import { crew, kinds, labour, work, workTogether } from "./labour";
import { log } from "./log";
import {
  cablesBought,
  fittingsBought,
  passivesBought,
  platesBought,
  suppliesBought,
  unitsBought,
  count,
} from "./materials";
import { cables, fittings, passives, plates, receivers, supplies, units } from "./parts";
import { kindsPriced, price } from "./price";
import { quote, assumptionsQuoted, exclusionsQuoted, optionsQuoted } from "./quote";
import { rooms } from "./rooms";
import { compass, pair, sight, sun } from "./sightline";
import { commissioningLimits, corner, site, slots } from "./site";
import { assumptions, discount, exclusions, onpurpose, options, provisional } from "./terms";

export const estimate = {
  align,
  alignment,
  assumptions,
  bonds,
  branches,
  cablesBought,
  fittingsBought,
  passivesBought,
  platesBought,
  suppliesBought,
  unitsBought,
  kindsPriced,
  cables,
  causes,
  commission,
  commissioningLimits,
  compass,
  corner,
  count,
  crew,
  diagnosis,
  discount,
  exclusions,
  fittings,
  heads,
  headsNeeded,
  kinds,
  labour,
  log,
  onpurpose,
  options,
  pair,
  passives,
  plates,
  price,
  provisional,
  quote,
  assumptionsQuoted,
  exclusionsQuoted,
  optionsQuoted,
  readings,
  receivers,
  rooms,
  sight,
  site,
  slots,
  sun,
  supplies,
  units,
  work,
  workTogether,
};
