import type { Finding } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { DOOR_CLEAR, helpersSaid, liftPeople } from './place.ts';

const doorFinding = (s: Situation): readonly Finding[] => {
  const { envelope: e, design: d } = s.ramp;
  if (e.fits) return [];
  const most = d.door.width_mm - 2 * DOOR_CLEAR;
  const sides = [e.length_mm, e.width_mm, e.height_mm].sort((a, b) => a - b);
  return [
    {
      key: 'door',
      stage: 'plan',
      severity: 'fix',
      words: 'door',
      fills: {
        door: { v: d.door.width_mm, as: 'length' },
        smallest: { v: sides[0] ?? 0, as: 'length' },
        second: { v: sides[1] ?? 0, as: 'length' },
        clear: { v: DOOR_CLEAR, as: 'length', step: 1 },
      },
      offers: [
        { remedy: 'door-bolted', minutes: 60, plan: { bolted: 'crossmembers' } },
        { remedy: 'door-outside', minutes: 0, plan: { place: 'outside' } },
        {
          remedy: 'door-narrower',
          fills: { width: { v: Math.max(0, Math.floor(most / 10) * 10), as: 'length' } },
          minutes: 3,
          plan: { field: 'width', value: Math.max(0, Math.floor(most / 10) * 10) },
        },
        { remedy: 'door-measure', minutes: 5, plan: { field: 'door' } },
        { remedy: 'leave-door', minutes: 0, plan: {} },
      ],
    },
  ];
};

const helpersFinding = (s: Situation): readonly Finding[] => {
  const said = helpersSaid(s);
  const people = liftPeople(s);
  if (said === null || said + 1 >= people) return [];
  return [
    {
      key: 'few-helpers',
      stage: 'plan',
      severity: 'watch',
      words: 'few-helpers',
      fills: {
        people,
        here: said + 1,
        mass: { v: s.ramp.masses.frame_kg, as: 'mass' },
      },
      offers: [
        { remedy: 'helpers-more', fills: { more: people - said - 1 }, minutes: 10, plan: { people } },
        { remedy: 'helpers-hoist', minutes: 60, plan: { hoist: true } },
        { remedy: 'helpers-sides', minutes: 90, plan: { bolted: 'side frames' } },
        { remedy: 'leave-helpers', minutes: 0, plan: {} },
      ],
    },
  ];
};

/** What the door, and the people who can come, say about the frame before it is built. */
export const placeFindings = (s: Situation): readonly Finding[] => [...doorFinding(s), ...helpersFinding(s)];
