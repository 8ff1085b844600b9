/** Flange that holds a disc, mm across [practice]. */
const FLANGE = 42;
/** What the guard's lip, the gear head and a rounded edge take of the rest, mm: 115 reaches 28 to 32, 125 reaches 33 to 37 under its guard (bench rule; practice). */
const GUARD_TAKES = [4.5, 8.5] as const;

/**
 * How deep a hand-held cutting disc cuts under its guard, mm: from a guard that takes much to one that takes little. Half of disc less
 * flange is what it had without a guard, which nobody cuts with (derived).
 * @param disc_mm across, new or worn
 */
export const discReach = (disc_mm: number): Readonly<{ least: number; most: number }> => {
  const bare = (disc_mm - FLANGE) / 2;
  return { least: Math.max(0, bare - GUARD_TAKES[1]), most: Math.max(0, bare - GUARD_TAKES[0]) };
};
