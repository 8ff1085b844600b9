import { onBackWall } from '../rail-findings/reading.ts';
import {
  angle,
  BENCH,
  frozenRows,
  frozenText,
  type Injecting,
  length,
  listed,
  type Offering,
  offer,
  railOf,
  stageOfPhase,
} from './remedy.ts';
import { leverOf } from './slit-limits.ts';
import { beforeSurvey } from './turns.ts';

/** Marking, three cuts, deburring, closing, tacking; and the weld where the others are welded (common practice). */
const MINUTES = { once: 15, tacked: 20, welded: 40 } as const;

type NewSlit = Readonly<{
  /** Number of the slit before it. */
  behind: number;
  /** Along the back wall from the entry end, mm. */
  at_mm: number;
  /** Closing before its weld pulls, rad. */
  close_rad: number;
  gap_mm: number;
}>;

/** A rail that bends too little all along gets a few slits more, midway between others. */
export const offerAddSlit: Offering = c => {
  const fresh = c.answer?.fresh ?? null;
  if (fresh === null) return [];
  const { r } = c;
  const slits = fresh.slits.map((x): NewSlit => {
    const close_rad = x.turn_rad - r.plan.pull.rad;
    return {
      behind: x.slit,
      at_mm: onBackWall(r.plan, r.line, x.at_mm),
      close_rad,
      gap_mm: Math.max(0, r.plan.kerf_mm - leverOf(r.tube) * close_rad),
    };
  });
  if (slits.some(x => x.close_rad <= 0)) return [];
  return [
    offer(
      c,
      'add-slit',
      MINUTES.once + slits.length * (r.survey.phase === 'cold' ? MINUTES.welded : MINUTES.tacked),
      fresh.after_mm,
      { count: slits.length, behind: listed(slits.map(x => x.behind)) },
      { fresh: slits },
    ),
  ];
};

export const addSlitSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const slits = frozenRows<NewSlit>(chosen, 'fresh', ['behind', 'at_mm', 'close_rad', 'gap_mm']);
  if (on === null || slits.length === 0) return [];
  const phase = frozenText(chosen, 'phase');
  const stage = stageOfPhase(phase);
  const name = (x: NewSlit): string => `${x.behind}+`;
  const saw = `${stage}/add-slit-saw@${chosen.entry}`;
  const close = `${stage}/add-slit-close@${chosen.entry}`;
  const fills = { ...BENCH, rail: on.rail, count: slits.length, behind: listed(slits.map(x => x.behind)) };
  const base = { stage, fills, uses: [], line: { face: 'hinge line', rail: on.rail } } as const;
  const n = slits.length;
  return [
    {
      ...base,
      key: saw,
      words: 'add-slit-saw',
      turn: beforeSurvey(s, on.index, phase, 0),
      needs: [],
      items: slits.map(x => ({ key: `${saw}#${name(x)}`, name: name(x), value: { v: x.at_mm, as: 'slit' } })),
      minutes: [n * 10, n * 18],
    },
    {
      ...base,
      key: close,
      words: phase === 'cold' ? 'add-slit-weld' : 'add-slit-close',
      turn: beforeSurvey(s, on.index, phase, 1),
      needs: [saw],
      items: slits.map(x => ({
        key: `${close}#${name(x)}`,
        name: name(x),
        value: length(x.gap_mm),
        second: angle(x.close_rad),
      })),
      minutes: [n * 8, n * 16],
    },
  ];
};
