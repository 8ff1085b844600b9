import { type Member, sectionName } from '../../ramp/members.ts';
import type { Figure, Item, PieceAsk } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './limits.ts';
import { standName } from './side.ts';

/** The survey a side frame's lengths stand on, as a figure's own field: nothing while they are as drawn. */
export const standsOn = (s: Situation, m: Member): { on?: string } => {
  const survey = s.ramp.shapes.get(m.rail ?? '')?.survey ?? null;
  return survey === null ? {} : { on: survey };
};

const pieceOf = (m: Member): PieceAsk => ({
  need: m.need,
  section: sectionName(m.tube),
  long_mm: m.long_mm,
  ends_rad: [m.ends.first_rad, m.ends.second_rad],
});

/** One piece to cut: long point, short point, and its end cuts in a few letters. */
export const pieceItem = (step: string, m: Member): Item => ({
  key: `${step}#${standName(m)}`,
  name: standName(m),
  value: { v: m.long_mm, as: 'length' },
  second: { v: m.short_mm, as: 'length' },
  note: {
    words: m.ends.first_rad === 0 ? 'says.brace-one-cut' : 'says.brace-two-cuts',
    fills: {
      base: { v: m.ends.first_rad, as: 'angle' },
      rail: { v: m.ends.second_rad, as: 'angle' },
    },
  },
  piece: pieceOf(m),
});

/** Subject of a piece's figures: `A:9`, `A:lip`. */
export const subjectOf = (m: Member): string => `${m.rail}:${standName(m)}`;

/** Both points and both end cuts of a piece, each a figure of its own; `kind` begins their names. */
export const pieceFigures = (s: Situation, kind: 'upright' | 'diagonal', m: Member): readonly Figure[] => {
  const at = subjectOf(m);
  const on = standsOn(s, m);
  const length = (id: string, v: number): Figure => ({
    id: `${kind}-${id}@${at}`,
    kind: 'dimension',
    as: 'length',
    line: m.line,
    value: { is: 'exact', v },
    matters: MATTERS.cut,
    ...on,
  });
  const angle = (id: string, v: number): Figure => ({
    id: `${kind}-${id}@${at}`,
    kind: 'size',
    as: 'angle',
    value: { is: 'exact', v },
    matters: MATTERS.angle,
    ...on,
  });
  return [
    length('long', m.long_mm),
    length('short', m.short_mm),
    angle('base-cut', m.ends.first_rad),
    angle('rail-cut', m.ends.second_rad),
  ];
};

/** The piece whose numbers the words of a step name: the first not cut yet, else the last. */
export const nextToCut = (s: Situation, pieces: readonly Member[]): Member | undefined =>
  pieces.find(m => !s.build.pieces.some(p => p.serves === m.need && p.fate !== 'spoiled')) ?? pieces.at(-1);
