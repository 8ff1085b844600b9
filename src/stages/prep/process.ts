import type { Process } from '../../reckon/welding/process.ts';
import type { Situation } from '../situation.ts';
import { valueAt } from './reading.ts';

const MACHINE = 'weld/machine';

/** The welder as it was told in welding: 1 and 2 solid wire (mixed gas, CO2), 3 cored wire without gas, 4 and 5 rods. */
export type Welder = Readonly<{ kind: 1 | 2 | 3 | 4 | 5; process: Process; filler_mm: number | null }>;

const PROCESS = { 1: 'gmaw', 2: 'gmaw', 3: 'fcaw-s', 4: 'smaw', 5: 'smaw' } as const;

/** The welder at this bench; null until it is told. */
export const welderOf = (s: Situation): Welder | null => {
  const kind = valueAt(s, MACHINE, 'kind');
  if (kind !== 1 && kind !== 2 && kind !== 3 && kind !== 4 && kind !== 5) return null;
  return { kind, process: PROCESS[kind], filler_mm: valueAt(s, MACHINE, 'wire') ?? null };
};
