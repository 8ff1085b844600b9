import {
  BAR_SAWS,
  type BarSaw,
  hasVice,
  type SawReach,
  turnsWheel,
  usualReach,
} from '../ramp/cutting/bar-saw.ts';
import { type Build, readingKey } from './fold.ts';

/** The step at which a person says which saw cuts the bars, and reads it. */
export const SAW = 'cut/saw';

/** The answer after the last saw that may cut steel. */
export const WOOD_SAW = BAR_SAWS.length + 1;

const read = (b: Build, ask: string): number | null => b.readings.get(readingKey(SAW, ask))?.value ?? null;

/** The saw that was said at the bench: its kind, 'wood saw' for one that must not be used, null while nobody said. */
export const sawSaid = (b: Build): BarSaw | 'wood saw' | null => {
  const said = read(b, 'saw');
  if (said === null) return null;
  return Math.round(said) === WOOD_SAW ? 'wood saw' : (BAR_SAWS[Math.round(said) - 1] ?? null);
};

/** Reach of the saw that was read at the bench; null while none was, or where it is none for steel. */
export const sawReach = (b: Build): SawReach | null => {
  const saw = sawSaid(b);
  if (saw === null || saw === 'wood saw') return null;
  if (!hasVice(saw)) return usualReach(saw);
  return {
    saw,
    turns_rad: read(b, 'turns') ?? usualReach(saw).turns_rad,
    through_mm: read(b, 'through'),
  };
};

/** Turns a minute of saw and wheel as they were read: a wheel slower than its saw flies apart. Null while either is unread, or none turns. */
export const wheelSpeeds = (b: Build): Readonly<{ saw: number; wheel: number }> | null => {
  const kind = sawSaid(b);
  const [saw, wheel] = [read(b, 'saw-turns'), read(b, 'wheel')];
  if (kind === null || kind === 'wood saw' || !turnsWheel(kind) || saw === null || wheel === null)
    return null;
  return { saw, wheel };
};
