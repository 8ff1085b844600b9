import { GOOD_FOR_WEEKS, pieceStands } from '../derates.ts';
import { TURN } from '../order.ts';
import type { Ask, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { brokenIn, LOOKS, PIECES, roundKey, roundsOf, type TestPiece } from '../test-pieces.ts';
import { hotGates } from './hot-gates.ts';
import { numbered } from './numbered.ts';
import { onceAlone } from './once.ts';
import { settingNow } from './setting-now.ts';

/** What a closed slit of the bend test is opened to, rad, without a tear (bench rule; common practice). */
const OPENED_TO = (20 * Math.PI) / 180;

const angle = (v: number) => ({ v, as: 'angle' }) as const;

/** Pieces this build wants broken: a rail rolled by a fabricator has no slits. */
const wanted = (s: Situation): readonly TestPiece[] =>
  PIECES.filter(piece => piece !== 'slit' || s.ramp.design.route === 'slit');

type Round = Readonly<{ round: number; pieces: readonly TestPiece[] }>;

/**
 * The round that counts now, and its pieces. What failed or lapsed is welded again in a round of its own; the rest of a round that was
 * begun is broken first.
 */
const tellRound = (s: Situation): Round => {
  const last = roundsOf(s);
  const all = wanted(s);
  const open = all.filter(piece => pieceStands(s, piece).why !== 'held');
  const read = all.filter(piece => brokenIn(s, last, piece) !== null);
  if (open.length === 0) return { round: last, pieces: last === 1 ? all : read };
  const lapsed = read.some(piece => pieceStands(s, piece).why === 'lapsed');
  const nothingLeft = open.every(piece => read.includes(piece));
  return read.length > 0 && !s.build.skips.has(roundKey(last)) && (lapsed || nothingLeft)
    ? { round: last + 1, pieces: open }
    : { round: last, pieces: all.filter(piece => read.includes(piece) || open.includes(piece)) };
};

const roundNow = onceAlone(tellRound);

/** The test pieces that every weld of the job waits for now. */
export const couponsKey = (s: Situation): string => roundKey(roundNow(s).round);

/** Why a later round is asked: something lapsed, or did not hold. */
const againWords = (s: Situation, pieces: readonly TestPiece[]): string => {
  const lapse = pieces.map(piece => pieceStands(s, piece).lapse).find(l => l !== undefined);
  if (lapse === undefined) return 'coupons-again';
  return lapse === 'long pause' ? 'coupons-pause' : 'coupons-changed';
};

/** Test welds that are broken before one on the job is trusted, each looked at; and again what did not hold, or lapsed. */
export const couponSteps = (s: Situation): readonly StepDraft[] => {
  const { round, pieces } = roundNow(s);
  const key = roundKey(round);
  const slit = s.ramp.design.route === 'slit';
  const slits = settingNow(s, 'slits');
  // Pieces an older journal ticked off stay ticked; the rest is told by what was seen.
  const ticked = pieces.filter(piece => s.build.ticks.has(`${key}#${piece}`));
  const items: readonly Item[] = ticked.map(piece => ({ key: `${key}#${piece}`, name: piece }));
  const asks: readonly Ask[] = pieces
    .filter(piece => !ticked.includes(piece))
    .map(piece => numbered(piece, 1, LOOKS.length));
  const unread = pieces.some(piece => brokenIn(s, round, piece) === null);
  return [
    {
      key,
      stage: 'weld',
      words: round > 1 && unread ? againWords(s, pieces) : slit ? 'coupons' : 'coupons-rolled',
      fills: { opened: angle(OPENED_TO), weeks: GOOD_FOR_WEEKS, pieces: asks.length },
      turn: TURN.testWeld + 40,
      needs: ['weld/settings', 'prep/weather', 'prep/dry-steel', 'prep/body'],
      uses: ['weld-amps', 'joint-amps', 'weld-kind', 'weld-wire', 'weld-wall', 'joint-wall'],
      ...(slits === null ? {} : { tall: slits.set.feed_m_min === null ? ['weld-amps', 'joint-amps'] : [] }),
      ...(items.length > 0 ? { items } : {}),
      ...(asks.length > 0 ? { asks } : {}),
      gates: hotGates(s),
      cautions: ['weld-fume'],
      minutes: round > 1 ? [20 * pieces.length, 40 * pieces.length] : [45, 90],
    },
  ];
};
