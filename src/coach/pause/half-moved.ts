import { limitsOf } from '../../stages/rail-findings/limits.ts';
import type { Fill, Finding, Offer } from '../../stages/sheet.ts';
import type { Situation } from '../../stages/situation.ts';
import type { Check } from './checks.ts';
import type { Again } from './open.ts';

/** What was read before the pause and what is read now do not go together: the survey is begun anew, or the rail laid as it was. */
export const halfMoved = (
  s: Situation,
  check: Check,
  key: string,
  worst: Readonly<{ ask: Again; now: number; by: number; alike: number }>,
  entries: readonly string[],
): Finding => {
  const length = (v: number, sign?: true): Fill => ({ v, as: 'length', ...(sign ? { sign } : {}) });
  const fills = {
    rail: check.rail ?? '',
    days: check.pause.days,
    station: check.fills[worst.ask.ask] ?? '',
    was: length(worst.ask.was, true),
    now: length(worst.now, true),
    by: length(Math.abs(worst.by)),
    alike: length(worst.alike),
    read: check.fills.read ?? '',
  };
  const survey = check.survey?.id ?? '';
  const plan = { rail: check.rail ?? '', survey };
  const readings = s.build.live.filter(e => e.kind === 'offsets-read' && e.survey === survey).map(e => e.id);
  const offers: readonly Offer[] = [
    { remedy: 'pause-half-anew', fills, minutes: 15, plan: { ...plan, replaces: [...readings, ...entries] } },
    { remedy: 'pause-lay-again', fills, minutes: 10, plan: { ...plan, replaces: entries } },
    { remedy: 'pause-half-go-on', fills, minutes: 0, plan },
  ];
  return {
    key,
    stage: check.stage,
    severity: Math.abs(worst.by) > limitsOf(s).smooth ? 'fix' : 'watch',
    words: 'pause-half-moved',
    fills,
    tall: { v: Math.abs(worst.by), as: 'length' },
    worst_mm: Math.abs(worst.by),
    offers,
  };
};
