import { type Consumption, consumption } from '../../reckon/welding/consumption.ts';
import type { Process } from '../../reckon/welding/process.ts';
import type { Ramp } from '../ramp.ts';

const PLATES: ReadonlySet<string> = new Set(['side plate', 'foot plate']);

/** What a ramp uses up of wire or rods, gas and discs, as bands; null when its tube is past what the rules know. */
export const consumedBy = (ramp: Ramp, process: Process): Consumption | null => {
  const used = consumption({
    process,
    slits: Math.max(0, ...[...ramp.plans.values()].map(p => p.slits.length)),
    rails: ramp.rails.length,
    joints: ramp.members.reduce((n, m) => n + m.joints, 0),
    pieces: ramp.members.filter(m => !PLATES.has(m.kind)).length,
    ...ramp.design.tube,
  });
  return used.ok ? used.value : null;
};
