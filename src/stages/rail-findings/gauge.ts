import { readingKey, type Survey } from '../../build/fold.ts';
import { arcLength, type RailPlan as Line } from '../../reckon/rail/rail-plan.ts';
import type { Situation } from '../situation.ts';

/** Asks of the step that lays an angle gauge across suspected slits, one a slit, the likeliest first. */
export const GAUGE_ASKS = ['first', 'second', 'third', 'fourth'] as const;

/** What a gauge says of one slit: closed more (+) or less (−) than its line asks, rad. */
export type GaugeRead = Readonly<{ slit: number; turn_rad: number }>;

/** Bend that a line asks between the flats beside a slit, counted from 1, rad: flats touch the line at their middles. */
export const bendAcross = (line: Line, slit: number): number => {
  const at = line.slits_mm;
  const end = arcLength(line);
  const middle = (flat: number): number =>
    flat <= 0 ? 0 : flat >= at.length ? end : ((at[flat - 1] ?? 0) + (at[flat] ?? end)) / 2;
  return (middle(slit) - middle(slit - 1)) / line.radius_mm;
};

/** The step that a choice of the gauge brought, and the slits it asks for. */
export const gaugeStep = (stage: string, entry: string): string => `${stage}/gauge@${entry}`;

/** What the gauge read of slits of this survey's rail; empty while it was not laid, or not all of what was asked is read. */
export const gaugeReads = (s: Situation, survey: Survey, line: Line): readonly GaugeRead[] => {
  const stage = survey.phase === 'tacked' ? 'tack' : 'weld';
  return s.build.chosen
    .filter(c => c.remedy === 'gauge-flats' && c.plan.survey === survey.id)
    .flatMap(c => {
      const slits = Array.isArray(c.plan.slits) ? c.plan.slits : [];
      const reads = slits.flatMap((slit: unknown, k): GaugeRead[] => {
        const ask = GAUGE_ASKS[k];
        const read =
          ask === undefined ? undefined : s.build.readings.get(readingKey(gaugeStep(stage, c.entry), ask));
        if (typeof slit !== 'number' || slit < 1 || slit > line.slits_mm.length || read === undefined)
          return [];
        return [{ slit, turn_rad: read.value - bendAcross(line, slit) }];
      });
      return reads.length === slits.length ? reads : [];
    });
};
