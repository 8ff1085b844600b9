import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Settings, SettingsCaution } from './setting.ts';
import { slowHandAmps } from './solid-wire-settings.ts';
import { along, between, held, type StartBand } from './start-band.ts';
import { suitedTravel } from './travel.ts';

export type CoredWireInput = Readonly<{
  wall_mm: number;
  /** Of the wire; what suits the wall when left out. */
  filler_mm?: number | undefined;
}>;

type Wire = Readonly<{
  mm: number;
  least_A: number;
  most_A: number;
  volts: (amps: number) => number;
  /** null where no source gives a feed. */
  feed_ipm: ((amps: number) => readonly [start: number, low: number, high: number]) | null;
  /** The same the other way round. */
  amps_at: ((feed_ipm: number) => number) | null;
  stick_out_mm: readonly [start: number, low: number, high: number];
}>;

/**
 * Self-shielded cored wires, E71T-11 (0.8 for 0.030 in, 0.9 for 0.035, 1.1 for 0.045). Currents, volts and feeds: data
 * sheets [memory, low confidence; 1.1 medium]. No such table could be opened, so the door chart goes before them.
 * Stick-out: owner manuals, 9/16 and 11/16 in ± 1/16 [found]; 0.8 by the 15 to 20 mm of another [found].
 */
const CORED_WIRES: readonly Wire[] = [
  {
    mm: 0.8,
    least_A: 40,
    most_A: 110,
    volts: amps => between(amps, [40, 14], [110, 16.5]),
    feed_ipm: null,
    amps_at: null,
    stick_out_mm: [15, 15, 20],
  },
  {
    mm: 0.9,
    least_A: 30,
    most_A: 115,
    volts: amps => between(amps, [30, 14], [115, 16.5]),
    feed_ipm: amps => [1.1 * amps, amps, 1.2 * amps],
    amps_at: feed => feed / 1.1,
    stick_out_mm: [14.3, 12.7, 15.9],
  },
  {
    mm: 1.1,
    least_A: 120,
    most_A: 170,
    volts: amps =>
      along(amps, [
        [120, 15.5],
        [140, 16.5],
        [160, 17.5],
        [170, 18.5],
      ]),
    feed_ipm: amps => {
      const feed = along(amps, [
        [120, 70],
        [140, 90],
        [160, 110],
        [170, 130],
      ]);
      return [feed, feed * 0.9, feed * 1.1];
    },
    amps_at: feed =>
      along(feed, [
        [70, 120],
        [90, 140],
        [110, 160],
        [130, 170],
      ]),
    stick_out_mm: [17.5, 15.9, 19.1],
  },
];

const IPM_m_min = 0.0254;

/** Current a cored wire draws at a feed, A; null where no source gives a feed. Data sheets [memory]. */
export const coredWireAmps = (filler_mm: number, feed_m_min: number): number | null =>
  CORED_WIRES.find(one => one.mm === filler_mm)?.amps_at?.(feed_m_min / IPM_m_min) ?? null;
const MEMORY = 'E71T-11 data sheets, from memory: the chart in the machine’s door goes before it';

/** Half a volt either way is what a step of such a machine makes [practice]. */
const VOLTS_OFF = 0.5;

/** From this wall a one-sided joint is bevelled, mm [derived from makers' tables of solid wire]. */
const BEVEL_mm = 5;

const triple = (
  of: readonly [number, number, number],
  mark: StartBand['mark'],
  source: string,
): StartBand => ({
  start: of[0],
  low: of[1],
  high: of[2],
  mark,
  source,
});

/**
 * Settings of self-shielded cored wire: electrode negative, no gas. The wall is checked by the caller.
 * 0.9 to 1.0 of the solid-wire rule [practice].
 * Refuses out-of-range for a wire that is not made, contradiction for one whose least current is more than the wall
 * stands.
 */
export const coredWireSettings = ({ wall_mm, filler_mm }: CoredWireInput): Outcome<Settings> => {
  const rule = slowHandAmps(wall_mm);
  const wanted = { start: 0.95 * rule, low: 0.9 * rule, high: rule };
  const wire_mm = filler_mm ?? (wanted.start <= 117 ? 0.9 : 1.1);
  const wire = CORED_WIRES.find(one => one.mm === wire_mm);
  if (wire === undefined)
    return refuse(
      'out-of-range',
      'filler_mm',
      `${wire_mm} mm is no cored wire of a garage.`,
      '0.8, 0.9, 1.1 mm',
    );
  // A little over the rule is a quick hand's affair; a fifth over burns through.
  if (wire.least_A > 1.2 * rule)
    return refuse(
      'contradiction',
      'filler_mm',
      `${wire_mm} mm wire wants at least ${wire.least_A} A, this wall stands ${Math.round(rule)} A.`,
      '0.8, 0.9 mm',
    );

  const inWire = (amps: number): number => held(amps, wire.least_A, wire.most_A);
  const amps = triple(
    [inWire(wanted.start), inWire(wanted.low), inWire(wanted.high)],
    'practice',
    '0.9 to 1.0 A for each 0.001 in of wall',
  );
  const volts = wire.volts(amps.start);
  const feed = wire.feed_ipm?.(amps.start);
  const bevelled = wall_mm >= BEVEL_mm;

  const cautions: SettingsCaution[] = ['door chart first'];
  if (feed === undefined) cautions.push('feed from door chart');
  if (bevelled) cautions.push('bevel, two passes', 'no single-pass wire');
  if (wanted.start > wire.most_A) cautions.push('wire at its limit');

  return good({
    filler_mm: wire_mm,
    polarity: 'electrode negative',
    amps,
    volts: triple([volts, volts - VOLTS_OFF, volts + VOLTS_OFF], 'memory', MEMORY),
    feed_m_min:
      feed === undefined
        ? null
        : triple([feed[0] * IPM_m_min, feed[1] * IPM_m_min, feed[2] * IPM_m_min], 'memory', MEMORY),
    stick_out_mm: triple(wire.stick_out_mm, 'found', 'makers’ owner manuals'),
    travel_mm_s: suitedTravel('fcaw-s', volts, amps.start, bevelled ? wall_mm / 2 : wall_mm),
    gas_l_min: null,
    passes: bevelled ? 2 : 1,
    cautions,
  });
};
