import { good, type Outcome } from '../../quantity/outcome.ts';
import { type Combination, pieceAt } from './load-combinations.ts';
import { AXIAL, type Responses, SAG_FROM, SAG_TO } from './responses.ts';
import type { SideFrame } from './side-frame.ts';
import { rangeUse, slitAllowed_MPa, slitStress, slitUse } from './slit-check.ts';
import { passesAt, type SlitSection, slitSection } from './slit-section.ts';

export type SlitResult = Readonly<{
  /** From 1 at the entry end. */
  number: number;
  x_mm: number;
  along_mm: number;
  /** Moments as designed for; + presses the slit face. */
  moment_Nmm: Readonly<{ least: number; most: number }>;
  axial_N: Readonly<{ least: number; most: number }>;
  /** Greatest stress over what is allowed, and what brings it about. */
  utilisation: number;
  worst: Combination;
  /** As the wheel passes (L1 alone, unfactored): the greater of slit face and back wall, over the cap, and the passes it bears. */
  range_MPa: number;
  range_utilisation: number;
  passes: number;
}>;

type Kept = { least: number; most: number };
const wider = (kept: Kept, value: number): void => {
  kept.least = Math.min(kept.least, value);
  kept.most = Math.max(kept.most, value);
};

/** Gathers what every slit of the rail feels. */
export class SlitGather {
  readonly #frame: SideFrame;
  readonly #section: SlitSection;
  readonly #allowed: number;
  readonly #at: readonly number[];
  readonly #sides: readonly (readonly Side[])[];
  readonly #kept: { moment: Kept; axial: Kept; utilisation: number; worst: Combination }[];

  private constructor(frame: SideFrame, section: SlitSection) {
    const { input } = frame;
    this.#frame = frame;
    this.#section = section;
    this.#allowed = slitAllowed_MPa(input.standard, input.grade, input.slitProven, input.electrode_MPa);
    this.#at = frame.places.flatMap(({ slit }, k) => (slit === null ? [] : [k]));
    this.#sides = this.#at.map(place => sidesOf(frame, place));
    this.#kept = this.#at.map(() => ({
      moment: { least: Infinity, most: -Infinity },
      axial: { least: Infinity, most: -Infinity },
      utilisation: 0,
      worst: { load: 'L1', place: null },
    }));
  }

  /** Refuses what `slitSection` refuses. */
  static of(frame: SideFrame): Outcome<SlitGather> {
    const { tube, opened } = frame.input.rail;
    const rule = frame.input.standard === 'AISC' ? 'AISC' : 'EN10219';
    const section = slitSection({ shape: 'rect', ...tube, rule }, opened);
    return section.ok ? good(new SlitGather(frame, section.value)) : section;
  }

  gather(combination: Combination, figures: Float64Array): void {
    for (let k = 0; k < this.#kept.length; k++) {
      const kept = this.#kept[k]!;
      for (const { axial, sagging } of this.#sides[k]!) {
        const [pull, moment] = [figures[axial]!, figures[sagging]!];
        wider(kept.moment, moment);
        wider(kept.axial, pull);
        const use = slitUse(slitStress(this.#section, pull, moment), this.#allowed);
        if (use <= kept.utilisation) continue;
        kept.utilisation = use;
        kept.worst = combination;
      }
    }
  }

  all(responses: Responses): SlitResult[] {
    return this.#at.map((place, k) => {
      const { moment, axial, utilisation, worst } = this.#kept[k]!;
      const { slit, x_mm, along_mm } = this.#frame.places[place]!;
      const range_MPa = rangeAt(this.#frame, responses, this.#section, this.#sides[k]!);
      return {
        number: slit!,
        x_mm,
        along_mm,
        moment_Nmm: moment,
        axial_N: axial,
        utilisation,
        worst,
        range_MPa,
        range_utilisation: rangeUse(range_MPa),
        passes: passesAt(range_MPa),
      };
    });
  }
}

/** Where in the figures of the pieces a side of a slit finds its force along the rail and its moment. */
type Side = Readonly<{ axial: number; sagging: number }>;

/** Just before and just after a place of the rail; piece k of the frame joins places k and k + 1. */
const sidesOf = (frame: SideFrame, place: number): readonly Side[] => {
  const sides: Side[] = [];
  if (place > 0) sides.push({ axial: pieceAt(place - 1) + AXIAL, sagging: pieceAt(place - 1) + SAG_TO });
  if (place + 1 < frame.places.length)
    sides.push({ axial: pieceAt(place) + AXIAL, sagging: pieceAt(place) + SAG_FROM });
  return sides;
};

/** How far the stress at a slit goes to and fro as L1 rolls over, from and back to nothing. */
const rangeAt = (
  frame: SideFrame,
  responses: Responses,
  section: SlitSection,
  sides: readonly Side[],
): number => {
  const { riding_N } = frame.input.loads;
  let range = 0;
  for (const { axial, sagging } of sides) {
    const top = { least: 0, most: 0 };
    const back = { least: 0, most: 0 };
    for (const [wheel, { slope_rad }] of frame.places.entries()) {
      const right = responses.right[wheel]!.pieces;
      const up = responses.up[wheel]!.pieces;
      const [sin, cos] = [Math.sin(slope_rad) * riding_N, Math.cos(slope_rad) * riding_N];
      const stress = slitStress(
        section,
        sin * right[axial]! - cos * up[axial]!,
        sin * right[sagging]! - cos * up[sagging]!,
      );
      wider(top, stress.top_MPa);
      wider(back, stress.back_MPa);
    }
    range = Math.max(range, top.most - top.least, back.most - back.least);
  }
  return range;
};
