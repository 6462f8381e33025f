/**
 * Pieces of a document set one below the other, parted into pages: what belongs
 * together stays together as far as a page holds it, and the head of a table
 * stands again above what goes on.
 */

/** What is set as one, and never cut. Measures are points on paper. */
export interface Piece {
  readonly height: number;
  /** Above it, unless it stands at the top of a page. */
  readonly above: number;
  /** It stays on the page of the next one. */
  readonly keep?: boolean;
  readonly newPage?: boolean;
  /** Stands above it where it is the first of a page. */
  readonly head?: Piece;
  readonly draw: (top: number, isRepeated: boolean) => void;
}

export interface PlacedPiece {
  readonly piece: Piece;
  readonly top: number;
  readonly isRepeated: boolean;
}

/** @returns pieces one below the other as one that stands again; undefined for none */
export function stacked(pieces: readonly Piece[]): Piece | undefined {
  if (pieces.length === 0) return undefined;
  return {
    height: pieces.reduce((sum, { height }) => sum + height, 0),
    above: 0,
    draw: (top, isRepeated) => {
      let at = top;
      for (const piece of pieces) {
        piece.draw(at, isRepeated);
        at += piece.height;
      }
    },
  };
}

const SLACK = 0.05;

/**
 * @param room height of a page
 * @returns for each page what stands on it, and how far from its top
 */
export function flow(pieces: readonly Piece[], room: number): PlacedPiece[][] {
  const pages: PlacedPiece[][] = [];
  let page: PlacedPiece[] = [];
  let used = 0;
  const put = (piece: Piece): void => {
    const isFirst = page.length === 0;
    if (isFirst && piece.head) {
      page.push({ piece: piece.head, top: 0, isRepeated: true });
      used = piece.head.height;
    }
    const top = used + (isFirst ? 0 : piece.above);
    page.push({ piece, top, isRepeated: false });
    used = top + piece.height;
  };
  const end = (): void => {
    if (page.length > 0) pages.push(page);
    page = [];
    used = 0;
  };
  for (const group of groupsOf(pieces)) {
    if (group[0]!.newPage) end();
    const whole = heightOf(group);
    if (page.length > 0 && used + group[0]!.above + whole > room + SLACK) {
      const alone = (group[0]!.head?.height ?? 0) + whole;
      // What no page holds begins where it is, if the first of it can.
      if (alone <= room || used + group[0]!.above + group[0]!.height > room / 2) end();
    }
    for (const piece of group) {
      if (page.length > 0 && used + piece.above + piece.height > room + SLACK) end();
      put(piece);
    }
  }
  end();
  return pages;
}

/** Pieces that stay together. */
function groupsOf(pieces: readonly Piece[]): Piece[][] {
  const groups: Piece[][] = [];
  let goesOn = false;
  for (const piece of pieces) {
    if (goesOn && !piece.newPage) groups.at(-1)!.push(piece);
    else groups.push([piece]);
    goesOn = piece.keep ?? false;
  }
  return groups;
}

const heightOf = (group: readonly Piece[]): number =>
  group.reduce((sum, { height, above }, index) => sum + height + (index === 0 ? 0 : above), 0);
