/** What the functions about the supply have to say in common. */
export const SUPPLY_EQUATION =
  "The supply's circuit by Kirchhoff's laws, for all receivers off, each one on alone at rest, all on, each commanding, and each off while all others command. Diodes are ideal with a constant drop; a load of constant power takes I = P/V at the higher root.";
export const SUPPLY_SOURCE =
  "Kirchhoff's laws; 13 and 18 V, told apart at 15 to 15.5 V: EN 50494, seen by others. 0.7 V of a diode and 0.4 A of a receiver: from memory; 19 V that a receiver bears: common practice, no source";
export const SUPPLY_ACCURACY =
  "1 mV of the circuit as given; that of loop resistances, drops and loads. Below 1 V a head unit draws nothing.";
export const POWER_CAUTION =
  "Supplies stand on the mains: leave sockets and connections to those who are licensed for it, and switch off before working on a line.";
