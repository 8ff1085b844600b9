import type { Member } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import { pieceName } from '../piece-name.ts';
import type { Item, Phrase, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { DISC_FITS } from './disc-speed.ts';

/** A vent before the closing weld, and a drain at the low point, mm (common practice). */
const VENT = [5, 6] as const;
const DRAIN = [8, 10] as const;
/** No hole this near to a slit or an upright, mm; bright metal this far from every joint (common practice). */
const CLEAR = 25;
const CLEAN_BACK = 25;
/** Edge taken off, mm (common practice). */
const EDGE = 1;
/** Gap a dry fit may show, mm (common practice). */
export const FIT_GAP = 1.5;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const length = (v: number) => ({ v, as: 'length' }) as const;

const isClosed = (m: Member): boolean => m.vents + m.drains > 0;

/** Members that are cut in one go: the uprights of one rail, its diagonals. */
const batchOf = (m: Member): string => `${m.kind === 'lip upright' ? 'upright' : m.kind}@${m.rail ?? ''}`;

/**
 * Members whose steel is in hand: cut with the rails, or all of their like are cut. One by one they would call the drill out
 * after every saw cut.
 */
const inHand = (s: Situation): readonly Member[] => {
  const cut = new Set(s.build.pieces.filter(p => p.fate !== 'spoiled').map(p => p.serves));
  const waiting = new Set(s.ramp.members.filter(m => !cut.has(m.need)).map(batchOf));
  return s.ramp.members.filter(
    m =>
      m.when === 'now' ||
      m.kind === 'crossmember' ||
      m.kind === 'base crossmember' ||
      !waiting.has(batchOf(m)),
  );
};

const holesNote = (m: Member): Phrase => ({
  words:
    m.drains === 0 ? 'says.prep-vent' : m.drains === 1 ? 'says.prep-vent-drain' : 'says.prep-vent-drains',
  fills: { vents: m.vents, drains: m.drains },
});

/**
 * Closed members to drill, those in hand first of all: an upright comes onto the list once it is cut, so that no tube is closed
 * without its vent.
 */
const holeItems = (s: Situation): readonly Item[] =>
  inHand(s)
    .filter(isClosed)
    .map(m => ({ key: `prep/vents#${m.need}`, name: pieceName(m.need), note: holesNote(m) }));

/** Holes, edges, bright metal and the dry fit: before any two members meet. */
export const fitSteps = (s: Situation): readonly StepDraft[] => {
  const { rails } = s.ramp;
  const items = holeItems(s);
  const measured = rails.map(rail => `weld/cold-survey@${rail}`);
  return [
    {
      key: 'prep/vents',
      stage: 'prep',
      words: 'vents',
      fills: {
        'vent-low': length(VENT[0]),
        'vent-high': length(VENT[1]),
        'drain-low': length(DRAIN[0]),
        'drain-high': length(DRAIN[1]),
        clear: length(CLEAR),
        more: s.ramp.members.filter(isClosed).length - items.length,
      },
      turn: TURN.fit + 20,
      needs: measured,
      uses: ['vent-count', 'drain-count'],
      items,
      cautions: ['prep-closed-tube'],
      minutes: [2 * items.length, 4 * items.length],
    },
    {
      key: 'prep/edges',
      stage: 'prep',
      words: 'edges',
      fills: { edge: length(EDGE) },
      turn: TURN.fit + 30,
      needs: [...measured, DISC_FITS],
      uses: [],
      minutes: [20, 40],
    },
    {
      key: 'prep/clean-back',
      stage: 'prep',
      words: 'clean-back',
      fills: { back: length(CLEAN_BACK) },
      turn: TURN.fit + 40,
      needs: ['prep/edges', DISC_FITS],
      uses: [],
      cautions: ['prep-zinc'],
      minutes: [60, 120],
    },
    {
      key: 'prep/fit',
      stage: 'prep',
      words: 'fit',
      fills: { gap: thickness(FIT_GAP) },
      turn: TURN.fit + 50,
      needs: [`brace/uprights@${rails[0] ?? 'A'}`, 'prep/clean-back'],
      uses: [],
      asks: [{ ask: 'gap', as: 'thickness', expected: [0, FIT_GAP], possible: [0, 15] }],
      minutes: [15, 30],
    },
  ];
};
