import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { Standing } from './standing.ts';

const LBF = 4.448_221_615;
/** No more than this share of a tested pull-out is used [practice]. */
const USED_SHARE = 1 / 3;

/** What one anchor is counted to hold, N, before it is pulled; its own pull test replaces that. */
export type AnchorFigure = Readonly<{
  holds_N: number;
  /** Tested by a side pull only: what it holds against being drawn up is not known until it is pulled. */
  sideOnly: boolean;
  source: string;
}>;

export const ANCHORS = {
  'stake 900 mm': {
    holds_N: 300 * LBF,
    sideOnly: true,
    source:
      'a third of about 1000 lb of a 1 × 36 in stake in lawn, tent trade on an IFAI study [found, practice]',
  },
  'stake 900 mm, soaked ground': {
    holds_N: 150 * LBF,
    sideOnly: true,
    source: 'half of that in saturated soil [found, practice]',
  },
  'screw anchor 760 mm': {
    holds_N: 1500 * LBF * USED_SHARE,
    sideOnly: false,
    source: 'a third of the lower of 1500 to 1875 lb of a 30 in × 4 in helix, one test [found, practice]',
  },
  'reinforcing bar 600 mm': {
    holds_N: 100 * LBF,
    sideOnly: true,
    source: 'the lower of 100 to 200 lb [practice]',
  },
} as const satisfies Record<string, AnchorFigure>;

/** Anchors at least, whatever the numbers say: two at the entry edge and two at the rear [practice]. */
export const LEAST_ANCHORS = 4;
/** Each is pulled to this share of what it must hold, before the ride and after rain [practice]. */
export const PULL_TEST = 1.5;

export type AnchorPlan = Readonly<{
  /** At each end; even, for left and right. */
  entry: number;
  rear: number;
  /** What one must hold: up and along added as a vector. */
  entryEach_N: number;
  rearEach_N: number;
  /** What each is pulled to. */
  entryTest_N: number;
  rearTest_N: number;
  /** The kind's figure says nothing of being drawn up, and the entry edge lifts: only the pull test tells. */
  liftUnproven: boolean;
}>;

/** More than this at one end is no plan: another ground, another anchor, or weight. */
export const MOST_AN_END = 8;

/**
 * Anchors for what friction does not hold: two at the entry edge and two at the rear at least, more where one would have to hold
 * more than its kind is counted for. Along the ground all share; what lifts the entry edge is the entry's; what lifts the side
 * is taken by that side's anchors. Null where eight at an end would not do.
 */
export const anchorPlan = (standing: Standing, anchor: AnchorFigure): AnchorPlan | null => {
  const { slide_N, sideways_N, lift_N, sideLift_N } = standing.held;
  for (let each = LEAST_ANCHORS / 2; each <= MOST_AN_END; each += 2) {
    const along = Math.hypot(slide_N, sideways_N) / (2 * each);
    const side = sideLift_N / each;
    // A rider at a corner of the lip lifts the entry edge and one side at once.
    const entryEach_N = Math.hypot(along, lift_N / each + side);
    const rearEach_N = Math.hypot(along, side);
    if (Math.max(entryEach_N, rearEach_N) > anchor.holds_N) continue;
    return {
      entry: each,
      rear: each,
      entryEach_N,
      rearEach_N,
      entryTest_N: PULL_TEST * entryEach_N,
      rearTest_N: PULL_TEST * rearEach_N,
      liftUnproven: anchor.sideOnly && Math.max(lift_N, sideLift_N) > 0,
    };
  }
  return null;
};

export type Ballast = Readonly<{
  /** Against sliding: it counts only by its friction. */
  slide_kg: number;
  /** On the entry edge, against its lifting, and along each side against tipping over the other. */
  entry_kg: number;
  side_kg: number;
}>;

/**
 * Weight that would do instead of anchors on hard standing: force ÷ (μ g) against sliding, force ÷ g where an edge lifts [statics].
 * Null without friction.
 */
export const ballast = (standing: Standing, friction: number): Ballast | null => {
  if (!(friction > 0)) return null;
  const { slide_N, sideways_N, lift_N, sideLift_N } = standing.held;
  return {
    slide_kg: Math.max(slide_N, sideways_N) / (friction * GRAVITY_m_s2),
    entry_kg: lift_N / GRAVITY_m_s2,
    side_kg: sideLift_N / GRAVITY_m_s2,
  };
};
