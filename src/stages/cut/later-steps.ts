import type { Member, MemberKind } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import { pieceName } from '../piece-findings.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { pieceAsk } from './receive-steps.ts';

/** Members between the rails: they are cut when the rails have come out, never before. */
export const BETWEEN_RAILS: readonly MemberKind[] = ['crossmember', 'base crossmember', 'rear diagonal'];

const item = (m: Member): Item => ({
  key: `cut/crossmembers#${m.need}`,
  name: pieceName(m.need),
  value: { v: m.long_mm, as: 'length' },
  ...(m.ends.first_rad === 0 ? {} : { second: { v: m.ends.first_rad, as: 'angle' } }),
  ...(m.along_mm === undefined
    ? {}
    : { note: { words: 'says.cut-crossmember-at', fills: { along: { v: m.along_mm, as: 'length' } } } }),
  piece: pieceAsk(m),
});

/** Crossmembers, base crossmembers and the diagonals between the rails, one key each. */
export const laterSteps = (s: Situation): readonly StepDraft[] => {
  const members = s.ramp.members.filter(m => BETWEEN_RAILS.includes(m.kind));
  if (members.length === 0) return [];
  return [
    {
      key: 'cut/crossmembers',
      stage: 'cut',
      words: 'crossmembers',
      fills: {
        count: members.length,
        width: { v: s.ramp.design.width, as: 'length' },
      },
      turn: TURN.fit,
      needs: s.ramp.rails.map(rail => `weld/cold-survey@${rail}`),
      uses: ['cross-length'],
      tall: ['cross-length'],
      line: { face: 'rail top face' },
      items: members.map(item),
      minutes: [4 * members.length, 6 * members.length],
      cautions: ['cut-wood-saw'],
    },
  ];
};
