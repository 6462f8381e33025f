import { f } from "../../formula/build";
import { site } from "./names/site";

/** What a unit of direct cost sells at by the rates of Site, whatever the sums are. */
export const BY_RATES = f`(1+${site.contingency})*(1+${site.overhead})/(1-${site.margin})`;
