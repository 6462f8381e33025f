// Generated from the folders beside this file by `npm run generate`; do not edit.
import type { SheetFunction } from "./core/declare";
import { azimuth } from "./sightline/azimuth";
import { compass } from "./sightline/compass";
import { declination } from "./sightline/declination";
import { elevation } from "./sightline/elevation";
import { equaldrops } from "./sightline/equaldrops";
import { facetilt } from "./sightline/facetilt";
import { lookangles } from "./sightline/lookangles";
import { offsetangle } from "./sightline/offsetangle";
import { pairaim } from "./sightline/pairaim";
import { pairtilt } from "./sightline/pairtilt";
import { peakoffset } from "./sightline/peakoffset";
import { polskew } from "./sightline/polskew";
import { rayheight } from "./sightline/rayheight";
import { refraction } from "./sightline/refraction";
import { separation } from "./sightline/separation";
import { setback } from "./sightline/setback";
import { slantrange } from "./sightline/slantrange";
import { suncheck } from "./sightline/suncheck";
import { sunposition } from "./sightline/sunposition";
import { beamwidth } from "./signal/beamwidth";
import { cableloss } from "./signal/cableloss";
import { cableslope } from "./signal/cableslope";
import { carriernoise } from "./signal/carriernoise";
import { cascadeloss } from "./signal/cascadeloss";
import { diagnose } from "./signal/diagnose";
import { dishgain } from "./signal/dishgain";
import { freespaceloss } from "./signal/freespaceloss";
import { level } from "./signal/level";
import { neededcn } from "./signal/neededcn";
import { noisetemp } from "./signal/noisetemp";
import { pointloss } from "./signal/pointloss";
import { rainfade } from "./signal/rainfade";
import { rainspecific } from "./signal/rainspecific";
import { splitloss } from "./signal/splitloss";
import { sumlevel } from "./signal/sumlevel";
import { tapthrough } from "./signal/tapthrough";
import { treeloss } from "./signal/treeloss";
import { treeroot } from "./signal/treeroot";
import { window } from "./signal/window";
import { loadvolts } from "./power/loadvolts";
import { longestrun } from "./power/longestrun";
import { loopohms } from "./power/loopohms";
import { voltdrop } from "./power/voltdrop";
import { wireohms } from "./power/wireohms";
import { allot } from "./tuners/allot";
import { headunits } from "./tuners/headunits";
import { tunercount } from "./tuners/tunercount";
import { tuningword } from "./tuners/tuningword";
import { userbands } from "./tuners/userbands";
import { devicechecks } from "./distribution/devicechecks";
import { devicelevels } from "./distribution/devicelevels";
import { dishchecks } from "./distribution/dishchecks";
import { feederchecks } from "./distribution/feederchecks";
import { headchecks } from "./distribution/headchecks";
import { headvolts } from "./distribution/headvolts";
import { howmany } from "./distribution/howmany";
import { needed } from "./distribution/needed";
import { outletchecks } from "./distribution/outletchecks";
import { outletlevels } from "./distribution/outletlevels";
import { outletnoise } from "./distribution/outletnoise";
import { outletplaces } from "./distribution/outletplaces";
import { outletvolts } from "./distribution/outletvolts";
import { bondcheck } from "./bonding/bondcheck";
import { maststress } from "./bonding/maststress";
import { windload } from "./bonding/windload";
import { addmoney } from "./estimate/addmoney";
import { cutplan } from "./estimate/cutplan";
import { margin } from "./estimate/margin";
import { markup } from "./estimate/markup";
import { orderlist } from "./estimate/orderlist";
import { reels } from "./estimate/reels";
import { roundmoney } from "./estimate/roundmoney";
import { sellprice } from "./estimate/sellprice";
import { threepoint } from "./estimate/threepoint";
import { totalswith } from "./estimate/totalswith";
import { showwork } from "./about/showwork";
import { version } from "./about/version";

/** Every sheet function, by group and then by name. */
export const allFunctions: readonly SheetFunction[] = [
  azimuth,
  compass,
  declination,
  elevation,
  equaldrops,
  facetilt,
  lookangles,
  offsetangle,
  pairaim,
  pairtilt,
  peakoffset,
  polskew,
  rayheight,
  refraction,
  separation,
  setback,
  slantrange,
  suncheck,
  sunposition,
  beamwidth,
  cableloss,
  cableslope,
  carriernoise,
  cascadeloss,
  diagnose,
  dishgain,
  freespaceloss,
  level,
  neededcn,
  noisetemp,
  pointloss,
  rainfade,
  rainspecific,
  splitloss,
  sumlevel,
  tapthrough,
  treeloss,
  treeroot,
  window,
  loadvolts,
  longestrun,
  loopohms,
  voltdrop,
  wireohms,
  allot,
  headunits,
  tunercount,
  tuningword,
  userbands,
  devicechecks,
  devicelevels,
  dishchecks,
  feederchecks,
  headchecks,
  headvolts,
  howmany,
  needed,
  outletchecks,
  outletlevels,
  outletnoise,
  outletplaces,
  outletvolts,
  bondcheck,
  maststress,
  windload,
  addmoney,
  cutplan,
  margin,
  markup,
  orderlist,
  reels,
  roundmoney,
  sellprice,
  threepoint,
  totalswith,
  showwork,
  version,
];
