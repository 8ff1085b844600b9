import type { RailName } from '../../ramp/design.ts';
import type { Situation } from '../situation.ts';

/** Less than this is not packed up: paint and a strip under the deck take it, mm (common practice). */
const LEAST_PACK = 1;
const SPOTS = 24;

/** Rails whose survey counts now; the others stand as drawn. */
const offsets = (s: Situation, rail: RailName): readonly number[] => {
  const plan = s.ramp.plans.get(rail);
  const shape = s.ramp.shapes.get(rail);
  return Array.from({ length: SPOTS + 1 }, (_, k) =>
    shape === undefined || plan === undefined ? 0 : shape.offsetAt((k * plan.toLip_mm) / SPOTS),
  );
};

/** Greatest height difference between any two rails at one spot, mm, and where along the back wall that is. */
export const mismatch = (s: Situation): { mm: number; along_mm: number } => {
  const all = s.ramp.rails.map(rail => offsets(s, rail));
  const toLip = s.ramp.plans.get(s.ramp.rails[0] ?? '')?.toLip_mm ?? 0;
  let worst = { mm: 0, along_mm: 0 };
  for (let k = 0; k <= SPOTS; k++) {
    const here = all.map(o => o[k] ?? 0);
    const mm = Math.max(...here) - Math.min(...here);
    if (mm > worst.mm) worst = { mm, along_mm: (k * toLip) / SPOTS };
  }
  return worst;
};

/**
 * What each base rail is packed up by so that the rails stand level on the whole, mm: a rail that lies lower by the same all
 * along is no twist, only low. To half a millimetre; below a millimetre nothing.
 */
export const basePacks = (s: Situation): ReadonlyMap<RailName, number> => {
  const means = new Map(
    s.ramp.rails.map(rail => {
      const o = offsets(s, rail);
      return [rail, o.reduce((a, b) => a + b, 0) / o.length] as const;
    }),
  );
  const top = Math.max(...means.values());
  return new Map(
    [...means].flatMap(([rail, mean]) => {
      const pack = Math.round((top - mean) * 2) / 2;
      return pack >= LEAST_PACK ? [[rail, pack] as const] : [];
    }),
  );
};
