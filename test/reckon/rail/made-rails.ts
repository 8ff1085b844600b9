import type { Cause, RailSurvey } from '../../../src/reckon/rail/diagnosis.ts';
import { type Chance, type MadeRail, readOffsets, trueOffsets } from './simulated-rail.ts';

/** Rails of a known cause, and readings that no model of slits explains; every size drawn by seeded chance. */

export type Bench = Readonly<{ stations?: number; read_to?: number }>;
export type Made = Readonly<{
  cause: Cause;
  rail: MadeRail;
  survey: RailSurvey;
  /** Odd slits, counted from 1. */
  odd: readonly number[];
  /** Reading error, sd, rounding included, mm. */
  noise: number;
}>;

type Draft = {
  rail: MadeRail;
  stations: number[];
  arc: number;
  sizes: { depth: number; deck: number; wall: number };
  odd: number[];
  edge: number;
  /** What a careless hour does to the readings afterwards. */
  spoil: (read: number[]) => number[];
};

const mrad = 0.001;

function blank(dice: Chance, bench: Bench): Draft {
  for (;;) {
    const radius = dice.between(2000, 9000);
    const bend = (dice.between(15, 60) * Math.PI) / 180;
    const count = dice.whole(6, 40);
    const arc = radius * bend;
    const pitch = arc / count;
    if (pitch < 40 || pitch > 300 || arc < 900) continue; // no such rail is built
    const scatter = dice.pick([0, 0.3, 0.5, 0.5, 1]) * mrad;
    const stations = bench.stations ?? 26;
    return {
      rail: {
        radius,
        bend,
        count,
        errors: Array.from({ length: count }, () => scatter * dice.normal()),
        laid: { x: 0, y: 0, turn: 0 },
      },
      stations: Array.from({ length: stations }, (_, j) => (j * arc) / (stations - 1)),
      arc,
      sizes: { depth: dice.pick([30, 40, 50]), deck: dice.pick([9, 12, 18]), wall: dice.pick([2, 3]) },
      odd: [],
      edge: 0,
      spoil: read => read,
    };
  }
}

function layAskew(d: Draft, dice: Chance): void {
  const { rail, stations } = d;
  const off = (s: number) => {
    const phi = s / rail.radius;
    const { x, y, turn } = rail.laid;
    return Math.abs(y * Math.cos(phi) + (rail.radius * turn - x) * Math.sin(phi));
  };
  do rail.laid = { x: dice.between(-5, 5), y: dice.between(-6, 6), turn: dice.between(-4, 4) * mrad };
  while (Math.abs(rail.laid.y) < 1 || Math.max(...stations.map(off)) < 4);
}

const sometimesAskew = (d: Draft, dice: Chance): void => {
  if (dice.next() < 0.5) layAskew(d, dice);
};

function curl(d: Draft, dice: Chance, sign: 1 | -1): void {
  const each = sign * Math.exp(dice.between(Math.log(0.8), Math.log(6))) * mrad;
  d.rail.errors = d.rail.errors.map(e => e + each);
}

function oddSlit(d: Draft, dice: Chance, size?: number): void {
  const { count } = d.rail;
  const margin = Math.max(1, Math.round(count * 0.12));
  const slit = dice.whole(1 + margin, count - margin);
  if (d.odd.some(o => Math.abs(o - slit) < Math.max(3, 0.2 * count))) {
    oddSlit(d, dice, size);
    return;
  }
  d.odd.push(slit);
  d.rail.errors[slit - 1]! += size ?? dice.sign() * Math.exp(dice.between(Math.log(10), Math.log(32))) * mrad;
}

/** Ways to make a rail: each does to the draft what its name says. */
export const MADE: Readonly<Record<string, { cause: Cause; make: (d: Draft, dice: Chance) => void }>> = {
  'on the line': { cause: 'on the line', make: () => {} },
  'laid askew': { cause: 'laid askew', make: layAskew },
  'wrong edge': {
    cause: 'wrong edge',
    make: (d, dice) => {
      const { depth, deck, wall } = d.sizes;
      d.edge = dice.sign() * dice.pick([depth, depth, deck, deck, wall]);
    },
  },
  'over-curl': {
    cause: 'over-curl',
    make: (d, dice) => {
      curl(d, dice, 1);
      sometimesAskew(d, dice);
    },
  },
  'under-curl': {
    cause: 'under-curl',
    make: (d, dice) => {
      curl(d, dice, -1);
      sometimesAskew(d, dice);
    },
  },
  'one slit': {
    cause: 'one slit',
    make: (d, dice) => {
      oddSlit(d, dice);
      sometimesAskew(d, dice);
    },
  },
  'a missed slit': {
    cause: 'one slit',
    make: (d, dice) => {
      oddSlit(d, dice, -d.rail.bend / d.rail.count);
      sometimesAskew(d, dice);
    },
  },
  'over-curl and one slit': {
    cause: 'over-curl and one slit',
    make: (d, dice) => {
      curl(d, dice, 1);
      oddSlit(d, dice);
      sometimesAskew(d, dice);
    },
  },
  'under-curl and one slit': {
    cause: 'under-curl and one slit',
    make: (d, dice) => {
      curl(d, dice, -1);
      oddSlit(d, dice);
      sometimesAskew(d, dice);
    },
  },
  'two slits': {
    cause: 'two slits',
    make: (d, dice) => {
      oddSlit(d, dice);
      oddSlit(d, dice);
      sometimesAskew(d, dice);
    },
  },
};

/** Readings that no cause explains; "unclear" is the right answer to each. */
export const SPOILT: Readonly<Record<string, { cause: Cause; make: (d: Draft, dice: Chance) => void }>> = {
  'a reading with its point in the wrong place': {
    cause: 'unclear',
    make: (d, dice) => {
      if (dice.next() < 0.6) curl(d, dice, 1);
      if (dice.next() < 0.4) oddSlit(d, dice);
      const j = dice.whole(1, d.stations.length - 2);
      d.spoil = read => {
        const value = read[j]!;
        return read.with(j, Math.abs(value) >= 1 ? value * 10 : value + dice.sign() * dice.between(8, 40));
      };
    },
  },
  'a reading typed with the wrong sign': {
    cause: 'unclear',
    make: (d, dice) => {
      curl(d, dice, 1);
      const j = dice.whole(Math.ceil(d.stations.length / 2), d.stations.length - 2);
      d.spoil = read => read.with(j, -Math.max(4, read[j]!));
    },
  },
  'a rail that moved half way through the readings': {
    cause: 'unclear',
    make: (d, dice) => {
      const from = dice.whole(Math.round(d.stations.length * 0.3), Math.round(d.stations.length * 0.7));
      const by = dice.sign() * dice.between(4, 12);
      d.spoil = read => read.map((v, j) => (j >= from ? v + by : v));
    },
  },
  'welds that pulled on half of the rail only': {
    cause: 'unclear',
    make: (d, dice) => {
      const each = dice.between(3, 5) * mrad;
      d.rail.errors = d.rail.errors.map((e, i) => e + (i < d.rail.count / 2 ? each : 0));
    },
  },
  'a support that stood proud': {
    cause: 'unclear',
    make: (d, dice) => {
      const at = d.arc * dice.between(0.25, 0.75);
      const half = d.arc * dice.between(0.1, 0.18);
      const by = dice.sign() * dice.between(6, 12);
      d.spoil = read => read.map((v, j) => v + by * Math.max(0, 1 - Math.abs(d.stations[j]! - at) / half));
    },
  },
};

/** One rail of a kind, read at its stations. */
export function makeRail(kind: string, dice: Chance, bench: Bench = {}): Made {
  const { cause, make } = MADE[kind] ?? SPOILT[kind]!;
  const read_to = bench.read_to ?? 0.5;
  for (;;) {
    const d = blank(dice, bench);
    if (kind === 'two slits' && d.rail.count < 10) continue;
    if (kind === 'a missed slit' && d.rail.bend / d.rail.count < 10 * mrad) continue;
    make(d, dice);
    const error = dice.between(0.1, 0.4);
    const truth = trueOffsets(d.rail, d.stations).map(o => o + d.edge);
    const read = d.spoil(readOffsets(truth, error, read_to, dice));
    if (read.some(v => !(Math.abs(v) < d.rail.radius / 2))) continue;
    const { radius, bend, count } = d.rail;
    const { depth, deck, wall } = d.sizes;
    return {
      cause,
      rail: d.rail,
      odd: d.odd,
      noise: Math.hypot(error, read_to / Math.sqrt(12)),
      survey: {
        plan: {
          radius_mm: radius,
          bend_rad: bend,
          slits_mm: Array.from({ length: count }, (_, i) => ((i + 0.5) * d.arc) / count),
        },
        stations_mm: d.stations,
        offsets_mm: read,
        read_to_mm: read_to,
        depth_mm: depth,
        deck_mm: deck,
        wall_mm: wall,
      },
    };
  }
}
