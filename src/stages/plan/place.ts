import { readingKey } from '../../build/fold.ts';
import type { Situation } from '../situation.ts';

/** What one person lifts close to the body between knee and elbow, kg, and the share two together manage of twice that (HSE lifting filter and L23 [memory]). */
export const ONE_LIFTS_kg = 25;
const TOGETHER = 2 / 3;

/** People wanted to lift the bare frame, the builder among them: ⌈mass/(2/3·25 kg)⌉, never fewer than two (common practice). */
export const liftPeople = (s: Situation): number =>
  Math.max(2, Math.ceil(s.ramp.masses.frame_kg / (ONE_LIFTS_kg * TOGETHER)));

/** Helpers the person said can come, or null when not said yet. */
export const helpersSaid = (s: Situation): number | null =>
  s.build.readings.get(readingKey('plan/helpers', 'helpers'))?.value ?? null;

/** Free floor round a rail lying on its jig, mm each side (common practice: room to kneel and to turn it). */
export const ROOM_ROUND_JIG = 600;

/** Longest lead for a small machine on a household circuit, m: 7.6 m (25 ft) of 12 AWG, 15 m of 10 AWG (one garage-welding page [found]; 2.5 mm² is nearest [practice]). */
export const LEAD_m = { thin: 7.62, thick: 15.24 } as const;

/** Clear room on each side of the frame in a doorway, mm (common practice). */
export const DOOR_CLEAR = 50;
