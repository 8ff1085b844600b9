import { good, type Outcome } from '../../quantity/outcome.ts';
import type { ForcedRail, Stiff } from '../../reckon/statics/forced-rail.ts';
import {
  type SpringBack,
  type SpringBackRow,
  springBack,
  springBackTable,
} from '../../reckon/statics/spring-back.ts';

/** The rail as clamped. `uprights` and `diagonals` in it are what is counted, in the order they go in. */
export type SpringBackQuestion = Readonly<{
  forced: ForcedRail;
  /** Section of a diagonal, for the table. */
  diagonal: Stiff;
  /** `now`: what comes back with what is in today, and with one upright more; absent: the table by uprights welded. */
  want?: 'now';
  /** What one more upright would count as, with `now`. */
  next?: ForcedRail['uprights'][number];
}>;

export type SpringBackNow = Readonly<{
  /** Force each clamp holds, N, + toward the centre. */
  clamps: SpringBack['clamps'];
  /** Worst that comes back if let go now, and with the next upright welded, mm. */
  now_mm: number;
  next_mm: number | null;
  /** How many times as far as to its line it is best forced, and the worst left then, mm. */
  over: SpringBack['over'];
  /** Greatest stress in the rail while it is clamped to its line, MPa. */
  clamped_MPa: number;
  /** Worst that no brace at all would leave, mm. */
  bare_mm: number;
}>;

type AnswerTo<Q extends SpringBackQuestion> = Q extends { want: 'now' }
  ? Outcome<SpringBackNow>
  : Outcome<readonly SpringBackRow[]>;

const now = async (q: SpringBackQuestion): Promise<Outcome<SpringBackNow>> => {
  const today = await springBack(q.forced);
  if (!today.ok) return today;
  const more =
    q.next === undefined ? null : await springBack({ ...q.forced, uprights: [...q.forced.uprights, q.next] });
  if (more !== null && !more.ok) return more;
  return good({
    clamps: today.value.clamps,
    now_mm: today.value.worst_mm,
    next_mm: more === null ? null : more.value.worst_mm,
    over: today.value.over,
    clamped_MPa: today.value.clamped_MPa,
    bare_mm: today.value.unbraced_mm,
  });
};

/** What a clamped rail does when it is let go. Heavy: asked, and computed off the key's thread. Refuses as `springBack` does. */
export const springBackAnswer = async <Q extends SpringBackQuestion>(q: Q): Promise<AnswerTo<Q>> =>
  (q.want === 'now' ? await now(q) : await springBackTable(q.forced, q.diagonal)) as AnswerTo<Q>;
