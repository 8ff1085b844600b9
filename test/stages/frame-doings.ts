import type { Doing } from '../../src/build/entries.ts';
import type { SurveyPhase } from '../../src/stages/sheet.ts';
import { begun } from './doings.ts';
import { situationFor } from './situation-for.ts';

/** A closed survey of a rail: offsets at stations evenly along its line. */
export const survey = (
  rail: string,
  phase: SurveyPhase,
  offsets: readonly number[],
  stations: readonly number[],
): Doing[] => {
  const id = `survey-${rail}-${phase}`;
  return [
    {
      kind: 'survey-opened',
      id,
      kind_of: 'curve',
      rail,
      phase,
      edge: 'rail bottom face',
      to: 'finished line',
      stations_mm: [...stations],
      read_to_mm: 0.5,
    } as Doing,
    {
      kind: 'offsets-read',
      survey: id,
      readings: offsets.map((offset_mm, k) => ({ station: k + 1, offset_mm, typed: String(offset_mm) })),
    },
    { kind: 'survey-closed', survey: id },
  ];
};

export const situation = (...doings: Doing[]) => situationFor([begun(), ...doings]);
export const american = (...doings: Doing[]) => situationFor([begun('us'), ...doings]);

/** Five stations from the entry to the lip of the rail's finished line. */
export const stationsOf = (...doings: Doing[]): number[] => {
  const plan = situation(...doings).ramp.plans.get('A');
  const end = (plan?.finished.radius_mm ?? 0) * (plan?.turn_rad ?? 0);
  return [0, 0.25, 0.5, 0.75, 1].map(k => k * end);
};
