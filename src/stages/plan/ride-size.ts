import type { Figure } from '../sheet.ts';

type As = Figure['as'];

/** Changes that matter here: speed m/s, reach m, force N, ratio, per cent, angle rad, length mm. */
const MATTERS: Readonly<Partial<Record<As, number>>> = {
  speed: 0.15,
  reach: 0.05,
  force: 20,
  ratio: 0.05,
  percent: 2,
  angle: 0.02,
  length: 5,
};

/** A figure of ride or frame; where it cannot be said yet, the step it waits for. */
export const size = (id: string, as: As, v: number | null | undefined, needs = 'plan/ride'): Figure =>
  ({
    id,
    kind: 'size',
    as,
    value: v == null || !Number.isFinite(v) ? { is: 'unknown', needs } : { is: 'exact', v },
    matters: MATTERS[as] ?? 0.5,
  }) as Figure;
