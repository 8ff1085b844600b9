import { WINDIEST_m_s } from '../../reckon/welding/weld-weather.ts';
import { WEATHER } from '../arc-steps.ts';
import { TURN } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { EVENING_s } from './alone.ts';
import { arcBar } from './arc-bar.ts';
import { fireWatch, WATCH_s } from './fire-watch.ts';
import { lensStep } from './lens.ts';
import { placeStep } from './place.ts';
import { powerSteps } from './power.ts';
import { MOVING_m_s, roomStep } from './room.ts';
import { weatherAsks, windLimit } from './weather.ts';
import { GOOD_FOR_h } from './weather-age.ts';

/** Skin burns in an arc's light in this time, s (common practice). */
const SUNBURN_s = 20 * 60;

const weatherStep = (s: Situation): StepDraft => ({
  key: WEATHER,
  stage: 'prep',
  words: 'weather',
  fills: {
    limit: { v: windLimit(s), as: 'speed' },
    wind: { v: WINDIEST_m_s.gmaw, as: 'speed' },
    'no-gas': { v: WINDIEST_m_s.smaw, as: 'speed' },
    move: { v: MOVING_m_s, as: 'speed' },
    good: GOOD_FOR_h,
  },
  turn: TURN.place + 30,
  needs: [],
  uses: [],
  asks: weatherAsks(s),
  minutes: [5, 10],
});

const body = (): StepDraft => ({
  key: 'prep/body',
  stage: 'prep',
  words: 'body',
  fills: {
    session: { v: EVENING_s, as: 'time' },
    watch: { v: WATCH_s, as: 'time' },
    sun: { v: SUNBURN_s, as: 'time' },
  },
  turn: TURN.place + 20,
  needs: [],
  uses: [],
  minutes: [5, 10],
});

/** The place, the power, the person, the lens and the weather: what every arc waits for; and the watch after it. */
export const placeSteps = (s: Situation): readonly StepDraft[] => [
  roomStep(s),
  placeStep(s),
  ...powerSteps(s),
  ...lensStep(s),
  body(),
  weatherStep(s),
  ...arcBar(s),
  ...fireWatch(s),
];
