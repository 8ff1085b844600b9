import type { Governing } from '../../reckon/strength/will-it-hold.ts';

/** What a page says of a side frame. Shares are of what is allowed: 1 and no more is wanted. */
export type Held = Readonly<{
  governing: Pick<Governing, 'what' | 'name' | 'kind' | 'check' | 'utilisation' | 'x_mm'>;
  holds: boolean;
  shares: Readonly<{ member: number; slit: number; range: number; joint: number; sag: number }>;
  /** Axle passes that the most ridden slit bears; null for a rail without slits. */
  passes: number | null;
  lipSag_mm: number;
  /** Greatest push of one foot on the ground, unfactored, N. */
  foot_N: number;
}>;

/** A frame used no more than this wants nobody's second look, share of what is allowed [judgement]; a way is gone on with until then. */
export const EASY = 0.8;
