import type { Doing } from '../../src/build/entries.ts';
import type { Situation } from '../../src/stages/situation.ts';
import { flatStations, offsetsOf } from '../../src/stages/slit-errors.ts';
import { DEG, read, set } from './doings.ts';
import { situationFor } from './situation-for.ts';

type Named = Doing & { id?: string };

/** An invented frame: R 3000, 45°, 40 × 40 × 3, slit with a 1.2 mm kerf. */
export const begun = (...more: Named[]): Named[] => [
  { kind: 'build-begun', name: 'Kiln Yard ramp', system: 'metric', invented: true },
  set('shape', { radius: 3000, exit: 45 * DEG }),
  set('deck', { kind: 'sheet', layer_mm: 9, layers: 2 }),
  ...more,
];

/** The doings that mark, close and read one third of a rail as its plan stands; `off` is what the gauge reads too much, rad. */
export const third = (doings: readonly Named[], rail: string, number: number, off = 0): Named[] => {
  const s = situationFor(doings);
  const slits = s.ramp.plans.get(rail)?.slits.filter(slit => slit.third === number) ?? [];
  const first = slits[0];
  if (first === undefined) throw new Error(`no third ${number}`);
  const marked: Named[] = [
    ...doings,
    {
      kind: 'slits-marked',
      rail,
      third: number,
      first: first.number,
      marks_mm: slits.map(slit => slit.at_mm),
      close_rad: first.close_rad,
      gap_mm: first.gap_mm,
      kerf_mm: s.ramp.plans.get(rail)?.kerf_mm ?? 1.2,
    },
  ];
  const before = s.build.readings.get(`tack/read-third@${rail}:${number - 1}#bent`)?.value ?? 0;
  const bent = before + first.close_rad * slits.length;
  return [...marked, read(`tack/read-third@${rail}:${number}`, 'bent', bent + off)];
};

/** A rail with all thirds closed and read. */
export const tacked = (doings: readonly Named[], rail = 'A'): Named[] =>
  [1, 2, 3].reduce((list, t) => third(list, rail, t), [...doings]);

let surveys = 0;

/** A closed survey of a rail, offsets to the half millimetre as a hand reads them. */
export const survey = (
  s: Situation,
  rail: string,
  phase: 'tacked' | 'half-welded' | 'cold',
  offsets: readonly number[],
  kind: 'curve' | 'sideways' = 'curve',
): Named[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) throw new Error(`no rail ${rail}`);
  const to = phase === 'cold' ? 'finished line' : 'tack line';
  const id = `survey-${++surveys}`;
  return [
    {
      kind: 'survey-opened',
      id,
      kind_of: kind,
      rail,
      phase,
      edge: 'rail bottom face',
      to,
      stations_mm: [...flatStations(plan, to)],
      read_to_mm: 0.5,
    },
    {
      kind: 'offsets-read',
      survey: id,
      readings: offsets.map((offset_mm, i) => ({
        station: i + 1,
        offset_mm: Math.round(offset_mm * 2) / 2,
        typed: String(offset_mm),
      })),
    },
    { kind: 'survey-closed', survey: id },
  ];
};

/** Offsets a rail would show on the tack line whose slits are bent more by so much each, rad. */
export const bentBy = (s: Situation, rail: string, errorOf: (slit: number) => number): readonly number[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) throw new Error(`no rail ${rail}`);
  return offsetsOf(
    plan,
    'tack line',
    plan.slits.map(slit => errorOf(slit.number)),
  );
};
