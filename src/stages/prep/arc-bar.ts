import { ARC_BAR, WEATHER } from '../arc-steps.ts';
import { TURN } from '../order.ts';
import type { Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { lensGates } from './lens.ts';
import { LAST_LOOK, PLACE, placeGates } from './place.ts';
import { ROOM, roomOf } from './room.ts';
import { STEEL, steelGates } from './steel-and-cleaner.ts';
import { HAND_WARM_C, weatherGates, weatherOf } from './weather.ts';
import { weatherOldGate } from './weather-age.ts';

const cellarGate = (s: Situation): readonly Gate[] =>
  roomOf(s)?.cellar === true ? [{ id: 'cellar', shut: true, never: true, measure: ROOM }] : [];

/** Words of the step by what bars the arc, and what the bar is called on its key. */
const BARS: Readonly<Record<string, readonly [string, string]>> = {
  cellar: ['other-place', 'place'],
  'extractor-on': ['place-again', 'extractor'],
  'chargers-near': ['place-again', 'chargers'],
  'fuel-near': ['place-again', 'fuel'],
  'flame-near': ['place-again', 'flame'],
  'floor-wood': ['place-again', 'floor'],
  'floor-bitumen': ['place-again', 'floor'],
  'floor-paint': ['place-again', 'floor'],
  'nothing-to-put-out': ['place-again', 'extinguisher'],
  'child-near': ['place-again', 'child, animal'],
  'tube-zinc': ['other-tube', 'tube'],
  'tube-plated': ['other-tube', 'tube'],
  'tube-unknown': ['other-tube', 'tube'],
  'cleaner-chlorine': ['other-cleaner', 'cleaner'],
  'cleaner-unknown': ['other-cleaner', 'cleaner'],
  'lens-light': ['darker-lens', 'lens'],
  'weather-old': ['weather-again', 'weather'],
  'weather-old-days': ['weather-again', 'weather'],
  'air-cold': ['other-day', 'air'],
  rain: ['other-day', 'rain'],
  'wind-strong': ['shelter', 'wind'],
  'shelter-fails': ['shelter', 'wind'],
  'shelter-dead': ['move-air', 'shelter'],
  'air-still': ['move-air', 'air'],
};
const STEEL_BAR = ['dry-steel', 'steel'] as const;

/**
 * What bars every arc now: a weather read too long ago, then what no reason opens of place, tube, cleaner, lens and weather, then the rest. The step is there only while something does. Each
 * bar is one thing to tick under the reading that shut it, so that a reason given for one evening opens no other.
 */
export const arcBar = (s: Situation): readonly StepDraft[] => {
  const weather = weatherOf(s);
  const all = [
    ...cellarGate(s),
    // Told wrong before the place is ticked off, it keeps that step itself.
    ...(s.build.ticks.has(`${PLACE}#${LAST_LOOK}`) ? placeGates(s) : []),
    ...steelGates(s),
    ...lensGates(s),
    ...weatherGates(s),
  ];
  // What an old reading says is asked anew before it bars anything.
  const gates = [
    ...weatherOldGate(s, ARC_BAR),
    ...all.filter(g => g.never === true),
    ...all.filter(g => g.never !== true),
  ];
  const shut = gates.find(g => !s.build.overrides.has(`${ARC_BAR} ${g.id}`)) ?? gates[0];
  if (shut === undefined) return [];
  const barOf = (g: Gate): readonly [string, string] => BARS[g.words ?? g.id] ?? STEEL_BAR;
  const [words] = barOf(shut);
  const wet = words === 'dry-steel' && weather !== null;
  return [
    {
      key: ARC_BAR,
      stage: 'prep',
      words,
      fills: { ...(shut.fills ?? {}), hand: { v: HAND_WARM_C, as: 'temperature' } },
      turn: TURN.place + 35,
      needs: [WEATHER, ROOM, STEEL].filter(key => key === shut.measure),
      uses: wet ? ['steel-least', 'dew-point'] : [],
      ...(wet ? { tall: ['steel-least'] } : {}),
      gates,
      items: gates.map((g): Item => ({ key: `${ARC_BAR}#${g.id}`, name: barOf(g)[1] })),
      minutes: [15, 90],
    },
  ];
};
