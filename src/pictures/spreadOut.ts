/**
 * Moves labels apart until none covers another, each as near to where it belongs as its order allows.
 * @param wanted where each would begin
 * @param size of every label, in the same pixels
 * @param room pushed back inside where all of them fit
 */
export function spreadOut(
  wanted: readonly number[],
  size: number,
  room: { readonly from: number; readonly to: number },
): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const placed = [...wanted];
  let next = room.from;
  for (const index of order) {
    placed[index] = Math.max(placed[index]!, next);
    next = placed[index]! + size;
  }
  let last = Math.max(room.to, room.from + size * wanted.length);
  for (const index of [...order].reverse()) {
    placed[index] = Math.min(placed[index]!, last - size);
    last = placed[index]!;
  }
  return placed;
}
