/** The bench as one bundle of its own. */
export { runBench } from './run-bench.tsx';
export { layoutLoaded } from './terminal/yoga-layout.ts';
