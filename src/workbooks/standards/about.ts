import { aboutSheet } from "../aboutSheet";
import { versionNow } from "../versions";

export const about = aboutSheet({
  template: `firm's standards, version ${versionNow("standards")}`,
  purpose: [
    "What a firm uses in every job: its parts and prices, suppliers and their offers, labour units, routes, crew rate,",
    "margins, taxes, limits and standard terms. New jobs draw on it, and older ones are brought up to date with it.",
  ],
  howToFill: [
    "Fill the boxed cells, from Standards to Offers; choose a cell to see what it wants.",
    "Names are what jobs know a part by: a part that is renamed here is a new one to them.",
    "Raise the edition and its date with each change that jobs should take; then bring each open job up to date.",
    "A job keeps what it took. Nothing here changes a job by itself.",
    "Insert rows anywhere between the two thin grey rows of a block. The upper thin row carries the column formulas: leave it.",
    "Then read Checks: each line says what it found and where to look.",
  ],
  conventions: [
    "All prices are in the one currency of the sheet Standards, without tax; an offer in another currency is not compared.",
    "Of the offers of a part the pinned one is used, else the cheapest that holds on the date of the edition.",
    "Reels and runs are in the unit of length of the sheet Standards.",
  ],
  leftOut: [
    "Exchange rates, terms of delivery and discounts of a supplier: type the price that you pay.",
    "What belongs to one job: customer, place, dish, rain and orbital slots stand in the job alone.",
  ],
});
