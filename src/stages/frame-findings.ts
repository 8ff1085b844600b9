import { readingKey } from '../build/fold.ts';
import type { Fills, Finding, Offer } from './sheet.ts';
import type { Situation } from './situation.ts';
import { sortOffers } from './sort-offers.ts';

/** What a tape reads twice alike, mm (common practice). */
const TAPE = 1;
/** Of a frame racked by a strap with its tacks whole, so much comes back (bench rule: expect a tenth). */
const TACKS_RETURN = 0.1;

/** How far a frame may be off, mm: novice as first built, careful shop with a table and level floor (common practice). */
const LIMITS = {
  novice: { width: 4, diagonals: 4, twist: 5 },
  'careful shop': { width: 2, diagonals: 3, twist: 3 },
} as const;

export const frameLimits = (s: Situation) => LIMITS[s.ramp.design.tolerance];

/**
 * The frame as its readings tell it, seen from above: corners numbered round, 1 at the entry and 2 across from it, 3 and 4 at the
 * lip, 4 on the side of 1. Each part null until all its readings are there.
 */
export type FrameShape = Readonly<{
  width: Readonly<{ entry_mm: number; lip_mm: number; differ_mm: number }> | null;
  diagonals: Readonly<{
    first_mm: number;
    second_mm: number;
    differ_mm: number;
    /** The corners of the longer one. */
    long: '1–3' | '2–4';
    /** Out of square: sinγ = (d₁² − d₂²)/(4·W·L), exact for a sheared rectangle [derived]. */
    skew_rad: number;
    /** What the longer one is to lose, mm. */
    shorten_mm: number;
    /** How far the lip end has slid across, mm. */
    slid_mm: number;
  }> | null;
  /** Lift of corner 4 over the plane of the other three, + up, mm: c₁ − c₂ + c₃ − c₄ with the pads taken off, turned about. */
  twist_mm: number | null;
}>;

export const baseLength = (s: Situation): number =>
  s.ramp.members.find(m => m.kind === 'base rail')?.long_mm ?? 0;

const read = (s: Situation, step: string, ask: string): number | null =>
  s.build.readings.get(readingKey(step, ask))?.value ?? null;

const four = (s: Situation, step: string, name: string): readonly number[] | null => {
  const all = [1, 2, 3, 4].map(k => read(s, step, `${name}${k}`));
  return all.every(v => v !== null) ? (all as number[]) : null;
};

export const frameShape = (s: Situation): FrameShape => {
  const entry = read(s, 'assemble/width', 'entry');
  const lip = read(s, 'assemble/width', 'lip');
  const width =
    entry === null || lip === null
      ? null
      : { entry_mm: entry, lip_mm: lip, differ_mm: Math.abs(entry - lip) };
  const d1 = read(s, 'assemble/diagonals', 'd1');
  const d2 = read(s, 'assemble/diagonals', 'd2');
  const across = width === null ? s.ramp.design.width : (width.entry_mm + width.lip_mm) / 2;
  const along = baseLength(s);
  const sine =
    d1 === null || d2 === null || along <= 0
      ? 0
      : Math.max(-1, Math.min(1, (d1 ** 2 - d2 ** 2) / (4 * across * along)));
  const corners = four(s, 'assemble/twist', 'c');
  const pads = four(s, 'assemble/pads', 'z') ?? [0, 0, 0, 0];
  const over = corners?.map((c, k) => c - (pads[k] ?? 0)) ?? null;
  return {
    width,
    diagonals:
      d1 === null || d2 === null
        ? null
        : {
            first_mm: d1,
            second_mm: d2,
            differ_mm: Math.abs(d1 - d2),
            long: d1 >= d2 ? '1–3' : '2–4',
            skew_rad: Math.asin(Math.abs(sine)),
            shorten_mm: Math.abs(d1 - d2) / 2,
            slid_mm: along * Math.abs(sine),
          },
    twist_mm: over === null ? null : (over[3] ?? 0) - ((over[0] ?? 0) - (over[1] ?? 0) + (over[2] ?? 0)),
  };
};

type Case = Readonly<{ fills: Fills; plan: Offer['plan']; limit: number }>;

const offer = (c: Case, remedy: string, minutes: number, after_mm?: number): Offer => ({
  remedy,
  fills: c.fills,
  minutes,
  plan: c.plan,
  ...(after_mm === undefined
    ? {}
    : { after: { v: after_mm, as: 'length', within: after_mm <= c.limit + 1e-9 } }),
});

/** Left after a frame in tacks is strapped true and let go; never better than a tape tells. */
const afterStrap = (off_mm: number): number => Math.max(Math.min(TAPE, off_mm), off_mm * TACKS_RETURN);
const afterTape = (off_mm: number): number => Math.min(TAPE, off_mm);

const finding = (
  name: 'width-differs' | 'diagonals-differ' | 'frame-twisted',
  off_mm: number,
  c: Case,
  offers: readonly Offer[],
): Finding => ({
  key: name,
  stage: 'assemble',
  severity: 'fix',
  words: name,
  fills: c.fills,
  tall: { v: off_mm, as: 'length' },
  worst_mm: off_mm,
  limit: { v: c.limit, as: 'length' },
  offers: sortOffers(offers),
  blocks: ['assemble/weld-joints', 'assemble/weld'],
});

const length = (v: number) => ({ v, as: 'length' }) as const;

/**
 * The frame held together by tacks, or welded: ends of different width, diagonals that differ, a corner that lifts. What can be
 * done differs with the welds: tacks let a strap rack the frame, welds want a saw.
 */
export const frameFindings = (s: Situation): readonly Finding[] => {
  const shape = frameShape(s);
  const limits = frameLimits(s);
  const welded = s.build.ticks.has('assemble/weld');
  const findings: Finding[] = [];

  if (shape.width !== null && shape.width.differ_mm > limits.width) {
    const { entry_mm, lip_mm, differ_mm } = shape.width;
    const wide = entry_mm > lip_mm ? 'entry' : 'lip';
    const c: Case = {
      limit: limits.width,
      fills: {
        wide,
        narrow: wide === 'lip' ? 'entry' : 'lip',
        differ: length(differ_mm),
        half: length(differ_mm / 2),
      },
      plan: { entry_mm, lip_mm, wanted_mm: s.ramp.design.width },
    };
    findings.push(
      finding('width-differs', differ_mm, c, [
        ...(welded
          ? [offer(c, 'width-saw-open', 90, afterTape(differ_mm))]
          : [
              offer(c, 'width-re-tack', 25, afterTape(differ_mm)),
              offer(c, 'width-strap', 12, afterStrap(differ_mm)),
            ]),
        offer(c, 'deck-taper', 20, differ_mm),
        offer(c, 'leave-width', 0, differ_mm),
      ]),
    );
  }

  if (shape.diagonals !== null && shape.diagonals.differ_mm > limits.diagonals) {
    const { differ_mm, long, shorten_mm, skew_rad, slid_mm } = shape.diagonals;
    const c: Case = {
      limit: limits.diagonals,
      fills: {
        long,
        differ: length(differ_mm),
        shorten: length(shorten_mm),
        past: length(shorten_mm * (1 + TACKS_RETURN)),
        slid: length(slid_mm),
        skew: { v: skew_rad, as: 'angle', step: 0.01 },
      },
      plan: { long, differ_mm, shorten_mm, slid_mm },
    };
    findings.push(
      finding('diagonals-differ', differ_mm, c, [
        ...(welded
          ? [offer(c, 'square-saw-open', 120, afterTape(differ_mm))]
          : [
              offer(c, 'square-strap', 12, afterStrap(differ_mm)),
              offer(c, 'square-re-tack', 45, afterTape(differ_mm)),
            ]),
        offer(c, 'deck-square', 20, differ_mm),
        offer(c, 'leave-skew', 0, differ_mm),
      ]),
    );
  }

  const twist = Math.abs(shape.twist_mm ?? 0);
  if (shape.twist_mm !== null && twist > limits.twist) {
    const up = shape.twist_mm > 0;
    const c: Case = {
      limit: limits.twist,
      fills: {
        high: up ? '2 and 4' : '1 and 3',
        low: up ? '1 and 3' : '2 and 4',
        twist: length(twist),
        half: length(twist / 2),
        past: length(twist * (1 + TACKS_RETURN)),
        roll: { v: Math.atan2(twist, s.ramp.design.width), as: 'angle' },
      },
      plan: { twist_mm: shape.twist_mm },
    };
    findings.push(
      finding('frame-twisted', twist, c, [
        ...(welded
          ? [offer(c, 'untwist-saw-open', 120, afterTape(twist))]
          : [offer(c, 'untwist-strap', 30, afterStrap(twist))]),
        offer(c, 'pads-again', 10),
        offer(c, 'pack-feet', 8, twist),
        offer(c, 'leave-twist', 0, twist),
      ]),
    );
  }
  return findings;
};
