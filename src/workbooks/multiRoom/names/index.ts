/** Every column and field of the estimate, for whoever reads a filled one by its names. */
import { aimed, align, alignment } from "./alignment";
import { bonded, bonds } from "./bonding";
import { branches } from "./branches";
import { causes } from "./causes";
import { commission } from "./commissioning";
import { crew, places, sites } from "./crew";
import { cablesCut, cutplan, cutting } from "./cuttingPlan";
import { dishes, feeders } from "./dishes";
import { diagnosis, readings } from "./diagnosis";
import { heads, headsNeeded } from "./headUnits";
import { kinds, labour, routes, routeWork, sitesPriced, typeWork, work, workTogether } from "./labour";
import { log } from "./log";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
  count,
} from "./materials";
import { orders } from "./orderList";
import {
  cables,
  feeds,
  fittings,
  passives,
  plans,
  plates,
  receivers,
  resistors,
  supplies,
  units,
} from "./parts";
import { kindsPriced, price } from "./price";
import { payment, proposal, warranty } from "./proposal";
import {
  quote,
  assumptionsQuoted,
  exclusionsQuoted,
  letterheadQuoted,
  optionsQuoted,
  taxesQuoted,
} from "./quote";
import { rooms } from "./rooms";
import { types } from "./roomTypes";
import { aims, compass, pair, sight, sun } from "./sightline";
import { commissioningLimits, corner, rests, settings, site, slots } from "./site";
import { taken } from "./taken";
import { assumptions, discount, exclusions, letterhead, onpurpose, options, provisional } from "./terms";

export const estimate = {
  aimed,
  aims,
  align,
  alignment,
  assumptions,
  bonded,
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
  cablesCut,
  causes,
  commission,
  commissioningLimits,
  compass,
  corner,
  count,
  crew,
  cutplan,
  cutting,
  diagnosis,
  discount,
  dishes,
  exclusions,
  feeders,
  feeds,
  feedsBought,
  fittings,
  heads,
  headsNeeded,
  kinds,
  labour,
  log,
  onpurpose,
  options,
  orders,
  pair,
  passives,
  payment,
  places,
  plans,
  plates,
  price,
  proposal,
  provisional,
  quote,
  assumptionsQuoted,
  exclusionsQuoted,
  letterhead,
  letterheadQuoted,
  optionsQuoted,
  taxesQuoted,
  readings,
  receivers,
  resistors,
  resistorsBought,
  rests,
  rooms,
  routes,
  routeWork,
  settings,
  sight,
  site,
  sites,
  sitesPriced,
  slots,
  sun,
  supplies,
  types,
  typeWork,
  taken,
  units,
  warranty,
  work,
  workTogether,
};
