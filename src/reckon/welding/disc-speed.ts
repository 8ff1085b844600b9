import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** Rim speed that resin-bonded discs are made for, m/s: a disc guide [found]. Some are marked 100. */
export const RIM_m_s = 80;

export type DiscSpeedInput = Readonly<{
  disc_mm: number;
  /** No-load speed on the grinder's plate. */
  grinder_rpm: number;
  /** Greatest speed printed on the disc; makers round the rim's limit (13 300 for 13 286). */
  marked_rpm?: number | undefined;
}>;

export type DiscSpeed = Readonly<{
  /** The printed one, or what the rim allows where none is told. */
  limit_rpm: number;
  /** How fast the rim would go on this grinder. */
  rim_m_s: number;
  /** A disc that must not go on this grinder has false. */
  fits: boolean;
}>;

/**
 * Whether a disc may run on a grinder: its greatest speed must be no less than the grinder's.
 * v = π·D·n/60 000 [textbook].
 * Refuses out-of-range for a disc or speed that no grinder or saw has, and contradiction for a marking that would take
 * the rim past 100 m/s: it was misread.
 */
export const discSpeed = ({ disc_mm, grinder_rpm, marked_rpm }: DiscSpeedInput): Outcome<DiscSpeed> => {
  if (!(disc_mm >= 50 && disc_mm <= 500))
    return refuse(
      'out-of-range',
      'disc_mm',
      `There is no disc of ${disc_mm} mm.`,
      'at least 50, at most 500 mm',
    );
  for (const [field, rpm] of [
    ['grinder_rpm', grinder_rpm],
    ['marked_rpm', marked_rpm],
  ] as const)
    if (rpm !== undefined && !(rpm >= 500 && rpm <= 50_000))
      return refuse(
        'out-of-range',
        field,
        `${rpm} turns a minute is no such speed.`,
        'at least 500, at most 50000',
      );

  const rimAt = (rpm: number): number => (Math.PI * disc_mm * rpm) / 60_000;
  if (marked_rpm !== undefined && rimAt(marked_rpm) > FASTEST_RIM_m_s * ROUNDING)
    return refuse(
      'contradiction',
      'marked_rpm',
      `A disc of ${disc_mm} mm is not made for ${marked_rpm} turns a minute.`,
      `the speed printed on the disc, at most ${Math.floor((FASTEST_RIM_m_s * 60_000) / (Math.PI * disc_mm))}`,
    );
  const limit_rpm = marked_rpm ?? (RIM_m_s * 60_000) / (Math.PI * disc_mm);
  return good({ limit_rpm, rim_m_s: rimAt(grinder_rpm), fits: grinder_rpm <= limit_rpm });
};

/** Fastest rim that discs for hand grinders are marked for, m/s [found], and how far makers round up [practice]. */
const FASTEST_RIM_m_s = 100;
const ROUNDING = 1.02;
