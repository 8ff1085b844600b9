import type { RailName } from '../../ramp/design.ts';
import { TURN } from '../order.ts';
import type { Figure, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './limits.ts';

/** Less than this is left to the deck itself, mm; packers come in halves of a millimetre (common practice). */
const LEAST = 1;
const STEP = 0.5;

/** One packer under the deck, on top of one rail. */
export type Packer = Readonly<{ rail: RailName; spot: string; along_mm: number; thick_mm: number }>;

/** What the base rail was packed up by when it was set up: the tick remembers the number. */
const raised = (s: Situation, rail: RailName): number =>
  s.build.ticks.get(`assemble/pack-base@${rail}`)?.basis[`base-pack@${rail}`] ?? 0;

/** Whether some rail is to be packed straight, as was chosen about it: then all rails meet one line, not only each other. */
const packedStraight = (s: Situation): boolean =>
  s.ramp.rails.some(rail => {
    const survey = s.ramp.shapes.get(rail)?.survey ?? null;
    return survey !== null && s.build.chosen.some(c => c.remedy === 'packers' && c.plan.survey === survey);
  });

/**
 * Packers that bring every rail up to the highest at each of its flats, from the last survey of each; nothing until all are
 * measured. What the base was packed up counts as done: raised by p, the rail lies p·cos(slope) nearer the centre.
 */
export const packersOf = (s: Situation): readonly Packer[] => {
  const { rails, shapes, plans } = s.ramp;
  if (rails.some(rail => shapes.get(rail)?.survey === null)) return [];
  const heightAt = (rail: RailName, along: number): number => {
    const shape = shapes.get(rail);
    if (shape === undefined) return 0;
    return shape.offsetAt(along) + raised(s, rail) * Math.cos(shape.bottomAt(along).slope);
  };
  const spots = new Map(
    [...plans.values()].map(plan => [
      plan.rail,
      [
        ...plan.flats_mm.slice(0, -1).map((at, k) => ({ name: k === 0 ? 'entry' : String(k), at })),
        { name: 'lip', at: plan.toLip_mm },
      ],
    ]),
  );
  const highest = packedStraight(s)
    ? Math.max(...rails.flatMap(rail => (spots.get(rail) ?? []).map(({ at }) => heightAt(rail, at))))
    : null;
  return rails.flatMap(rail =>
    (spots.get(rail) ?? []).flatMap(({ name, at }): Packer[] => {
      const top = highest ?? Math.max(...rails.map(other => heightAt(other, at)));
      const thick_mm = Math.round((top - heightAt(rail, at)) / STEP) * STEP;
      return thick_mm >= LEAST ? [{ rail, spot: name, along_mm: at, thick_mm }] : [];
    }),
  );
};

/** Laying the packers dry, with the deck tried on them; no step where the rails match. */
export const packerSteps = (s: Situation): readonly StepDraft[] => {
  const packers = packersOf(s);
  if (packers.length === 0) return [];
  const items: readonly Item[] = packers.map(p => ({
    key: `finish/packers#${p.rail} ${p.spot}`,
    name: `${p.rail} ${p.spot}`,
    value: { v: p.thick_mm, as: 'length' },
  }));
  return [
    {
      key: 'finish/packers',
      stage: 'finish',
      words: 'packers',
      fills: { count: packers.length, least: { v: LEAST, as: 'length' } },
      turn: TURN.finish + 30,
      needs: ['finish/proof'],
      uses: ['thickest-packer'],
      line: { face: 'rail top face' },
      items,
      minutes: [3 * packers.length, 6 * packers.length],
    },
  ];
};

export const packerFigures = (s: Situation): readonly Figure[] => {
  const thick = packersOf(s).map(p => p.thick_mm);
  return [
    {
      id: 'thickest-packer',
      kind: 'dimension',
      as: 'length',
      line: { face: 'rail top face' },
      value: { is: 'exact', v: thick.length === 0 ? 0 : Math.max(...thick) },
      matters: MATTERS.length,
    },
  ];
};
