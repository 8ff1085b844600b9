/** Saws that may cut a bar. A wood saw is none. */
export const BAR_SAWS = ['abrasive saw', 'metal blade saw', 'band saw', 'hacksaw', 'grinder'] as const;
export type BarSaw = (typeof BAR_SAWS)[number];

/** How far a saw's vice or table turns from square, rad: 45° of most chop saws, 60° of most band saws [practice]; a hand goes anywhere. */
const TURNS: Readonly<Record<BarSaw, number | null>> = {
  'abrasive saw': Math.PI / 4,
  'metal blade saw': Math.PI / 4,
  'band saw': Math.PI / 3,
  hacksaw: null,
  grinder: null,
};

/** The saw a person has: how far it turns and how wide it cuts through; null where nothing limits it, or nobody read it. */
export type SawReach = Readonly<{ saw: BarSaw; turns_rad: number | null; through_mm: number | null }>;

/** What a saw of a kind usually reaches, until its own was read. */
export const usualReach = (saw: BarSaw): SawReach => ({ saw, turns_rad: TURNS[saw], through_mm: null });

/** A saw that turns a wheel or a blade: it has a greatest speed. */
export const turnsWheel = (saw: BarSaw): boolean => saw === 'abrasive saw' || saw === 'metal blade saw';
/** A saw whose own vice turns the bar. */
export const hasVice = (saw: BarSaw): boolean => turnsWheel(saw) || saw === 'band saw';

/** How a cut is made with a saw: through in one pass; steeper than it turns; wider than it goes through; or wall by wall with a grinder. */
export type Pass = 'one pass' | 'too steep' | 'too wide' | 'wall by wall';

/** Ends nearer to square than this are square, rad: a saw's own scatter is larger. */
const SAME_ANGLE = 1e-4;

/**
 * How a piece's end is cut: across a tube at an angle the cut is as long as the side over the angle's cosine (derived).
 * @param across_mm the side that the cut runs across
 * @param angle_rad from square, either way
 */
export const passFor = (reach: SawReach, across_mm: number, angle_rad: number): Pass => {
  if (reach.saw === 'grinder') return 'wall by wall';
  const angle = Math.abs(angle_rad);
  if (reach.turns_rad !== null && angle > reach.turns_rad + SAME_ANGLE) return 'too steep';
  if (reach.through_mm !== null && across_mm / Math.cos(angle) > reach.through_mm + 0.1) return 'too wide';
  return 'one pass';
};
