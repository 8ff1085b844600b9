/**
 * The order in which joints of a frame are tacked and welded, and the faces of one joint: skipping round, opposite faces in
 * pairs, never two neighbours while both are hot.
 */

/** Bits of a place turned round: 0 4 2 6 1 5 3 7 for eight, which is the skip order 1-5-3-7-2-6-4-8 (common practice). */
const turnedRound = (place: number, bits: number): number => {
  let out = 0;
  for (let b = 0; b < bits; b++) if (place & (1 << b)) out |= 1 << (bits - 1 - b);
  return out;
};

/** Orders tried until one has no two neighbours in succession: short rows have few, long ones find one at once. */
const TRIES = 2000;

const orders = new Map<number, readonly number[]>();

const skipPlaces = (count: number): readonly number[] => {
  const kept = orders.get(count);
  if (kept !== undefined) return kept;
  const bits = Math.max(1, Math.ceil(Math.log2(Math.max(2, count))));
  const wanted = Array.from({ length: 1 << bits }, (_, k) => turnedRound(k, bits)).filter(k => k < count);
  let tries = 0;
  const from = (done: readonly number[]): readonly number[] | null => {
    if (done.length === count) return done;
    if (++tries > TRIES) return null;
    const last = done.at(-1);
    for (const next of wanted) {
      if (done.includes(next) || (last !== undefined && Math.abs(next - last) === 1)) continue;
      const found = from([...done, next]);
      if (found !== null) return found;
    }
    return null;
  };
  // The first of the row is always the first joint: it is the one that must hold.
  const found = count === 0 ? [] : (from([0]) ?? wanted);
  orders.set(count, found);
  return found;
};

/**
 * Joints of a row in the order they are welded: the first of the row first, then skipping, no neighbour of the last one where
 * the row is long enough (five or more). Eight give 1-5-3-7-2-6-4-8 (common practice).
 */
export const skipAround = <T>(row: readonly T[]): readonly T[] =>
  skipPlaces(row.length).map(k => row[k] as T);

/** Kinds of joint of the frame, each with four faces. */
export type JointKind = 'upright' | 'diagonal' | 'crossmember';

/**
 * The faces of a joint in the order they are tacked and welded: the two that would swing the piece in the frame's plane first,
 * one against the other, then its flanks (common practice: face by face A-C-B-D, opposite ones in pairs).
 */
export const FACES: Readonly<Record<JointKind, readonly [string, string, string, string]>> = {
  upright: ['lip side', 'entry side', 'upper flank', 'lower flank'],
  diagonal: ['open side', 'tight side', 'upper flank', 'lower flank'],
  crossmember: ['lip side', 'entry side', 'underside', 'top'],
};

/** Which end of a piece is welded first: by turns, so that the heat goes from one side of the frame to the other. */
export const firstEnd = <End extends string>(place: number, one: End, other: End): End =>
  place % 2 === 0 ? one : other;

/** A tack is so many times the thicker wall long: EN 1011-2, walls under 12 mm [found, in two texts that quote it]. */
const TACK_WALLS = 4;
/** A corner's radius takes so many walls off each edge of a face: no tack on a corner (common practice). */
const CORNER_WALLS = 2;
/** Tacks of a seam stand so many walls apart (common practice; 75 to 100 mm at 3 mm). */
const SEAM_WALLS = [25, 35] as const;
/** No bead is longer than this in one go, mm (common practice). */
export const ONE_GO = 50;

/**
 * Tacks of a joint between a piece and what it stands on: length, and how far apart along a seam, mm.
 * @param wall_mm wall of the piece; @param onto_mm wall of what it stands on; @param face_mm width of the piece's face
 */
export const jointTacks = (
  wall_mm: number,
  onto_mm: number,
  face_mm: number,
): Readonly<{ long_mm: number; apart_mm: readonly [number, number]; goes: number }> => {
  const flat = Math.max(0, face_mm - 2 * CORNER_WALLS * wall_mm);
  const thin = Math.min(wall_mm, onto_mm);
  return {
    long_mm: Math.min(TACK_WALLS * Math.max(wall_mm, onto_mm), flat),
    apart_mm: [SEAM_WALLS[0] * thin, SEAM_WALLS[1] * thin],
    goes: Math.max(1, Math.ceil(face_mm / ONE_GO)),
  };
};
