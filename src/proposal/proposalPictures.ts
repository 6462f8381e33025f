/** The pictures of a proposal, as they fit its pages. */
import { diagramPages } from "../pictures/oneLineDiagram";
import { PAGE_WIDTH } from "../pictures/ink";
import { slotsPicture } from "../pictures/slotsPicture";
import type { ProposalWanted } from "./proposalOf";

/** Of an upright page between its margins, under a heading: so high where it is as wide as a picture. A guess. */
const PAGE_HEIGHT = Math.floor(1.25 * PAGE_WIDTH);

export const proposalPictures: ProposalWanted["pictures"] = {
  diagram: (book) => diagramPages(book, PAGE_HEIGHT),
  sky: (book) => [slotsPicture(book)],
};
