import type { RailName, Tube } from './design.ts';
import type { Measured } from './measured.ts';
import { railsOf } from './rail-count.ts';
import { type Design, settle } from './settle.ts';

/** The rails' tube as it was planned and bought, whatever the caliper found since. */
export const tubeAsPlanned = (d: Design): Tube => {
  const planned = settle(d.name, d.system, d.answered);
  return planned.ok ? planned.value.tube : d.tube;
};

/**
 * The tube that the frame is drawn with. One rail's reading changes that rail alone; base rails, entry and lines follow once every rail
 * was read, and then the mean of them. Widths take room between the rails, so each counts as soon as it is read.
 * @param planned the design before anything was measured
 */
export const tubeInHand = (planned: Design, m: Measured): Partial<Tube> => {
  const rails = railsOf(planned);
  const of = (rail: RailName, side: keyof Tube): number | undefined => m.tubes.get(rail)?.[side];
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const whenAllRead = (side: keyof Tube): Partial<Tube> => {
    const read = rails.map(rail => of(rail, side)).filter(v => v !== undefined);
    return read.length < rails.length ? {} : { [side]: mean(read) };
  };
  return {
    ...whenAllRead('depth_mm'),
    ...whenAllRead('wall_mm'),
    width_mm: mean(rails.map(rail => of(rail, 'width_mm') ?? planned.tube.width_mm)),
  };
};
