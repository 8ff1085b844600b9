import { createRequire } from 'node:module';

// ODEX of Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.9: extrapolation of high and changing order, as
// the npm package odex 2.0.4 brings it, a general-purpose integrator.
// The package has no types but its source, which is written by other rules than ours: so it is required, not imported.

/** What a state changes by, at a time or along a way. */
export type Slope = (at: number, state: readonly number[]) => number[];
type Solves = { absoluteTolerance: number; relativeTolerance: number; maxSteps: number } & Readonly<{
  solve: (slope: Slope, from: number, state: readonly number[], to: number) => { y: number[] };
}>;
const require = createRequire(import.meta.url);
const { Solver } = require('odex') as { Solver: new (unknowns: number) => Solves };

/** A state carried from one time to another, to thirteen digits a step. */
export const integrated = (
  slope: Slope,
  start: readonly number[],
  from: number,
  to: number,
): readonly number[] => {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-13;
  solver.relativeTolerance = 1e-13;
  solver.maxSteps = 100_000;
  return solver.solve(slope, from, start, to).y;
};
