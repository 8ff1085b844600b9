import { readingKey } from '../../build/fold.ts';
import { team } from '../../reckon/handling/team.ts';
import type { Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { frameBalance } from './balance.ts';

/** People on hand, the builder among them, as said in plan; null when nothing was said. */
export const handsSaid = (s: Situation): number | null => {
  const helpers = s.build.readings.get(readingKey('plan/helpers', 'helpers'))?.value;
  return helpers === undefined ? null : helpers + 1;
};

/** People it takes to lift the bare frame: its mass by what each may take of a shared load, never fewer than two. */
export const handsWanted = (s: Situation, mass_kg: number = frameBalance(s).mass_kg): number => {
  const asked = team({ mass_kg });
  return asked.ok ? asked.value.people : 2;
};

/** Whether those who were said to come are enough; null while nobody said. */
export const enoughHands = (s: Situation): boolean | null => {
  const said = handsSaid(s);
  return said === null ? null : said >= handsWanted(s);
};

/** Shut while fewer people are on hand than a lift takes; more people, or a hoist with the reason said, open it. */
export const handsGate = (s: Situation, wanted: number): Gate => {
  const said = handsSaid(s);
  return {
    id: 'too-few-hands',
    shut: said !== null && said < wanted,
    fills: { here: said ?? 0, wanted, more: Math.max(0, wanted - (said ?? 0)) },
    measure: 'plan/helpers',
  };
};
