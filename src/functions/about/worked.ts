/** The functions whose working SHOWWORK can show: every one that declares it (held by a test). */
import { margin } from "../estimate/margin";
import { markup } from "../estimate/markup";
import { sellprice } from "../estimate/sellprice";
import { loadvolts } from "../power/loadvolts";
import { loopohms } from "../power/loopohms";
import { voltdrop } from "../power/voltdrop";
import { wireohms } from "../power/wireohms";
import { azimuth } from "../sightline/azimuth";
import { elevation } from "../sightline/elevation";
import { lookangles } from "../sightline/lookangles";
import { refraction } from "../sightline/refraction";
import { slantrange } from "../sightline/slantrange";
import { beamwidth } from "../signal/beamwidth";
import { cableloss } from "../signal/cableloss";
import { cableslope } from "../signal/cableslope";
import { cascadeloss } from "../signal/cascadeloss";
import { dishgain } from "../signal/dishgain";
import { freespaceloss } from "../signal/freespaceloss";
import { splitloss } from "../signal/splitloss";
import { tapthrough } from "../signal/tapthrough";
import { headunits } from "../tuners/headunits";
import { tunercount } from "../tuners/tunercount";
import { tuningword } from "../tuners/tuningword";

export const workedFunctions = [
  azimuth,
  elevation,
  lookangles,
  slantrange,
  refraction,
  cableloss,
  cableslope,
  splitloss,
  cascadeloss,
  tapthrough,
  beamwidth,
  dishgain,
  freespaceloss,
  loadvolts,
  voltdrop,
  loopohms,
  wireohms,
  tunercount,
  headunits,
  tuningword,
  sellprice,
  markup,
  margin,
] as const;
