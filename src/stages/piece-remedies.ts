import type { Piece } from '../build/fold.ts';
import { FLAT_KINDS } from '../ramp/mass.ts';
import { CLEAR_OF_SLIT, type Member, sectionName } from '../ramp/members.ts';
import { pieceName } from './piece-name.ts';
import type { Fill, Fills, Offer } from './sheet.ts';
import type { Situation } from './situation.ts';
import { sortOffers } from './sort-offers.ts';

/** A length that a tape and a hand saw bring back, mm (common practice). */
export const TAPE = 0.5;
/** Gap, or excess, that a fit-up still takes: root gap up to 1.5 mm for a novice, upright length ±1 mm in a careful shop (common practice). */
export const LIMIT = { novice: 1.5, 'careful shop': 1 } as const;
/** A joint hidden under side plates may move by this, mm: the plate is 100 mm long (common practice). */
const JOINT_MOVES = 30;
/** What must be left past the lip mark to trim the rails together, mm: slit scatter and shrinkage take up to 8 and 3 (common practice). */
export const LEAST_TO_TRIM = 15;
/** Plate that closes a gap too wide to weld, mm. */
const PLATES = { metric: [3, 4, 5, 6, 8], us: [3.175, 4.7625, 6.35] } as const;
/** A frame may be made narrower by this rather than a crossmember thrown away, mm (common practice). */
const NARROWER = 20;

export const NO_TURN = 1e-9;

const length = (v: number): Fill => ({ v, as: 'length' });

export const offer = (
  remedy: string,
  minutes: number,
  plan: Offer['plan'],
  fills: Fills,
  after?: Offer['after'],
): Offer => ({
  remedy,
  minutes,
  plan,
  fills,
  ...(after === undefined ? {} : { after }),
});

/** One piece against the member it serves. `off` is + when the piece is too long, mm. */
export type Case = Readonly<{
  s: Situation;
  m: Member;
  piece: Piece;
  off: number;
  limit: number;
  fills: Fills;
}>;

export const after = (c: Case, v: number): NonNullable<Offer['after']> => ({
  v,
  as: 'length',
  within: v <= c.limit + NO_TURN,
});

export const ownPlan = (c: Case): Offer['plan'] => ({ piece: c.piece.id, need: c.m.need, off_mm: c.off });

const trim = (c: Case): readonly Offer[] =>
  c.off <= 0 || c.m.kind === 'curved rail'
    ? []
    : [
        offer(
          'piece-trim',
          4,
          { ...ownPlan(c), to_mm: c.m.long_mm },
          { ...c.fills, off: length(c.off) },
          after(c, TAPE),
        ),
      ];

/** A short piece that its weld still bridges. */
const gap = (c: Case): readonly Offer[] => {
  const widest = Math.min(LIMIT.novice, c.m.tube.wall_mm);
  return c.off >= 0 || -c.off > widest || c.m.kind === 'curved rail'
    ? []
    : [offer('piece-gap', 2, ownPlan(c), { ...c.fills, gap: length(-c.off) }, after(c, -c.off))];
};

/** A plate on the end of a short piece. */
const plate = (c: Case): readonly Offer[] => {
  const gap_mm = -c.off;
  if (gap_mm < 2 || c.m.kind === 'curved rail' || FLAT_KINDS.has(c.m.kind)) return [];
  const sizes = PLATES[c.s.build.system];
  const best = sizes.reduce((a, b) => (Math.abs(b - gap_mm) < Math.abs(a - gap_mm) ? b : a));
  const left = Math.abs(best - gap_mm);
  if (left > 2 * LIMIT.novice) return [];
  return [
    offer(
      'piece-plate',
      12,
      { ...ownPlan(c), plate_mm: best },
      { ...c.fills, plate: { v: best, as: 'thickness' } },
      after(c, Math.max(left, TAPE)),
    ),
  ];
};

/** Where along its rail an upright of this length fits: nearer the lip when it is too long, clear of every slit. */
const move = (c: Case): readonly Offer[] => {
  const { m, off } = c;
  const plan = c.s.ramp.plans.get(m.rail ?? '');
  const shape = c.s.ramp.shapes.get(m.rail ?? '');
  if (m.kind !== 'upright' || m.along_mm === undefined || plan === undefined || shape === undefined)
    return [];
  const slope = shape.bottomAt(m.along_mm).slope;
  if (slope < 0.05) return [];
  const along = m.along_mm + off / Math.sin(slope);
  if (along < 0 || along > plan.toLip_mm) return [];
  const half = m.tube.depth_mm / 2;
  const clear = plan.slits.every(slit => Math.abs(slit.at_mm - along) >= half + CLEAR_OF_SLIT);
  const shift = along - m.along_mm;
  const tilt = Math.abs(shape.bottomAt(along).slope - slope) * half;
  return clear
    ? [
        offer(
          off > 0 ? 'piece-nearer-lip' : 'piece-nearer-entry',
          2,
          { ...ownPlan(c), shift_mm: shift },
          { ...c.fills, shift: length(Math.abs(shift)) },
          after(c, tilt + TAPE),
        ),
      ]
    : [];
};

/** A base rail's joint lies under side plates: it may stand a little back. */
const joint = (c: Case): readonly Offer[] =>
  c.m.kind === 'base rail' && c.off < 0 && -c.off <= JOINT_MOVES
    ? [
        offer(
          'piece-joint',
          5,
          { ...ownPlan(c), joint_mm: -c.off },
          { ...c.fills, gap: length(-c.off) },
          after(c, TAPE),
        ),
      ]
    : [];

/** Crossmembers of one kind are all alike: the frame may be that much narrower instead. */
const together = (c: Case): readonly Offer[] => {
  if (c.m.kind !== 'crossmember' && c.m.kind !== 'base crossmember') return [];
  if (c.off >= 0 || -c.off > NARROWER) return [];
  const others = c.s.ramp.members.filter(
    m => (m.kind === 'crossmember' || m.kind === 'base crossmember') && m.need !== c.m.need,
  ).length;
  return [
    offer(
      'piece-all-alike',
      4 * others,
      { ...ownPlan(c), to_mm: c.piece.length_mm },
      { ...c.fills, others },
      after(c, TAPE),
    ),
  ];
};

/** Two pieces of one section that fit better the other way about. */
const swap = (
  c: Case,
  needs: readonly Member[],
  cut: ReadonlyMap<string, { piece: Piece }>,
): readonly Offer[] => {
  let best: { need: Member; piece: Piece; worst: number } | null = null;
  for (const m of needs) {
    const other = cut.get(m.need)?.piece;
    if (m.need === c.m.need || m.kind !== c.m.kind || other === undefined || other.fate !== 'cut') continue;
    if (sectionName(m.tube) !== sectionName(c.m.tube)) continue;
    const worst = Math.max(Math.abs(c.piece.length_mm - m.long_mm), Math.abs(other.length_mm - c.m.long_mm));
    if (worst < Math.abs(c.off) && (best === null || worst < best.worst))
      best = { need: m, piece: other, worst };
  }
  return best === null
    ? []
    : [
        offer(
          'piece-swap',
          1,
          { piece: c.piece.id, serves: best.need.need, other: best.piece.id, otherServes: c.m.need },
          { ...c.fills, other: pieceName(best.need.need) },
          after(c, best.worst),
        ),
      ];
};

/** A need nobody has cut for yet that this piece is long enough for: the longest such. */
export const elsewhere = (
  piece: Piece,
  needs: readonly Member[],
  cut: ReadonlyMap<string, unknown>,
  section: string,
): Member | null =>
  needs
    .filter(
      m =>
        !cut.has(m.need) &&
        m.need !== piece.serves &&
        sectionName(m.tube) === section &&
        m.kind !== 'curved rail',
    )
    .filter(m => m.long_mm <= piece.length_mm + TAPE)
    .sort((a, b) => b.long_mm - a.long_mm)[0] ?? null;

/** Lip trimmed back on every rail alike, when a blank came out too short for the lip mark. */
const lipBack = (c: Case): readonly Offer[] => {
  if (c.m.kind !== 'curved rail') return [];
  const short = (c.s.ramp.plans.get(c.m.rail ?? '')?.toLip_mm ?? 0) + LEAST_TO_TRIM - c.piece.length_mm;
  if (short <= 0) return [];
  const down = short * Math.sin(c.s.ramp.design.arc.exit_rad);
  const back = short * Math.cos(c.s.ramp.design.arc.exit_rad);
  return [
    offer(
      'rail-lip-back',
      10,
      { ...ownPlan(c), lip_back_mm: short },
      { ...c.fills, down: length(down), back: length(back) },
      after(c, TAPE),
    ),
  ];
};

/** What can be done with a piece of the wrong length, in the limit first, then least minutes; cutting it new and leaving it are always there. */
export const pieceOffers = (
  c: Case,
  needs: readonly Member[],
  cut: ReadonlyMap<string, { piece: Piece }>,
): readonly Offer[] => {
  const place = elsewhere(c.piece, needs, cut, sectionName(c.m.tube));
  const size = Math.abs(c.off);
  const offers = [
    ...trim(c),
    ...gap(c),
    ...joint(c),
    ...move(c),
    ...plate(c),
    ...swap(c, needs, cut),
    ...together(c),
    ...lipBack(c),
    ...(place === null
      ? []
      : [
          offer(
            'piece-elsewhere',
            10,
            { piece: c.piece.id, serves: place.need, need: c.m.need },
            { ...c.fills, other: pieceName(place.need), fits: length(place.long_mm) },
            after(c, TAPE),
          ),
        ]),
    offer(
      'piece-new',
      9,
      { need: c.m.need, spoils: c.piece.id, to_mm: c.m.long_mm },
      c.fills,
      after(c, TAPE),
    ),
    offer('leave-piece', 0, ownPlan(c), c.fills, after(c, size)),
  ];
  return sortOffers(offers);
};
