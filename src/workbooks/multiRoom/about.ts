import { f } from "../../formula/build";
import { aboutSheet } from "../aboutSheet";
import { worked } from "../parts";
import { versionNow } from "../versions";
import { filledIn } from "./names/about";
import { site } from "./names/site";

export const about = aboutSheet({
  template: `multi-room estimate, version ${versionNow("multi-room")}`,
  purpose: [
    "Prices a multi-room satellite reception job in which one cable from each head unit (single-cable LNB or switch) serves many tuners,",
    "and predicts carrier to noise, level, supply voltage, commands and user bands for every outlet before anyone climbs.",
  ],
  fields: [
    worked(filledIn.by, f`IF(${site.prepared_by}="","",${site.prepared_by})`),
    worked(filledIn.date, f`IF(${site.date}="","",${site.date})`),
  ],
  howToFill: [
    "Fill the boxed cells, sheet by sheet from Site to Rooms; choose a cell to see what it wants.",
    "The tree goes from the sky down: Dishes and feeders, Head units, Distribution with a row for each device, Rooms with a row for each outlet.",
    "Crew has the day's length, what being on site costs, and floors and rooms where work is harder; its sheet may stay blank but for the rate.",
    "Most columns may stay blank: the hint of a cell says what a blank means. What is rare stands to the right of the results.",
    "Insert rows anywhere between the two thin grey rows of a block. The upper thin row carries the column formulas: leave it.",
    "Then read Checks: each line says what it found and where to look.",
    "A working copy calls the functions of Rigsheet: it computes in Excel with the add-in, or on Rigsheet's own desk.",
  ],
  conventions: [
    "Losses are positive decibels. Levels are dBµV across 75 Ω. North and east are positive. Bearings are clockwise from north.",
    "Workings are not rounded. Money is rounded once, at the end of Price, by the rule that Site names; Quote adds what it prints.",
    "Loss per 100 m at 20 °C = a·√f + b·f + c, by the three loss coefficients on Parts; it grows by 0.2 % for each °C. Beyond 1000 MHz the built-in types are extrapolated, ±5 %.",
  ],
  leftOut: [
    "Connector losses and mismatch ripple; interference between user bands; ageing and water in the cable.",
    "Head units level their output: it is taken as you enter it, whatever the dish gives; rain and a small dish show in carrier to noise.",
    "Uplink noise, interference from neighbouring slots, and intermodulation but for an amplifier's stated limit.",
    "What contacts and receivers' own outputs add: which of several receivers feeds the head unit is decided by milliohms.",
    "Wind load, mounting and structure. Refraction, which matters only below about 5 deg of elevation.",
  ],
});
