/** One rail against the other, at the stations both were read at. */
export type Mismatch = Readonly<{
  stations: readonly Readonly<{
    station_mm: number;
    /** First rail less second, mm: + when the first lies nearer the centre. */
    apart_mm: number;
    /** How far a crossmember leans there, rad: apart over the distance between the rails. */
    roll_rad: number;
  }>[];
  /** Greatest difference, with its sign, and where, mm. */
  worst_mm: number;
  worst_at_mm: number;
  /** Greatest step from one station to the next, with its sign, mm, and the station it leads to. */
  step_mm: number;
  step_at_mm: number;
  /** Greatest twist of the deck along the rails, rad per mm: only the change of the difference is felt by a sheet. */
  twist_rad_mm: number;
}>;

export type Reading = Readonly<{ station_mm: number; offset_mm: number }>;

/** Stations within this are one, mm. */
const SAME = 1;

/**
 * Rail-to-rail mismatch. Roll is δ/W, twist is (dδ/ds)/W; a difference that stays the same all along is a matter of level, packed at
 * the base. [derived] Null when no station is shared.
 *
 * @param first readings of the one rail, offsets + toward the centre, mm
 * @param second readings of the other
 * @param between_mm distance between the rails, W
 */
export function mismatch(
  first: readonly Reading[],
  second: readonly Reading[],
  between_mm: number,
): Mismatch | null {
  const shared = first
    .flatMap(a => {
      const b = second.find(r => Math.abs(r.station_mm - a.station_mm) <= SAME);
      return b === undefined ? [] : [{ station_mm: a.station_mm, apart_mm: a.offset_mm - b.offset_mm }];
    })
    .sort((a, b) => a.station_mm - b.station_mm);
  if (shared.length === 0) return null;
  const worst = shared.reduce((most, s) => (Math.abs(s.apart_mm) > Math.abs(most.apart_mm) ? s : most));
  let step_mm = 0;
  let step_at_mm = shared[0]!.station_mm;
  let twist_rad_mm = 0;
  for (let k = 1; k < shared.length; k++) {
    const step = shared[k]!.apart_mm - shared[k - 1]!.apart_mm;
    const along = shared[k]!.station_mm - shared[k - 1]!.station_mm;
    if (Math.abs(step) > Math.abs(step_mm)) {
      step_mm = step;
      step_at_mm = shared[k]!.station_mm;
    }
    if (along > 0) twist_rad_mm = Math.max(twist_rad_mm, Math.abs(step / along / between_mm));
  }
  return {
    stations: shared.map(s => ({ ...s, roll_rad: s.apart_mm / between_mm })),
    worst_mm: worst.apart_mm,
    worst_at_mm: worst.station_mm,
    step_mm,
    step_at_mm,
    twist_rad_mm,
  };
}
