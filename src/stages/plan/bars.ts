/** Bars a yard sells, mm: 6 m, or 20 ft; and what squaring both ends takes (common practice). */
export const BAR_mm = { metric: 6000, us: 6096 } as const;
const ENDS_mm = 12;

/**
 * Bars that a list of pieces takes when the longest is always cut first from the first bar it fits (a plain count for the
 * shopping list, never fewer than the least; the exact cutting plan may save one).
 * @param pieces lengths, mm
 * @param bar_mm length of a bar
 * @param kerf_mm taken by every cut
 * @returns the count, and 0 for no pieces; a piece longer than a bar takes as many bars as its length (it must be joined)
 */
export const barCount = (pieces: readonly number[], bar_mm: number, kerf_mm: number): number => {
  const room = bar_mm - ENDS_mm;
  const left: number[] = [];
  let joined = 0;
  for (const piece of [...pieces].sort((a, b) => b - a)) {
    if (piece > room) {
      joined += Math.ceil(piece / room);
      continue;
    }
    const at = left.findIndex(rest => rest >= piece);
    if (at < 0) left.push(room - piece - kerf_mm);
    else left[at] = (left[at] ?? 0) - piece - kerf_mm;
  }
  return left.length + joined;
};
