import type { RailName } from '../../ramp/design.ts';
import { clearWidth, type Member } from '../../ramp/members.ts';
import { baseLength, frameLimits, frameShape } from '../frame-findings.ts';
import { TURN } from '../order.ts';
import type { Figure, Item, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { acrossAt, acrossKey, acrossName, acrossOf } from './across.ts';
import { crossJointSteps, JOINTS } from './cross-joints.ts';
import { MATTERS } from './limits.ts';

/** Minutes for a crossmember fitted and tacked, and for the frame to go cold and be measured once more (common practice, first frame). */
const MINUTES = { fit: [7, 12], cold: [20, 40] } as const;
/** A hand's reading of one diagonal or width may be off by this much of what is expected, mm, before it is asked again. */
const ROUGHLY = 25;

const acrossItem = (s: Situation, m: Member): Item => {
  const at = acrossAt(s, m);
  return {
    key: `assemble/crossmembers#${acrossKey(m)}`,
    name: acrossName(s, m),
    ...(at === null ? {} : { value: { v: at, as: 'length' } as const }),
  };
};

const length = (v: number) => ({ v, as: 'length' }) as const;

const expectedDiagonal = (s: Situation): number => {
  const width = frameShape(s).width;
  const across = width === null ? s.ramp.design.width : (width.entry_mm + width.lip_mm) / 2;
  return Math.hypot(across, baseLength(s));
};

/** Tacking the frames together, then width, diagonals and twist before anything is welded for good. */
export const squareUpSteps = (s: Situation): readonly StepDraft[] => {
  const { rails, design: d } = s.ramp;
  const first: RailName = rails[0] ?? '';
  const last: RailName = rails.at(-1) ?? '';
  const across = acrossOf(s);
  const limits = frameLimits(s);
  const diagonal = expectedDiagonal(s);
  const n = across.length;
  return [
    {
      key: 'assemble/crossmembers',
      stage: 'assemble',
      words: 'crossmembers',
      fills: { count: n, first, last },
      turn: TURN.assemble + 40,
      needs: ['assemble/props', 'cut/crossmembers', 'prep/vents', 'prep/clean-back'],
      uses: ['clear-width'],
      line: { face: 'hinge line' },
      items: across.map(m => acrossItem(s, m)),
      minutes: [n * MINUTES.fit[0], n * MINUTES.fit[1]],
      scene: sideView(s, across[0] === undefined ? {} : { lit: across[0].need }),
    },
    {
      key: 'assemble/width',
      stage: 'assemble',
      words: 'width',
      fills: { first, last, limit: length(limits.width) },
      turn: TURN.assemble + 50,
      needs: ['assemble/crossmembers'],
      uses: ['width-over-rails'],
      tall: ['width-over-rails'],
      asks: (['entry', 'lip'] as const).map(ask => ({
        ask,
        as: 'length',
        expected: [d.width - ROUGHLY, d.width + ROUGHLY],
        possible: [d.width / 2, d.width * 2],
      })),
      minutes: [5, 10],
    },
    {
      key: 'assemble/diagonals',
      stage: 'assemble',
      words: 'diagonals',
      fills: { first, last, limit: length(limits.diagonals) },
      turn: TURN.assemble + 60,
      needs: ['assemble/width'],
      uses: ['frame-diagonal'],
      tall: ['frame-diagonal'],
      line: { face: 'ground' },
      asks: (['d1', 'd2'] as const).map(ask => ({
        ask,
        as: 'length',
        expected: [diagonal - ROUGHLY, diagonal + ROUGHLY],
        possible: [diagonal / 2, diagonal * 2],
      })),
      minutes: [5, 15],
    },
    {
      key: 'assemble/twist',
      stage: 'assemble',
      words: 'twist',
      fills: { first, last, limit: length(limits.twist) },
      turn: TURN.assemble + 70,
      needs: ['assemble/pads', 'assemble/diagonals'],
      uses: [],
      line: { face: 'ground' },
      asks: [1, 2, 3, 4].map(k => ({
        ask: `c${k}`,
        as: 'length',
        expected: [0, d.tube.depth_mm + 10],
        possible: [0, 500],
        line: { face: 'ground' },
      })),
      minutes: [10, 20],
    },
    ...crossJointSteps(s),
    {
      key: 'assemble/weld',
      stage: 'assemble',
      words: 'weld',
      fills: { count: n, limit: length(limits.diagonals) },
      turn: TURN.assemble + 80,
      needs: ['assemble/width', 'assemble/diagonals', 'assemble/twist', JOINTS],
      uses: ['frame-diagonal'],
      minutes: [MINUTES.cold[0], MINUTES.cold[1]],
    },
  ];
};

/** Widths and diagonals asked for, and what the readings make of them. */
export const squareUpFigures = (s: Situation): readonly Figure[] => {
  const shape = frameShape(s);
  const size = (id: string, as: 'length' | 'angle', v: number | undefined, needs: string): Figure => ({
    id,
    kind: 'size',
    as,
    value: v === undefined ? { is: 'unknown', needs } : { is: 'exact', v },
    matters: as === 'angle' ? MATTERS.angle : MATTERS.length,
  });
  return [
    size('clear-width', 'length', clearWidth(s.ramp.design), 'plan/curve'),
    size('width-over-rails', 'length', s.ramp.design.width, 'plan/curve'),
    size('frame-diagonal', 'length', expectedDiagonal(s), 'plan/curve'),
    size('width-differs', 'length', shape.width?.differ_mm, 'assemble/width'),
    size('diagonals-differ', 'length', shape.diagonals?.differ_mm, 'assemble/diagonals'),
    size('skew', 'angle', shape.diagonals?.skew_rad, 'assemble/diagonals'),
    size('push', 'length', shape.diagonals?.shorten_mm, 'assemble/diagonals'),
    size(
      'frame-twist',
      'length',
      shape.twist_mm === null ? undefined : Math.abs(shape.twist_mm),
      'assemble/twist',
    ),
  ];
};
