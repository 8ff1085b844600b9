import { BUMP_SD, JUMP_SD, type Oddity, READING_SD, RUN_SD, SWING_SD } from './hypotheses.ts';
import type { SurveyModel } from './survey-model.ts';

/** Half widths of a bump as shares of the line's length, and how many centres are tried along it. */
const BUMP_HALVES = [0.07, 0.1, 0.14, 0.19, 0.25, 0.33, 0.42];
const BUMP_CENTRES = 24;
/** With fewer stations a bump is no more than a few readings. */
const BUMP_STATIONS = 8;

/** Lengths of a run as shares of all slits; the shortest that is more than a few slits side by side; steps of its start. */
const RUNS = [0.15, 0.25, 0.35, 0.5];
const SHORTEST_RUN = 4;
const RUN_STEPS = 16;

/** Every oddity that is looked for, each with the sd of its size (mm; rad for a run). */
export function odditiesOf(model: SurveyModel): { oddities: Oddity[]; sds: number[] } {
  const { n, slits, length_mm } = model;
  const oddities: Oddity[] = [];
  const sds: number[] = [];
  const add = (oddity: Oddity, sd: number) => {
    oddities.push(oddity);
    sds.push(sd);
  };
  for (let station = 0; station < n; station++)
    for (const sd of READING_SD) add({ is: 'reading', station }, sd);
  for (let after = 1; after < n - 2; after++) {
    add({ is: 'jump', after }, JUMP_SD);
    add({ is: 'swing', after, about: 'entry' }, SWING_SD);
    add({ is: 'swing', after, about: 'lip' }, SWING_SD);
  }
  for (const share of RUNS) {
    const long = Math.round(share * slits);
    const step = Math.max(1, Math.round(slits / RUN_STEPS));
    if (long < SHORTEST_RUN) continue;
    for (let from = 0; from + long <= slits; from += step) add({ is: 'run', from, to: from + long }, RUN_SD);
  }
  if (n < BUMP_STATIONS) return { oddities, sds };
  for (const half of BUMP_HALVES) {
    if (half * n < 1.5) continue;
    for (let c = 1; c < BUMP_CENTRES; c++)
      add({ is: 'bump', at_mm: (c / BUMP_CENTRES) * length_mm, half_mm: half * length_mm }, BUMP_SD);
  }
  return { oddities, sds };
}
