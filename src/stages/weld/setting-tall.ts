import type { FigureId } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { machineOf } from './machine.ts';
import { settingNow } from './setting-now.ts';

/** The numbers the machine is set by on the rail's wall, to be seen where the bead is laid; none before the machine is told. */
export const settingTall = (s: Situation): readonly FigureId[] => {
  const machine = machineOf(s);
  const now = settingNow(s, 'slits');
  if (machine === null || now === null) return [];
  if (machine.process === 'smaw') return ['weld-amps'];
  return now.set.feed_m_min === null ? ['weld-volts'] : ['weld-volts', 'weld-feed'];
};
