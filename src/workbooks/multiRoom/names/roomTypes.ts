import { anyText, nameIn, number, whole } from "../../asks";
import { block, entry, result } from "../../names";
import { keyed } from "../nameKeys";
import { kinds, routes } from "./labour";
import { cables, fittings, passives, plates } from "./parts";

/** What many outlets have in common: a blank in their row of Rooms means this. */
export const types = block("types", {
  name: entry(
    "Type",
    { width: 20 },
    anyText("A name of its own for what many outlets have in common", { example: "double room" }),
  ),
  outlets: entry(
    "Outlets a room",
    { unit: "pieces", width: 10, format: "integer" },
    whole(1, 100, "How many outlets of this type a room has; blank is not checked", { example: "1" }),
  ),
  receiver: entry(
    "Receiver",
    { width: 16 },
    anyText("What is connected to each: receiver, recorder, 2 tuners, or a kind of the Parts sheet", {
      example: "receiver",
    }),
  ),
  quantity: entry(
    "How many",
    { unit: "pieces", width: 10, format: "integer" },
    whole(0, 32, "How many of them at each outlet; blank is one", { example: "1", zero: "note" }),
  ),
  cable: entry(
    "Cable",
    { width: 14 },
    nameIn(cables.name, "A cable of the Parts sheet; blank is the usual one of Site"),
  ),
  run: entry(
    "Run",
    { unit: "m or ft", width: 9, format: "one" },
    number(0.1, 2000, "Usual length from what feeds it; blank asks for it in each row of Rooms", {
      example: "14.5",
    }),
  ),
  plate: entry(
    "Wall plate",
    { width: 13 },
    nameIn(plates.name, "A wall plate of the Parts sheet; blank is the usual one of Site"),
  ),
  route: entry(
    "Route",
    { width: 14 },
    nameIn(routes.name, "How the cable runs, a route of the Parts sheet; blank is the usual one of Site"),
  ),
  split: entry(
    "Split by",
    { width: 13 },
    nameIn(passives.name, "What splits several receivers at one outlet, a device of the Parts sheet"),
  ),
  shortest: entry(
    "Shortest run",
    { unit: "m or ft", width: 9, format: "one" },
    number(0, 2000, "Shortest that the run may turn out to be; blank takes the length tolerance on Site", {
      example: "12",
    }),
  ),
  longest: entry(
    "Longest run",
    { unit: "m or ft", width: 9, format: "one" },
    number(0, 2000, "Longest that the run may turn out to be; blank takes the length tolerance on Site", {
      example: "18",
    }),
  ),
  kind: entry(
    "Price group",
    { width: 12 },
    nameIn(kinds.name, "A price group of the Parts sheet, for the price of each group; may be blank"),
  ),
  fitting: entry(
    "Fitting",
    { width: 15 },
    nameIn(
      fittings.name,
      "A fitting of the Parts sheet that each of these outlets takes besides; may be blank",
    ),
  ),
  pieces: entry(
    "Fittings each",
    { unit: "pieces", width: 10, format: "general" },
    number(0, 1000, "Pieces of it for each outlet; blank is one", { example: "1", zero: "note" }),
  ),
  minutes: entry(
    "Extra minutes each",
    { unit: "min", width: 10, format: "one" },
    number(0, 10_000, "Crew minutes for each of these outlets beyond the labour units; may be blank", {
      example: "10",
    }),
  ),
  used: result("Outlets of this type", { unit: "pieces", width: 10, format: "integer" }),
  own: result("Of these with entries of their own", { unit: "pieces", width: 12, format: "integer" }),
  fitting_pieces: result("Fittings together", { unit: "pieces", width: 10, format: "general" }),
  fitting_key: keyed("Fitting"),
});
