import type { Build, Survey } from '../../build/fold.ts';
import type { Stage } from '../../stages/sheet.ts';
import { DAYS, look, type Open, offsetAgain } from './open.ts';

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
          asks: again.map(([ask, at]) => offsetAgain(ask, survey, survey.readings[at]?.offset_mm ?? 0)),
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
