import type { RailName } from '../../ramp/design.ts';
import { FACES, jointTacks, skipAround } from '../joint-order.ts';
import { jointScene } from '../joint-scene.ts';
import type { StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { FIT_GAP } from './limits.ts';
import { nextToCut, pieceItem, subjectOf } from './pieces.ts';
import { diagonalsOf, KEYS, standName } from './side.ts';

/** Minutes for one diagonal: two mitres cut, fitted and welded (common practice, first frame). */
const MINUTES = { cut: [12, 18], weld: [12, 20] } as const;

/** Diagonals of a side frame: none where every bay is too low to rack. */
export const diagonalSteps = (s: Situation, rail: RailName, turn: number): readonly StepDraft[] => {
  const diagonals = diagonalsOf(s, rail);
  const next = nextToCut(s, diagonals);
  if (next === undefined) return [];
  const n = diagonals.length;
  const fills = { rail, count: n, name: standName(next), gap: { v: FIT_GAP, as: 'length' } } as const;
  const at = subjectOf(next);
  const order = skipAround(diagonals);
  const joint = order[0] === undefined ? null : jointScene(s, order[0], 'foot');
  const { post, tube } = s.ramp.design;
  const tacks = jointTacks(post.wall_mm, tube.wall_mm, post.depth_mm);
  return [
    {
      key: KEYS.diagonals(rail),
      stage: 'brace',
      words: 'diagonals',
      fills,
      turn,
      needs: [KEYS.fit(rail)],
      uses: [
        `diagonal-long@${at}`,
        `diagonal-short@${at}`,
        `diagonal-base-cut@${at}`,
        `diagonal-rail-cut@${at}`,
      ],
      line: { face: 'rail bottom face', rail },
      items: diagonals.map(m => pieceItem(KEYS.diagonals(rail), m)),
      minutes: [n * MINUTES.cut[0], n * MINUTES.cut[1]],
      scene: sideView(s, { lit: next.need }),
    },
    {
      key: KEYS.weldDiagonals(rail),
      stage: 'brace',
      words: 'weld-diagonals',
      fills: {
        ...fills,
        order: order.map(standName).join(', '),
        one: FACES.diagonal[0],
        two: FACES.diagonal[1],
        tack: { v: tacks.long_mm, as: 'length' },
      },
      turn: turn + 10,
      needs: [KEYS.diagonals(rail), KEYS.weld(rail), 'prep/vents'],
      uses: [],
      minutes: [n * MINUTES.weld[0], n * MINUTES.weld[1]],
      ...(joint === null ? {} : { scene: joint }),
    },
  ];
};
