/** The demonstration's second revision: what a customer and a supplier changed. Invented, as the first is. */
import type { JobInputs } from "../../src/workbooks/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

export function secondRevision(): JobInputs {
  const { fields, blocks } = guestHouse;
  const rooms = blocks!.rooms!.map((row) => (row.outlet === "A-07" ? { ...row, cable: "indoor drop" } : row));
  return {
    fields: { ...fields, site_margin: 0.25, site_revision: 2 },
    blocks: {
      ...blocks,
      // On the one port that the upper floor has left.
      rooms: [...rooms, { ...rooms[8]!, outlet: "F-10", room: "landing", run: 19 }],
      units: blocks!.units!.map((row, index) => (index === 0 ? { ...row, price: 156 } : row)),
      provisional: blocks!.provisional!.map((row) => ({ ...row, sum: 120 })),
    },
  };
}
