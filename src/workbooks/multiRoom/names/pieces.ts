/** What the functions count in a distribution: words on Parts, for fittings and labour to go by, and how many on Materials. */
import type { Named } from "../../../formula/build";
import { fields, told } from "../../names";

export const PIECES = [
  ...["connector", "grounding block", "end resistor", "receiver lead", "mains socket"],
  ...["dish", "further slot on a dish", "feed", "head unit on a dish", "switch"],
  ...["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter", "supply", "wall plate"],
  ...["dish bonding conductor", "outlet to measure", "floor"],
] as const;

export const pieceWords: Named = { name: "piece_words" };

const keyOf = (piece: string): string => piece.replaceAll(" ", "_");
const words = Object.fromEntries(PIECES.map((piece) => [keyOf(piece), told(piece, { format: "general" })]));

/** A name for all of them together. */
export const pieces = fields("pieces", {}, ["all"]);
/** In the order of {@link PIECES}. */
export const eachPiece = Object.values(fields("pieces", words));
