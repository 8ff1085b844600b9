import { TURN } from '../order.ts';
import { pieceFindings } from '../piece-findings.ts';
import { railFindings } from '../rail-findings.ts';
import { remedySteps } from '../remedies/steps.ts';
import type { Figure } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation, StageSheet } from '../situation.ts';
import { baseFigures, baseSteps } from './base.ts';
import { nearSlitFindings } from './clear-of-slits.ts';
import { diagonalSteps } from './diagonals.ts';
import { letGoSteps } from './let-go.ts';
import { MATTERS } from './limits.ts';
import { openedRise, openPerUpright } from './opening.ts';
import { pieceFigures } from './pieces.ts';
import { diagonalsOf, uprightsOf } from './side.ts';
import { springAsks, springFigures } from './spring-back.ts';
import { uprightSteps } from './uprights.ts';

/** Keys of the words of this stage's steps. */
export const STEPS = [
  'hold-base',
  'forced',
  'uprights',
  'uprights-drawn',
  'join-entry',
  'fit-uprights',
  'weld-joints',
  'weld-uprights',
  'diagonals',
  'weld-diagonals',
  'clamps',
  'survey',
] as const;

/** Turns kept free for one side frame. */
const SIDE = 100;

const sideFigures = (s: Situation, rail: string): readonly Figure[] => [
  ...baseFigures(s, rail),
  {
    id: `upright-opens@${rail}`,
    kind: 'size',
    as: 'angle',
    value: { is: 'exact', v: openPerUpright(s) },
    matters: MATTERS.angle,
  },
  {
    id: `rise-opens@${rail}`,
    kind: 'size',
    as: 'length',
    value: { is: 'band', ...openedRise(s, rail) },
    matters: MATTERS.movement,
  },
  ...springFigures(s, rail),
  ...uprightsOf(s, rail).flatMap(m => pieceFigures(s, 'upright', m)),
  ...diagonalsOf(s, rail).flatMap(m => pieceFigures(s, 'diagonal', m)),
];

/**
 * Uprights and bracing: each rail is held, gets its uprights and diagonals cut to the curve that exists, and is let go
 * only once they hold it. One side frame after the other: there is one jig.
 */
export const braceSheet: StageSheet = s => {
  const { rails } = s.ramp;
  const found = railFindings(s, 'brace');
  const asked = [...found.asked, ...rails.flatMap(rail => springAsks(s, rail))];
  return {
    stage: 'brace',
    figures: rails.flatMap(rail => sideFigures(s, rail)),
    steps: [
      ...rails.flatMap((rail, index) => {
        const turn = TURN.brace + index * SIDE;
        return [
          ...baseSteps(s, rail, turn),
          ...uprightSteps(s, rail, turn + 5),
          ...diagonalSteps(s, rail, turn + 40),
          ...letGoSteps(s, rail, turn + 60),
        ];
      }),
      ...remedySteps(s, 'brace'),
    ],
    findings: [
      ...found.findings,
      ...pieceFindings(s, ['lip upright', 'upright', 'diagonal'], 'brace'),
      ...nearSlitFindings(s),
    ],
    scene: sideView(s, rails[0] === undefined ? {} : { lit: rails[0] }),
    railScene: rail => sideView(s, { lit: rail }),
    ...(asked.length === 0 ? {} : { asked }),
  };
};
