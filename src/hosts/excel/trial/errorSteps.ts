/** How errors pass between cells and our functions, both ways. */
import { azimuthFormula, azimuthOf, drawn } from "./drawn";
import {
  bad,
  calculated,
  entered,
  good,
  look,
  sameNumber,
  settled,
  sheetOf,
  shown,
  type Step,
} from "./steps";

/** Each a formula of Excel's own that ends in an error. */
const ERRORS = ["=NA()", "=1/0", '=VALUE("x")', "=no_such_name_here"];

const kindOf = (value: unknown): string =>
  value === null || value === undefined ? "null" : value === "" ? '""' : JSON.stringify(value);

export const errorInRange: Step = {
  what: "Error in a range",
  needs: "spill",
  run: async (context, ground) => {
    const sheet = sheetOf(context, ground);
    const raw: string[] = [];
    let isWholeRefused = false;
    for (const [index, formula] of ERRORS.entries()) {
      const top = 40 + index * 4;
      const latitudes = [drawn(), drawn()];
      const wanted = latitudes.map(azimuthOf);
      sheet.getRange(`A${top}:A${top + 2}`).formulas = [[latitudes[0]!], [formula], [latitudes[1]!]];
      const before = ground.heard.length;
      sheet.getRange(`C${top}`).formulas = [[azimuthFormula(`A${top}:A${top + 2}`)]];
      calculated(context, ground);
      const { values, errors } = await settled(
        context,
        sheet.getRange(`C${top}:C${top + 2}`),
        ([first], [error]) => sameNumber(first![0], wanted[0]) || error![0]!,
      );
      const cells = values.map(([value]) => value);
      const call = ground.heard
        .slice(before)
        .find(({ name, args }) => name === "AZIMUTH" && [args[0]].flat(2).includes(latitudes[0]));
      const arrived = call && [call.args[0]].flat(2)[1];
      raw.push(
        `${formula} arrived ${call ? `as ${kindOf(arrived)}` : "unheard"}, gave ${cells.map(shown).join(", ")}`,
      );
      const isLikeBlank = call && (arrived === null || arrived === undefined || arrived === "");
      if (isLikeBlank || arrived === 0 || typeof cells[1] === "number" || (!errors[1]![0] && !errors[0]![0]))
        return bad(
          `an error in a cell arrives as a blank (${call ? kindOf(arrived) : shown(cells[1])}): its row looks empty, or gets a number`,
          raw.join("; "),
        );
      if (errors[0]![0]) isWholeRefused = true;
      else if (!sameNumber(cells[0], wanted[0]) || !sameNumber(cells[2], wanted[1]))
        return bad("its neighbours in the column are not right", raw.join("; "));
    }
    return isWholeRefused
      ? look(
          "one bad cell takes the whole column with it, neighbours too: #VALUE! for all of them",
          raw.join("; "),
        )
      : good("each stays in its own row", raw.join("; "));
  },
};

export const errorAlone: Step = {
  what: "Error alone",
  needs: "functions",
  run: async (context, ground) => {
    const { values, errors } = await entered(context, ground, {
      at: "C60",
      formula: azimuthFormula("A41"),
    });
    const read = shown(values[0]![0]);
    if (errors[0]![0]) return good("an error comes out", read);
    return typeof values[0]![0] === "number"
      ? bad("a number comes out", read)
      : look("no error comes out", read);
  },
};

export const ourErrors: Step = {
  what: "Errors that we return",
  needs: "functions",
  run: async (context, ground) => {
    // No latitude.
    const { values, errors } = await entered(context, ground, { at: "C61", formula: azimuthFormula(95) });
    const range = sheetOf(context, ground).getRange("C61");
    range.load("text");
    await context.sync();
    const read = `value ${shown(values[0]![0])}, shown as ${shown(range.text[0]![0])}`;
    return errors[0]![0]
      ? good("stand in the cell as errors; our sentence shows only where the mouse rests on it", read)
      : bad("no error stands in the cell", read);
  },
};
