import { readingKey } from '../../build/fold.ts';
import type { Outcome } from '../../quantity/outcome.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Member } from '../../ramp/members.ts';
import type { SpringBackRow } from '../../reckon/statics/spring-back.ts';
import type { SpringBackNow, SpringBackQuestion } from '../heavy/spring-back-answer.ts';
import { largest } from '../rail-findings/reading.ts';
import { type Ask, answer, type Situation } from '../situation.ts';
import { type Clamped, clampedRail } from './forced-rail.ts';

/** A pull of less than this springs back by nothing that a tape shows, mm. */
const NOTHING = 0.5;
/** An upright tacked on its four sides holds as much as this share of a welded one (common practice). */
const TACKED = 0.3;

const rounded = (v: number, to: number): number => Math.round(v / to) * to;

/** The question as plain numbers: rounded, so that the same survey asks the same. */
export const springBackAsk = (
  clamped: Clamped,
  next?: SpringBackQuestion['next'],
): Ask & { input: SpringBackQuestion & { want: 'now' } } => {
  const f = clamped.forced;
  const mm = (v: number) => rounded(v, 1e-3);
  const forced: SpringBackQuestion['forced'] = {
    ...f,
    line: f.line.map(p => ({ x: mm(p.x), y: mm(p.y) })),
    clamps: f.clamps.map(c => ({ at_mm: mm(c.at_mm), forced_mm: mm(c.forced_mm) })),
  };
  return {
    topic: 'spring-back',
    input: { forced, diagonal: clamped.post, want: 'now', ...(next === undefined ? {} : { next }) },
  };
};

export type SpringBackFigures = Readonly<{
  asked: Ask | null;
  /** Worst pull of the clamps, mm; null where nothing says so yet. */
  forced_mm: number | null;
  /** What comes back if the clamps are let go now, and with the next upright welded, mm; null while unknown. */
  now_mm: number | null;
  next_mm: number | null;
  /** The next upright. */
  next: string | null;
  /** Each clamp, as named on the rail, and what it holds, N, + toward the centre. */
  clamps: readonly Readonly<{ name: string; along_mm: number; force_N: number }>[];
}>;

/** How much of an upright or a diagonal holds by now, by the ticks of fitting and welding. */
const holdsNow = (s: Situation, rail: RailName) => {
  const { ticks } = s.build;
  const uprightsWelded = ticks.has(`brace/weld-uprights@${rail}`);
  const diagonalsWelded = ticks.has(`brace/weld-diagonals@${rail}`);
  return (m: Member): 0 | 0.3 | 1 => {
    if (m.kind === 'diagonal') return diagonalsWelded ? 1 : 0;
    const name = m.flat === undefined ? 'lip' : String(m.flat);
    if (!ticks.has(`brace/fit-uprights@${rail}#${name}`) && !ticks.has(`brace/fit-uprights@${rail}`))
      return 0;
    return uprightsWelded ? 1 : TACKED;
  };
};

/** How far a clamped rail is pulled, mm at worst, and how far it would lie off at a back-wall distance if it were free. */
type Pulled = Readonly<{ forced_mm: number; offAt: (along_mm: number) => number }>;

/** The counting survey's shape, scaled to what was read at the blocks where that was read; null before a survey. */
const pulledOf = (s: Situation, rail: RailName): Pulled | null => {
  const shape = s.ramp.shapes.get(rail);
  const plan = s.ramp.plans.get(rail);
  if (shape === undefined || plan === undefined || shape.survey === null) return null;
  const spots = Array.from({ length: 13 }, (_, k) => shape.offsetAt((k * plan.toLip_mm) / 12));
  const read = s.build.readings.get(readingKey(`brace/forced@${rail}`, 'forced'))?.value;
  const worst = largest(spots);
  const forced_mm = read === undefined ? worst : Math.abs(read);
  // A survey that found nothing and a gap at the blocks all the same: of such a pull the size is known and not the shape. Taken
  // as an even bend that rests on its blocks at both ends and gapes between [derived].
  const even = (along: number): number => {
    const share = along / plan.toLip_mm;
    return 4 * forced_mm * share * (1 - share);
  };
  const offAt = (along: number): number =>
    worst < NOTHING ? even(along) : (shape.offsetAt(along) * forced_mm) / worst;
  return { forced_mm, offAt };
};

/**
 * What a clamped rail does if it is let go now: with the uprights and diagonals that are in, and with one upright more.
 */
export const springBackFigures = (s: Situation, rail: RailName): SpringBackFigures => {
  const none = { asked: null, forced_mm: null, now_mm: null, next_mm: null, next: null, clamps: [] } as const;
  const pulled = pulledOf(s, rail);
  if (pulled === null) return none;
  const { forced_mm, offAt } = pulled;
  if (forced_mm < NOTHING) return { ...none, forced_mm, now_mm: 0, next_mm: 0 };
  const holds = holdsNow(s, rail);
  const clamped = clampedRail(s, rail, offAt, holds);
  if (clamped === null) return { ...none, forced_mm };
  const next = s.ramp.members.find(m => m.rail === rail && /upright/.test(m.kind) && holds(m) === 0);
  const ask = springBackAsk(clamped, next === undefined ? undefined : clamped.uprightOf(next, 1));
  const known = answer<Outcome<SpringBackNow>>(s.answers, ask);
  const name = next === undefined ? null : next.flat === undefined ? 'lip' : String(next.flat);
  if (known.is === 'pending') return { ...none, asked: ask, forced_mm, next: name };
  if (!known.value.ok) return { ...none, forced_mm, next: name };
  const { now_mm, next_mm, clamps } = known.value.value;
  return {
    asked: null,
    forced_mm,
    now_mm,
    next_mm,
    next: name,
    clamps: clamped.clamps.map((c, k) => ({
      name: c.name,
      along_mm: c.along_mm,
      force_N: clamps[k]?.force_N ?? 0,
    })),
  };
};

export type SpringBackTable = Readonly<{ asked: Ask | null; rows: readonly SpringBackRow[] | null }>;

/**
 * What comes back with the first upright from the lip welded, the first two, and so on: base rail loose, loose with the diagonals
 * between them, and held down. Nothing of it hangs on what is in by now.
 */
export const springBackRows = (s: Situation, rail: RailName): SpringBackTable => {
  const pulled = pulledOf(s, rail);
  const clamped =
    pulled === null || pulled.forced_mm < NOTHING ? null : clampedRail(s, rail, pulled.offAt, () => 1);
  if (clamped === null) return { asked: null, rows: null };
  const { input } = springBackAsk(clamped);
  const { want: _, ...question } = input;
  const fromLip = [...question.forced.uprights].sort((a, b) => b.at_mm - a.at_mm);
  const ask: Ask = {
    topic: 'spring-back',
    input: { ...question, forced: { ...question.forced, uprights: fromLip, diagonals: [] } },
  };
  const known = answer<Outcome<readonly SpringBackRow[]>>(s.answers, ask);
  if (known.is === 'pending') return { asked: ask, rows: null };
  return { asked: null, rows: known.value.ok ? known.value.value : null };
};
