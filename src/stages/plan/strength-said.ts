import type { Held } from '../heavy/held.ts';
import type { Fills } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import type { Strength } from './strength-asks.ts';

const GOVERNS = {
  member: 'member',
  slit: 'slit',
  'slit, ridden again and again': 'range',
  joint: 'joint',
  sag: 'sag',
} as const;

/** Uprights farther apart than this under a slit rail are what is said first, mm: over several spans (bench rule; practice). */
const FAR_APART = 400;
/** What bends between two uprights. */
const BETWEEN: ReadonlySet<string> = new Set(['curved rail', 'slit']);

/** The tallest upright is spoken of as the lip upright; the others by their flat. */
const partOf = ({ what, kind, name }: Held['governing']): Readonly<{ part: string; name: string }> =>
  kind !== 'upright' || name !== 'lip'
    ? { part: kind, name }
    : what === 'member'
      ? { part: 'lip upright', name }
      : { part: 'lip', name: 'upright' };

/** What governs a side frame, in words of its own; uprights far apart are named as the cause of what gives between them. */
export const saidOfStrength = (
  s: Situation,
  strength: Strength,
): Readonly<{ words: string; fills: Fills }> | null => {
  if (strength.is !== 'known') return null;
  const { governing } = strength.held;
  const { spacing } = s.ramp.design;
  const far = spacing > FAR_APART && BETWEEN.has(governing.kind);
  return {
    words: far ? 'strength-far' : `strength-${GOVERNS[governing.what]}`,
    fills: {
      rail: strength.rail,
      ...partOf(governing),
      check: governing.check,
      at: { v: governing.x_mm, as: 'length' },
      use: { v: 100 * governing.utilisation, as: 'percent' },
      ...(far ? { spacing: { v: spacing, as: 'length' } as const } : {}),
    },
  };
};
