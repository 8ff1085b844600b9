import type { RailName } from '../../ramp/design.ts';
import { jointTacks } from '../joint-order.ts';
import type { Figure, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { FORCED_FAR, forcedOf, holdingOf } from './holding.ts';
import { MATTERS } from './limits.ts';
import { KEYS } from './side.ts';

/** Blocks along the base rail on the jig, mm apart (common practice). */
const BLOCKS_APART = 400;
/** Bow of a base rail from a string, mm a metre (common practice). */
const STRAIGHT = 1;
/** Edge of a side plate that is welded, mm. */
const SIDE_PLATE = 100;

const baseLength = (s: Situation, rail: RailName): number =>
  s.ramp.members.find(m => m.need === `base rail@${rail}`)?.long_mm ?? 0;

/** Holding the base rail under the rail, reading how far the clamps will pull, joining both at the entry. */
export const baseSteps = (s: Situation, rail: RailName, turn: number): readonly StepDraft[] => {
  const long = baseLength(s, rail);
  const { tube } = s.ramp.design;
  const side = s.ramp.members.find(m => m.kind === 'side plate')?.tube;
  const plate = side?.wall_mm ?? tube.wall_mm;
  const seam = jointTacks(tube.wall_mm, plate, SIDE_PLATE);
  const fills = {
    rail,
    long: { v: long, as: 'length' },
    blocks: 2 * (Math.ceil(long / BLOCKS_APART) + 1),
    apart: { v: BLOCKS_APART, as: 'length' },
    far: { v: FORCED_FAR, as: 'length' },
    'tack-apart': { v: seam.apart_mm[0], as: 'length' },
    'tack-most': { v: seam.apart_mm[1], as: 'length' },
    'seam-tack': { v: seam.long_mm, as: 'length' },
    'plate-long': { v: side?.depth_mm ?? SIDE_PLATE, as: 'length' },
    'plate-wide': { v: side?.width_mm ?? SIDE_PLATE, as: 'length' },
    straight: { v: (long / 1000) * STRAIGHT, as: 'length' },
  } as const;
  return [
    {
      key: KEYS.hold(rail),
      stage: 'brace',
      words: 'hold-base',
      fills,
      turn,
      needs: [`weld/cold-survey@${rail}`],
      uses: [],
      line: { face: 'ground', rail },
      minutes: [25, 45],
    },
    {
      key: KEYS.forced(rail),
      stage: 'brace',
      words: 'forced',
      fills,
      turn: turn + 2,
      needs: [KEYS.hold(rail)],
      uses: [],
      line: 'finished line',
      asks: [{ ask: 'forced', as: 'length', expected: [0, 8], possible: [0, 100], line: 'finished line' }],
      minutes: [5, 10],
    },
    {
      key: KEYS.join(rail),
      stage: 'brace',
      words: 'join-entry',
      fills,
      turn: turn + 8,
      // Side plates close the entry ends of both tubes.
      needs: [KEYS.hold(rail), 'prep/vents', 'prep/clean-back'],
      uses: [],
      line: { face: 'rail bottom face', rail },
      minutes: [20, 35],
    },
  ];
};

export const baseFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const forced = forcedOf(s, rail);
  return [
    {
      id: `forced@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: 'finished line',
      value:
        forced === null
          ? { is: 'unknown', needs: KEYS.forced(rail) }
          : forced.read
            ? { is: 'exact', v: forced.mm }
            : { is: 'pending', meanwhile: forced.mm },
      matters: MATTERS.movement,
    },
    {
      id: `uprights-needed@${rail}`,
      kind: 'size',
      as: 'count',
      value: { is: 'exact', v: holdingOf(s, rail).needed },
      matters: 0.5,
    },
  ];
};
