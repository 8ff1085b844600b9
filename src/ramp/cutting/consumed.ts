import { type Consumption, consumption } from '../../reckon/welding/consumption.ts';
import type { Process } from '../../reckon/welding/process.ts';
import { FLAT_KINDS } from '../mass.ts';
import type { Ramp } from '../ramp.ts';

/** What a ramp uses up of wire or rods, gas and discs, as bands; null when its tube is past what the rules know. */
export const consumedBy = (ramp: Ramp, process: Process): Consumption | null => {
  const used = consumption({
    process,
    slits: Math.max(0, ...[...ramp.plans.values()].map(p => p.slits.length)),
    rails: ramp.rails.length,
    joints: [...ramp.members, ...ramp.entry.pieces].reduce((n, m) => n + m.joints, 0),
    pieces: ramp.members.filter(m => !FLAT_KINDS.has(m.kind)).length + ramp.entry.bearers.length,
    ...ramp.design.tube,
  });
  return used.ok ? used.value : null;
};
