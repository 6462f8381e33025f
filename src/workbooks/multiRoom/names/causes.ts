import { CAUSES } from "../../../engine/diagnosis/causes";
import { number, oneOf } from "../../asks";
import { block, entry } from "../../names";

export const causes = block(
  "causes",
  {
    cause: entry(
      "Cause",
      { width: 34 },
      oneOf(
        CAUSES.map(({ cause }) => cause),
        "A cause that the diagnosis knows; a line that is cleared keeps the built-in figures",
      ),
    ),
    chance: entry(
      "Chance",
      { unit: "for each place", width: 15, format: "three" },
      number(
        0,
        0.5,
        "Chance that it is there, for each place where it can be: head unit, branch or outlet; blank takes the built-in figure",
      ),
    ),
    low: entry(
      "Loss, lowest frequency",
      { unit: "dB", width: 15, format: "two" },
      number(
        -60,
        60,
        "What it takes at the lowest frequency; a gain is negative; blank takes the built-in figure",
      ),
    ),
    high: entry(
      "Loss, highest frequency",
      { unit: "dB", width: 15, format: "two" },
      number(
        -60,
        60,
        "What it takes at the highest frequency; a gain is negative; blank takes the built-in figure",
      ),
    ),
    spread: entry(
      "Spread",
      { unit: "share of the loss", width: 15, format: "two" },
      number(0, 10, "Standard deviation of the loss as a share of it; blank takes the built-in figure"),
    ),
    tilt: entry(
      "Further tilt",
      { unit: "dB", width: 15, format: "two" },
      number(
        0,
        60,
        "Standard deviation of a further difference between lowest and highest frequency; blank takes the built-in figure",
      ),
    ),
  },
  { table: ["cause", "tilt"] },
);
