import { recutMinutes } from './re-cut.ts';
import { type Offering, offer } from './remedy.ts';
import { settingOf } from './slit-limits.ts';

/** A slit that was never closed, or never sawn, is given the bend that was planned for it. */
export const offerCloseSlit: Offering = c => {
  const missed = c.answer?.missed ?? null;
  if (missed === null) return [];
  const setting = settingOf(c.r, missed.slit, missed.turn_rad);
  return [
    offer(
      c,
      'close-slit',
      recutMinutes(c.r.survey.phase, 1),
      missed.after_mm,
      { slit: missed.slit, turn: { v: missed.turn_rad, as: 'angle' } },
      { slits: [setting] },
    ),
  ];
};
