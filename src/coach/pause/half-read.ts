import type { Build, Survey } from '../../build/fold.ts';
import { limitsOf } from '../../stages/rail-findings/limits.ts';
import type { Fill, Finding, Offer, Stage } from '../../stages/sheet.ts';
import type { Situation } from '../../stages/situation.ts';
import type { Check } from './checks.ts';
import { type Again, DAYS, look, NEAR, type Open } from './open.ts';

const STAGE_OF: Readonly<Record<Survey['phase'], Stage>> = {
  tacked: 'tack',
  'half-welded': 'weld',
  cold: 'weld',
  braced: 'brace',
  unclamped: 'brace',
};

/** First, middle and last of the stations that were read; of fewer than three all there are. */
const spots = (read: readonly number[]): readonly (readonly [ask: string, at: number])[] => {
  const last = read.length - 1;
  const named = [
    ['first', 0],
    ['mid', Math.round(last / 2)],
    ['last', last],
  ] as const;
  return named
    .slice(0, read.length === 1 ? 1 : 3)
    .filter(([ask]) => read.length !== 2 || ask !== 'mid')
    .map(([ask, k]) => [ask, read[k] ?? 0] as const);
};

/**
 * A survey begun and laid aside: what was read of it and what is still to be read belong together only if the rail lies and bends as
 * it did, so some of its stations are read once more first.
 */
export const halfRead = (b: Build, rail: string): readonly Open[] =>
  b.surveys
    .filter(s => !s.closed && !s.retired && s.rail === rail)
    .flatMap((survey): readonly Open[] => {
      const read = survey.readings.flatMap((r, k) => (r === null ? [] : [k]));
      if (read.length === 0) return [];
      const again = spots(read);
      const number = (ask: string): number => (again.find(a => a[0] === ask)?.[1] ?? read[0] ?? 0) + 1;
      return [
        look({
          stage: STAGE_OF[survey.phase],
          name: 'half-read',
          subject: rail,
          rail,
          same: survey.id,
          days: DAYS.measured,
          asks: again.map(([ask, at]): Again => {
            const was = survey.readings[at]?.offset_mm ?? 0;
            return {
              ask,
              as: 'length',
              signed: true,
              was,
              expected: [was - NEAR, was + NEAR],
              possible: [-1000, 1000],
              line: survey.to,
            };
          }),
          holds: 'rail',
          line: survey.to,
          survey,
          fills: {
            rail,
            line: survey.to,
            edge: survey.kind === 'sideways' ? 'side' : survey.edge.replace('rail ', ''),
            read: read.length,
            all: survey.stations_mm.length,
            first: number('first'),
            mid: number('mid'),
            last: number('last'),
          },
          minutes: [3, 8],
        }),
      ];
    });

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
