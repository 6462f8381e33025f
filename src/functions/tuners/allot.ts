import { allot as allotRows } from "../../engine/tuners/allot";
import { declare } from "../core/declare";
import { capacity, groups, tunersList } from "./parameters";

export const allot = declare({
  name: "ALLOT",
  group: "Tuners",
  summary: "Which head unit serves each row, on as few head units as can be, without splitting a room.",
  parameters: [tunersList, capacity, groups],
  result: {
    shape: "column",
    help: 'For each row the number of its head unit from 1, in the order of the rows; "none" where there is no tuner.',
  },
  equation:
    "Bin packing: rows of one group are one item; first fit in row order where that is the least, else an exact packing.",
  source:
    "Gilmore & Gomory, Operations Research 9 (1961); Martello & Toth, Knapsack Problems (1990), ch. 8; bound of first-fit decreasing: Dósa (2007)",
  accuracy:
    "The least number of head units. Should the exact search be cut off at its limit of 100,000 steps, then at most 11/9 of the least plus 6/9. The same list gives the same answer every time.",
  tasks: ["Which head unit does each room go on?", "How many head units if no room may be split over two?"],
  examples: [
    {
      formula: 'RIG.ALLOT({5;4;3},8,{"101";"102";"103"})',
      result: [[1], [2], [1]],
      source: "by hand: 5 + 3 fill one head unit of eight tuners, 4 goes on a second",
    },
  ],
  seeAlso: ["HEADUNITS", "USERBANDS", "TUNERCOUNT"],
  faultsWhen: [
    "A group, or a row without a group, needs more tuners than one head unit serves: its rows say so, the others are allotted.",
    "groups is not as long as tuners.",
  ],
  compute: allotRows,
});
