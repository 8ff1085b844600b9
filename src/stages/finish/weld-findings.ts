import type { Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { cracks, DEFECTS, type Failing, failing } from './failing.ts';
import { thinnerWall, weldLimits } from './weld-limits.ts';

/** What waits while a weld is open: loads, deck and riders. */
const WAITS: readonly string[] = [
  'finish/proof',
  'finish/trial-deck',
  'finish/drill-deck',
  'finish/deck',
  'finish/speeds',
  'finish/first-use',
];

/** Minutes to grind out and weld one place again, by what it shows (common practice). */
const MINUTES: Readonly<Record<(typeof DEFECTS)[number], number>> = {
  'weld-crack': 60,
  'weld-not-wetted': 30,
  'weld-hole': 25,
  'weld-pores': 20,
  'weld-groove': 10,
  'weld-short': 10,
  'weld-crater': 15,
};

/** Gas of a beginner's bead, l/min [found: two makers' tables]; bright metal round a mend, and how far a bead begins behind a crater, mm (common practice). */
const FLOW_l_min = 12;
const BRIGHT = 25;
const BACK_UP = 10;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const length = (v: number) => ({ v, as: 'length' }) as const;

const failingFinding = (s: Situation, f: Failing): Finding => {
  const wall = thinnerWall(s);
  const limits = weldLimits(f.ask === 'slits' ? s.ramp.design.tube.wall_mm : wall);
  const fills = {
    where: f.rail === null ? f.group.name : `${f.group.name} of ${f.rail}`,
    wall: thickness(wall),
    groove: thickness(limits.undercut_mm),
    pore: thickness(limits.pore_mm),
    leg: thickness(limits.leg_mm),
    short: thickness(limits.short_mm),
    flow: { v: FLOW_l_min, as: 'flow' },
    back: length(BRIGHT),
    up: length(BACK_UP),
  } as const;
  const offer = (remedy: string, minutes: number): Offer => ({
    remedy,
    fills,
    minutes: minutes * f.count,
    plan: { step: f.step, ask: f.ask, welds: f.count },
  });
  return {
    key: f.key,
    stage: 'finish',
    severity: 'stop',
    words: f.count === 1 ? 'weld-fails' : 'welds-fail',
    fills,
    tall: { v: f.count, as: 'count' },
    worst_mm: f.count,
    offers: [...DEFECTS.map(defect => offer(defect, MINUTES[defect])), offer('leave-weld', 0)],
    blocks: WAITS,
  };
};

/** A second crack in one rail scraps it (bench rule; practice). */
const SCRAPS = 2;

/** Cracks open in welds: mended by whoever can, or the ramp is put away. Riding on is not among what can be done. */
const crackFinding = (s: Situation): readonly Finding[] => {
  const open = cracks(s);
  const count = open.reduce((sum, c) => sum + c.count, 0);
  if (count === 0) return [];
  const scrap = s.ramp.rails.find(
    rail => open.filter(c => c.rail === rail).reduce((sum, c) => sum + c.count, 0) >= SCRAPS,
  );
  const offer = (remedy: string, minutes: number): Offer => ({ remedy, minutes, plan: { cracks: count } });
  const rail = offer('crack-new-rail', 600);
  const others = [
    offer('crack-out-of-use', 5),
    offer('crack-grind-out', 60 * count),
    offer('crack-coded-welder', 90 * count),
  ];
  return [
    {
      key: 'open-crack',
      stage: 'finish',
      severity: 'stop',
      words: count === 1 ? 'open-crack' : scrap === undefined ? 'open-cracks' : 'open-cracks-rail',
      fills: { count, rail: scrap ?? '' },
      tall: { v: count, as: 'count' },
      worst_mm: count,
      offers: scrap === undefined ? [...others, rail] : [rail, ...others],
      blocks: WAITS,
    },
  ];
};

export const weldFindings = (s: Situation): readonly Finding[] => [
  ...crackFinding(s),
  ...failing(s).map(f => failingFinding(s, f)),
];
