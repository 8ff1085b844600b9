import type { Doing, Entry } from '../../src/build/entries.ts';
import { viewOf } from '../../src/coach/view.ts';
import { settle } from '../../src/ramp/settle.ts';
import { diagnose } from '../../src/reckon/rail/diagnose.ts';
import { offsetsAt } from '../../src/reckon/rail/forward.ts';
import { evenSlits } from '../../src/reckon/rail/rail-plan.ts';
import { planRecuts } from '../../src/reckon/rail/recuts.ts';
import { railSpots } from '../../src/reckon/strength/rail-spots.ts';
import { willItHold } from '../../src/reckon/strength/will-it-hold.ts';
import { madeFrame } from '../reckon/strength/side-frames.ts';
import { median } from './measure.ts';

type Print = (name: string, ...cells: readonly (string | number)[]) => void;

const time = (what: () => unknown, times: number): number => {
  for (let i = 0; i < Math.min(5, times); i++) what();
  return median(
    Array.from({ length: times }, () => {
      const from = performance.now();
      what();
      return performance.now() - from;
    }),
  );
};

const stamped = (doings: readonly Doing[]): Entry[] =>
  doings.map((d, i) => ({ id: `e${i}`, n: i + 1, v: 1, at: '2026-11-01T10:00:00Z', ...d }) as Entry);

/** A usual build of 25 slits on 2 rails, and one far past any workshop: some 250 slits on each of 4 rails of a great tube. */
const usual: readonly Doing[] = [
  { kind: 'design-set', field: 'shape', value: { radius: 6000, exit: 0.75 } },
  { kind: 'design-set', field: 'cutter', value: { kind: 'thin disc', kerf_mm: 0.8 } },
];
const great: readonly Doing[] = [
  { kind: 'design-set', field: 'shape', value: { radius: 40_000, exit: 1.4 } },
  { kind: 'design-set', field: 'cutter', value: { kind: 'thin disc', kerf_mm: 0.64 } },
  { kind: 'design-set', field: 'tube', value: { depth_mm: 160, width_mm: 160, wall_mm: 6 } },
  { kind: 'design-set', field: 'deck', value: { kind: 'boards', thickness_mm: 38, board_mm: 140 } },
  { kind: 'design-set', field: 'width', value: 1800 },
];

const buildWith = (design: readonly Doing[]): Entry[] =>
  stamped([{ kind: 'build-begun', name: 'Timed', system: 'metric' }, ...design, { kind: 'design-agreed' }]);

/** Kernels and pages, in milliseconds on this machine. */
export const kernels = async (print: Print): Promise<void> => {
  print(
    'all eight pages after one entry, ms',
    'slits',
    'rails',
    'first 25',
    'an evening',
    'a build',
    'us a slit',
  );
  // A program is quicker the longer it runs: shown as it starts, after an evening's 250 entries, and after a whole build's 1500.
  for (const [design, evening, build] of [
    [usual, 250, 1500],
    [great, 60, 120],
  ] as const) {
    const entries = buildWith(design);
    const view = viewOf(entries, 0);
    const slits = [...view.ramp.plans.values()].reduce((n, p) => n + p.slits.length, 0);
    const took = Array.from({ length: build }, () => {
      const from = performance.now();
      viewOf(entries, 0);
      return performance.now() - from;
    });
    const about = (n: number): number => median(took.slice(Math.max(0, n - 25), n));
    print(
      '',
      view.ramp.plans.get('A')?.slits.length ?? 0,
      view.ramp.rails.length,
      about(25),
      about(evening),
      about(build),
      (1000 * about(build)) / Math.max(1, slits),
    );
  }
  const made = settle('x', 'metric', {});
  if (!made.ok) throw new Error(made.fault.message);

  print('diagnosis of a survey', 'slits', 'stations', 'ms', 're-cuts ms');
  for (const slits of [10, 40, 160]) {
    const plan = { radius_mm: 4536, bend_rad: 0.6, slits_mm: evenSlits(4536, 0.6, slits) };
    const stations_mm = Array.from({ length: 30 }, (_, i) => (4536 * 0.6 * i) / 29);
    const offsets_mm = offsetsAt(
      plan,
      Array.from({ length: slits }, (_, i) => (i === 3 ? 0.012 : 0.0005)),
      { y_mm: 1, turn_rad: 0.001 },
      stations_mm,
    ).map(o => Math.round(o * 2) / 2);
    const survey = { plan, stations_mm, offsets_mm, read_to_mm: 0.5, depth_mm: 40, deck_mm: 18, wall_mm: 3 };
    print(
      '',
      slits,
      stations_mm.length,
      time(() => diagnose(survey as never), 12),
      time(() => planRecuts(survey as never, diagnose(survey as never), { tolerance_mm: 2 }), 12),
    );
  }

  print('a side frame under the rider', 'slits', 'uprights', 'places', 'ms');
  for (const [slits, spacing_mm, exit_rad] of [
    [25, 320, 0.75],
    [45, 80, 1.2],
  ] as const) {
    const input = madeFrame({ slits, spacing_mm, exit_rad });
    const spent: number[] = [];
    let places = 0;
    for (let i = 0; i < 60; i++) {
      const from = performance.now();
      const held = await willItHold(input);
      spent.push(performance.now() - from);
      if (!held.ok) throw new Error(held.fault.message);
      places = railSpots(input).length;
    }
    print('', slits, input.uprights.length, places, median(spent.slice(30)));
  }
};
