import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { wholeUp } from '../numeric/whole-up.ts';
import type { Process } from './process.ts';

/** What a job is likely to use, and how little and much. */
export type Use = Readonly<{ low: number; likely: number; high: number }>;

export type ConsumptionInput = Readonly<{
  process: Process;
  /** Of one rail. */
  slits: number;
  rails: number;
  /** Welded joints of uprights, crossmembers and braces. */
  joints: number;
  /** Pieces that a chop saw cuts. */
  pieces: number;
  /** The rail's tube: depth across the bend, width across the rail. */
  depth_mm: number;
  width_mm: number;
  wall_mm: number;
  /** A covered rod's core; only that process is asked. 2.5 mm when left out. */
  rod_mm?: 2.5 | 3.2 | undefined;
}>;

export type Consumption = Readonly<{
  slit_length_mm: number;
  /** Cut through by all slits. */
  slit_area_mm2: number;
  weld_length_mm: number;
  /** Weld metal laid down. */
  laid_kg: number;
  /** Wire off the spool, without practice; null with rods. */
  wire_kg: Use | null;
  /** Rods, without practice; null with wire. */
  rods: Use | null;
  arc_min: Use;
  /** Gas flows a little longer than the arc burns; null without gas. */
  gas_min: Use | null;
  gas_l: Use | null;
  thin_discs: Use;
  buy: Readonly<{
    /** With a kilogram for practice; null with rods. */
    wire_kg: number | null;
    rods: number | null;
    thin_discs: number;
    flap_discs: number;
    strip_discs: number;
    chop_discs: number;
  }>;
}>;

/** One hand at one machine uses so much more or less from one part of a job to the next, as a share [practice]. */
const SAME_HAND = 0.2;
/** A log that says more than this times the likely use, or less, is a spool changed or a number misread [practice]. */
const BELIEVED = [1 / 3, 3] as const;

/**
 * A use as the shop's own log teaches it: what was used before against what was likely then scales what is likely now, and the band
 * is that of one hand. The use as it stands where nothing was logged, or where the log cannot be believed.
 * @param use of the job to come
 * @param logged used and likely of the jobs before, each in the same unit, more than 0
 */
export const learnedUse = (use: Use, logged: readonly Readonly<{ used: number; likely: number }>[]): Use => {
  const believed = logged.filter(
    one => one.likely > 0 && one.used / one.likely >= BELIEVED[0] && one.used / one.likely <= BELIEVED[1],
  );
  const likely = believed.reduce((sum, one) => sum + one.likely, 0);
  if (!(likely > 0)) return use;
  const ratio = believed.reduce((sum, one) => sum + one.used, 0) / likely;
  return {
    low: use.likely * ratio * (1 - SAME_HAND),
    likely: use.likely * ratio,
    high: use.likely * ratio * (1 + SAME_HAND),
  };
};

/** Weld metal of a slit and of a joint, kg/m, and a joint's length, m: bench rules [practice]. */
const SLIT_kg_m = 0.05;
const JOINT_kg_m = 0.041;
const JOINT_m = 0.2;

/** A beginner's bead is fuller than the rule's: 1.3 of the plain section against its 1.15 [practice]. */
const FULL_BEAD = 1.3 / 1.15;
/** What a beginner burns beside the job: 30 % of wire, 40 % of rods [practice]. */
const SPARE_WIRE = 1.3;
const SPARE_RODS = 1.4;
/** Wire for practice, kg [practice]. */
export const PRACTICE_kg = 1;

/**
 * Share of the wire that stays in the weld. Solid: 0.90 to 0.93 in short arc, a deposition-rate note [found];
 * self-shielded: 0.78, a filler handbook's list [found, row name memory], to 0.85 [practice].
 */
const KEPT = {
  gmaw: { worst: 0.9, likely: 0.9, best: 0.93 },
  'fcaw-s': { worst: 0.78, likely: 0.8, best: 0.85 },
} as const;

/** Weld metal from one rod 350 mm long with a 50 mm stub, kg [derived: 90 % of the core]. */
const ROD_kg = { 2.5: 0.0096, 3.2: 0.017 } as const;

/** Travel of a beginner, mm/min [practice]. */
const TRAVEL = { slow: 150, likely: 250, quick: 300 } as const;
/** Gas beside the arc's own: surges at the start, before and after, leaks [surges found; figures practice]. */
const GAS_SHARE = { least: 1.3, beginner: 1.5 } as const;
/** l/min: two makers' tables to 3.2 mm of wall [found], from 4.5 mm. */
const FLOW = { thin: { low: 10, likely: 12, high: 15 }, thick: { low: 15, likely: 16, high: 20 } } as const;

/** Section one thin disc of 115 or 125 mm cuts, mm² [practice]; the likely one is the buying rule's. */
const DISC_mm2 = { least: 4000, likely: 6000, most: 9000 } as const;

/** Thin discs that a section wears, mm²: none for none. */
export const thinDiscs = (area_mm2: number): Use => {
  const discs = (each_mm2: number): number => whole(area_mm2 / each_mm2);
  return { low: discs(DISC_mm2.most), likely: discs(DISC_mm2.likely), high: discs(DISC_mm2.least) };
};
const DISC_SPARE = 2.5;
const FEWEST_DISCS = 10;

/**
 * What a frame uses up, as bands; the shop's own log replaces them.
 * Bench rules for slits, joints and discs [practice], with the sources of each share beside it.
 * Refuses out-of-range for a count or size that is none.
 */
export const consumption = (input: ConsumptionInput): Outcome<Consumption> => {
  const { process, slits, rails, joints, pieces, depth_mm, width_mm, wall_mm } = input;
  for (const [field, count] of Object.entries({ slits, rails, joints, pieces }))
    if (!(Number.isInteger(count) && count >= 0 && count <= 10_000))
      return refuse(
        'out-of-range',
        field,
        `${count} is no count of ${field}.`,
        'a whole number, at most 10000',
      );
  for (const [field, size] of Object.entries({ depth_mm, width_mm }))
    if (!(size >= 10 && size <= 300))
      return refuse(
        'out-of-range',
        field,
        `No rail is made of ${size} mm tube.`,
        'at least 10, at most 300 mm',
      );
  if (!(wall_mm >= 1 && wall_mm <= 10 && 4 * wall_mm < depth_mm))
    return refuse(
      'out-of-range',
      'wall_mm',
      `No such tube has a wall of ${wall_mm} mm.`,
      'at least 1, at most 10 mm',
    );

  // Across the top and down both sides to where the corner of the back wall begins, 2t above the back.
  const slit_length_mm = width_mm + 2 * (depth_mm - 2 * wall_mm);
  const slit_area_mm2 = slits * rails * slit_length_mm * wall_mm;
  const slitWeld_m = (slits * rails * slit_length_mm) / 1000;
  const jointWeld_m = joints * JOINT_m;
  const weld_length_mm = (slitWeld_m + jointWeld_m) * 1000;
  const laid_kg = slitWeld_m * SLIT_kg_m + jointWeld_m * JOINT_kg_m;

  const arc_min: Use = {
    low: weld_length_mm / TRAVEL.quick,
    likely: weld_length_mm / TRAVEL.likely,
    high: weld_length_mm / TRAVEL.slow,
  };
  const gas_min: Use | null =
    process === 'gmaw'
      ? {
          low: arc_min.low * GAS_SHARE.least,
          likely: arc_min.likely * GAS_SHARE.beginner,
          high: arc_min.high * GAS_SHARE.beginner,
        }
      : null;
  const flow = wall_mm < 4.5 ? FLOW.thin : FLOW.thick;
  const wire_kg = process === 'smaw' ? null : wireUse(laid_kg, process);
  const rods = process === 'smaw' ? rodUse(laid_kg, input.rod_mm ?? 2.5) : null;

  return good({
    slit_length_mm,
    slit_area_mm2,
    weld_length_mm,
    laid_kg,
    wire_kg,
    rods,
    arc_min,
    gas_min,
    gas_l:
      gas_min === null
        ? null
        : {
            low: gas_min.low * flow.low,
            likely: gas_min.likely * flow.likely,
            high: gas_min.high * flow.high,
          },
    thin_discs: thinDiscs(slit_area_mm2),
    buy: {
      wire_kg: wire_kg === null ? null : wire_kg.likely + PRACTICE_kg,
      rods: rods === null ? null : rods.likely + whole(PRACTICE_kg / 2 / ROD_WEIGHT_kg[input.rod_mm ?? 2.5]),
      thin_discs:
        slits * rails === 0
          ? 0
          : Math.max(FEWEST_DISCS, whole((slit_area_mm2 * DISC_SPARE) / DISC_mm2.likely)),
      flap_discs: whole(joints * 0.2 + rails * 2),
      strip_discs: 2,
      chop_discs: whole(pieces / 40) + 1,
    },
  });
};

/** What a whole rod of 350 mm weighs with its cover, kg [practice]: half a kilogram of them is for practice. */
const ROD_WEIGHT_kg = { 2.5: 0.02, 3.2: 0.033 } as const;

const wireUse = (laid_kg: number, process: 'gmaw' | 'fcaw-s'): Use => {
  const { worst, likely, best } = KEPT[process];
  return {
    low: laid_kg / best,
    likely: (laid_kg / likely) * SPARE_WIRE,
    high: ((laid_kg * FULL_BEAD) / worst) * SPARE_WIRE,
  };
};

const rodUse = (laid_kg: number, core: 2.5 | 3.2): Use => ({
  low: whole(laid_kg / ROD_kg[core]),
  likely: whole((laid_kg / ROD_kg[core]) * SPARE_RODS),
  high: whole(((laid_kg * FULL_BEAD) / ROD_kg[core]) * SPARE_RODS),
});

/** A count up to the next whole one; of nothing it is 0 and not −0. */
const whole = (amount: number): number => Math.max(0, wholeUp(amount));
