import type { Member, MemberKind } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import { pieceName } from '../piece-findings.ts';
import type { Fills, Item, Phrase, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { pieceAsk } from './receive-steps.ts';
import { sawNeeds } from './saw-steps.ts';

/** Members between the rails: they are cut when the rails have come out, never before. */
export const BETWEEN_RAILS: readonly MemberKind[] = ['crossmember', 'base crossmember', 'rear diagonal'];

/** What stands under a lit piece: where a crossmember goes, or both mitres of a diagonal, which one figure beside it cannot tell. */
const noteOf = (m: Member): Phrase | undefined => {
  if (m.ends.first_rad !== 0) {
    const fills: Fills = {
      short: { v: m.short_mm, as: 'length' },
      first: { v: m.ends.first_rad, as: 'angle' },
      second: { v: m.ends.second_rad, as: 'angle' },
    };
    return { words: 'says.cut-diagonal-ends', fills };
  }
  return m.along_mm === undefined
    ? undefined
    : { words: 'says.cut-crossmember-at', fills: { along: { v: m.along_mm, as: 'length' } } };
};

const item = (m: Member): Item => {
  const note = noteOf(m);
  return {
    key: `cut/crossmembers#${m.need}`,
    name: pieceName(m.need),
    value: { v: m.long_mm, as: 'length' },
    ...(m.ends.first_rad === 0 ? {} : { second: { v: m.ends.first_rad, as: 'angle' } }),
    ...(note === undefined ? {} : { note }),
    piece: pieceAsk(m),
  };
};

/** Plate and bearers of the entry, one key each: bearers come off a bar as they are, the plate is held against what the yard cut. */
const entryStep = (s: Situation): StepDraft => {
  const { pieces, bearers } = s.ramp.entry;
  return {
    key: 'cut/entry',
    stage: 'cut',
    words: 'entry',
    fills: { count: bearers.length, width: { v: s.ramp.design.width, as: 'length' } },
    turn: TURN.fit + 1,
    needs: ['cut/check-steel', ...sawNeeds(s)],
    uses: [],
    items: pieces.map(m => ({
      key: `cut/entry#${m.need}`,
      name: pieceName(m.need),
      value: { v: m.long_mm, as: 'length' },
      second: { v: m.kind === 'entry plate' ? m.tube.depth_mm : m.tube.width_mm, as: 'length' },
      piece: pieceAsk(m),
    })),
    minutes: [10 + 4 * bearers.length, 15 + 6 * bearers.length],
    cautions: ['cut-wood-saw'],
  };
};

const acrossStep = (s: Situation, members: readonly Member[]): StepDraft => ({
  key: 'cut/crossmembers',
  stage: 'cut',
  words: 'crossmembers',
  fills: {
    count: members.length,
    width: { v: s.ramp.design.width, as: 'length' },
  },
  turn: TURN.fit,
  needs: [...s.ramp.rails.map(rail => `weld/cold-survey@${rail}`), ...sawNeeds(s)],
  uses: ['cross-length'],
  tall: ['cross-length'],
  line: { face: 'rail top face' },
  items: members.map(item),
  minutes: [4 * members.length, 6 * members.length],
  cautions: ['cut-wood-saw'],
});

/** Crossmembers, base crossmembers and the diagonals between the rails, one key each; then what the entry is made of. */
export const laterSteps = (s: Situation): readonly StepDraft[] => {
  const members = s.ramp.members.filter(m => BETWEEN_RAILS.includes(m.kind));
  const across: readonly StepDraft[] = members.length === 0 ? [] : [acrossStep(s, members)];
  return [...across, entryStep(s)];
};
