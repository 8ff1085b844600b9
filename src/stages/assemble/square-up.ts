import type { RailName } from '../../ramp/design.ts';
import { clearWidth, type Member } from '../../ramp/members.ts';
import { baseLength, frameLimits, frameShape } from '../frame-findings.ts';
import { FACES, skipAround } from '../joint-order.ts';
import { jointScene } from '../joint-scene.ts';
import { TURN } from '../order.ts';
import type { Figure, Item, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './limits.ts';

const ACROSS = new Set(['crossmember', 'base crossmember', 'rear diagonal']);
/** Minutes for a crossmember: fitted and tacked, welded at both ends (common practice, first frame). */
const MINUTES = { fit: [7, 12], weld: [9, 16] } as const;
/** A hand's reading of one diagonal or width may be off by this much of what is expected, mm, before it is asked again. */
const ROUGHLY = 25;

const acrossOf = (s: Situation): readonly Member[] => s.ramp.members.filter(m => ACROSS.has(m.kind));

const WHERE: Readonly<Partial<Record<Member['kind'], string>>> = {
  'base crossmember': 'base ',
  'rear diagonal': 'diagonal',
};

/** What is written on a crossmember: `entry`, `6`, `base rear`; with more than two rails the pair comes first. */
const acrossName = (s: Situation, m: Member): string => {
  const [pair = '', place = ''] = (m.need.split('@')[1] ?? '').split(':');
  const own = `${WHERE[m.kind] ?? ''}${place}`;
  return s.ramp.rails.length > 2 ? `${pair} ${own}` : own;
};

/** Where it goes: along the back wall from the entry end on the rails, along the ground from the base rails' front. */
const acrossItem = (s: Situation, m: Member): Item => {
  const front = s.ramp.members.find(b => b.kind === 'base rail');
  const from = (front?.x_mm ?? 0) - (front?.long_mm ?? 0) / 2;
  const at = m.along_mm ?? m.x_mm - from;
  return {
    key: `assemble/crossmembers#${m.need.split('@')[1]}${m.kind === 'crossmember' ? '' : ` ${m.kind}`}`,
    name: acrossName(s, m),
    ...(m.kind === 'rear diagonal' ? {} : { value: { v: at, as: 'length' } as const }),
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
  const onRails = skipAround(across.filter(m => m.kind === 'crossmember'));
  const drawn = onRails[0] === undefined ? null : jointScene(s, onRails[0]);
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
    {
      key: 'assemble/weld',
      stage: 'assemble',
      words: 'weld',
      fills: {
        count: n,
        order: onRails.map(m => acrossName(s, m)).join(', '),
        one: FACES.crossmember[0],
        two: FACES.crossmember[1],
        first,
        last,
      },
      ...(drawn === null ? {} : { scene: drawn }),
      turn: TURN.assemble + 80,
      needs: ['assemble/width', 'assemble/diagonals', 'assemble/twist', 'prep/vents'],
      uses: [],
      cautions: ['crossmember-vents'],
      minutes: [n * MINUTES.weld[0], n * MINUTES.weld[1]],
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
