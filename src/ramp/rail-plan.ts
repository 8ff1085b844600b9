import { faceOffset, type RampCurve, railStart } from './curve.ts';
import type { RailName, Tube } from './design.ts';
import type { MarkedThird, Measured, Pull } from './measured.ts';
import { type Design, deckThickness } from './settle.ts';

/** Left on past the lip mark and trimmed with the other rails after they match (common practice, 50 mm / 2 in). */
export const SPARE_LENGTH = 50;
export const THIRDS = 3;

export type SlitSpot = Readonly<{
  number: number;
  third: number;
  /** Along the back wall from the entry end of the rail, mm. */
  at_mm: number;
  close_rad: number;
  /** Gap left at the face before welding, mm. */
  gap_mm: number;
  /** Marked on steel: its entry; null while it is only a plan. */
  marked: string | null;
}>;

/** One curved rail: where it begins, how far it bends, its slits, the lines it is tacked and finished to. */
export type RailPlan = Readonly<{
  rail: RailName;
  /** Its own tube: as the caliper found it, as planned where it was not read. */
  tube: Tube;
  start_rad: number;
  turn_rad: number;
  /** Back-wall length over the bend, mm. */
  bend_mm: number;
  straight_mm: number;
  /** Back-wall length from the entry end to the lip mark, mm. */
  toLip_mm: number;
  cut_mm: number;
  kerf_mm: number;
  pull: Pull;
  slits: readonly SlitSpot[];
  /** Even pitch of the slits not yet marked (or of all), mm. */
  pitch_mm: number;
  /** Bottom-face radius of the finished line and of the tack line (which the weld pull then curls in), mm. */
  finished: Readonly<{ radius_mm: number; turn_rad: number }>;
  tack: Readonly<{ radius_mm: number; turn_rad: number }>;
  /** Middles of the flats along the back wall: flat k lies behind slit k; flat 0 is the half flat at the entry. */
  flats_mm: readonly number[];
}>;

export const curveOf = (d: Design): RampCurve => ({
  radius_mm: d.arc.radius_mm,
  exit_rad: d.arc.exit_rad,
  straight_mm: d.straight,
  deck_mm: deckThickness(d.deck),
  depth_mm: d.tube.depth_mm,
  wall_mm: d.tube.wall_mm,
});

/** Slits still to be laid out in what is left of the bend: the fewest that close to no less than no gap. */
const layRest = (
  rest_mm: number,
  closeOf: (count: number) => number,
  most_rad: number,
): { count: number; close_rad: number } => {
  // Fewest slits whose closing the kerf allows; the small slack keeps 12.0000001 from becoming 13.
  for (let count = 1; count < 2000; count++) {
    const close_rad = closeOf(count);
    if (close_rad <= most_rad * (1 + 1e-9)) return { count, close_rad: Math.max(0, close_rad) };
  }
  return { count: Math.max(1, Math.floor(rest_mm)), close_rad: most_rad };
};

const thirdSizes = (count: number, parts: number): number[] => {
  const sizes: number[] = [];
  let left = count;
  for (let p = parts; p > 0; p--) {
    const size = Math.ceil(left / p);
    sizes.push(size);
    left -= size;
  }
  return sizes;
};

/**
 * The plan of one rail. Thirds already marked stand as marked; the rest is laid out anew from the kerf learned and the bend
 * read so far. The pull of the welds is taken off every closing, so that the rail comes true as it cools.
 */
export const planRail = (d: Design, rail: RailName, m: Measured, pull: Pull): RailPlan => {
  const tube = { ...d.tube, ...m.tubes.get(rail) };
  const c = curveOf({ ...d, tube });
  const start_rad = railStart(c);
  const turn_rad = c.exit_rad - start_rad;
  const hingeRadius = c.radius_mm + faceOffset(c, 'hinge line');
  const bend_mm = hingeRadius * turn_rad;
  const toLip_mm = bend_mm + c.straight_mm;
  const finished = { radius_mm: c.radius_mm + faceOffset(c, 'rail bottom face'), turn_rad };
  const base = {
    rail,
    tube,
    start_rad,
    turn_rad,
    bend_mm,
    straight_mm: c.straight_mm,
    toLip_mm,
    cut_mm: toLip_mm + SPARE_LENGTH,
    pull,
    finished,
  };
  if (d.route === 'rolled') {
    // No slits: uprights and crossmembers still want named spots, spaced as a slit rail's flats would be.
    const count = Math.max(4, Math.round(bend_mm / 140));
    const pitch = bend_mm / count;
    const flats_mm = Array.from({ length: count + 1 }, (_, k) => k * pitch);
    return { ...base, kerf_mm: 0, slits: [], pitch_mm: pitch, tack: finished, flats_mm };
  }

  const h = c.depth_mm - c.wall_mm / 2;
  const kerf_mm = m.kerf_mm ?? d.cutter.kerf_mm;
  const marked: readonly MarkedThird[] = m.marks.get(rail) ?? [];
  const slits: SlitSpot[] = [];
  let closed = 0;
  let edge = 0;
  for (const third of marked) {
    third.marks_mm.forEach((at_mm, i) => {
      slits.push({
        number: third.first + i,
        third: third.third,
        at_mm,
        close_rad: third.close_rad,
        gap_mm: third.gap_mm,
        marked: third.entry,
      });
    });
    const lastMark = third.marks_mm.at(-1) ?? edge;
    const before = third.marks_mm.at(-2) ?? edge;
    edge = third.marks_mm.length > 1 ? lastMark + (lastMark - before) / 2 : lastMark + (lastMark - edge);
    closed = third.bent_rad ?? closed + third.close_rad * third.marks_mm.length;
  }
  const doneThirds = marked.length;
  const learned = marked.map(t => t.feeler_mm).filter(k => k !== null);
  // What closes is the narrowest kerf at the face: a feeler reading after deburring wins over the test piece.
  const kerfNow = learned.length > 0 ? Math.min(kerf_mm, ...learned) : kerf_mm;
  let pitch_mm = doneThirds > 0 ? (slits[1]?.at_mm ?? edge) - (slits[0]?.at_mm ?? 0) : bend_mm;
  if (doneThirds < THIRDS) {
    const rest_mm = Math.max(1, bend_mm - edge);
    const closeOf = (count: number): number =>
      (turn_rad - closed - pull.rad * (slits.length + count)) / count;
    const { count, close_rad } = layRest(rest_mm, closeOf, kerfNow / h);
    pitch_mm = rest_mm / count;
    const sizes = thirdSizes(count, THIRDS - doneThirds);
    const firstNumber = slits.length + 1;
    let third = doneThirds + 1;
    let inThird = 0;
    for (let i = 0; i < count; i++) {
      while (inThird >= (sizes[third - doneThirds - 1] ?? 0) && third < THIRDS) {
        third++;
        inThird = 0;
      }
      inThird++;
      slits.push({
        number: firstNumber + i,
        third,
        at_mm: edge + (i + 0.5) * pitch_mm,
        close_rad,
        gap_mm: Math.max(0, kerfNow - h * close_rad),
        marked: null,
      });
    }
  }
  const tackTurn = Math.max(0.01, turn_rad - pull.rad * slits.length);
  const tack = { radius_mm: bend_mm / tackTurn + c.wall_mm / 2, turn_rad: tackTurn };
  const flats_mm = slits.map((s, i) => (s.at_mm + (slits[i + 1]?.at_mm ?? 2 * bend_mm - s.at_mm)) / 2);
  return { ...base, kerf_mm: kerfNow, slits, pitch_mm, tack, flats_mm: [0, ...flats_mm] };
};
