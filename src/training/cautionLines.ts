/** The cautions that stand on every sheet which speaks of such work. */
export const ROOF_CAUTION =
  "Roofs and ladders: only with training, the right gear and a second person; keep well clear of overhead lines. A sheet is no site check.";
export const MAINS_CAUTION =
  "Mains and power supplies: licensed people only. Switch off and prove dead before a cable that carries volts is opened.";
export const BONDING_CAUTION =
  "Bonding and lightning: the local code and licensed practice decide. These exercises predict and flag; they certify nothing.";
