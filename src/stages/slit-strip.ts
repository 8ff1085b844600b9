import type { RailName } from '../ramp/design.ts';
import { lazyScene } from '../scene/lazy-scene.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import type { Situation } from './situation.ts';

/** Drawn depth as a share of the length: a rail to scale would be one dot high. */
const DRAWN_DEPTH = 1 / 10;

/** Whether a slit is sawn: its own item was ticked under the step of its third. */
export const isSawn = (s: Situation, rail: RailName, third: number, slit: number): boolean =>
  s.build.ticks.has(sawItemKey(rail, third, slit));

/** The key of the saw cut of one slit, as the step of its third lists it. */
export const sawItemKey = (rail: RailName, third: number, slit: number): string =>
  `cut/saw-third@${rail}:${third}#${slit}`;

/** The drawing itself; see `slitStrip`. */
const drawStrip = (s: Situation, rail: RailName, lit: number | undefined): Scene => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return { title: '', items: [] };
  const long = plan.cut_mm;
  const deep = long * DRAWN_DEPTH;
  const stop = deep * 0.15;
  const items: SceneItem[] = [
    {
      is: 'path',
      stroke: 'solid',
      points: [
        { x: 0, y: 0 },
        { x: long, y: 0 },
        { x: long, y: deep },
        { x: 0, y: deep },
        { x: 0, y: 0 },
      ],
    },
    // The lip mark: what lies past it is trimmed once the rails match.
    {
      is: 'path',
      stroke: 'dotted',
      points: [
        { x: plan.toLip_mm, y: 0 },
        { x: plan.toLip_mm, y: deep },
      ],
    },
  ];
  for (const slit of plan.slits) {
    const sawn = isSawn(s, rail, slit.third, slit.number);
    const here = slit.number === lit;
    items.push({
      is: 'path',
      stroke: here ? 'lit' : slit.marked === null ? 'dotted' : 'solid',
      points: [
        { x: slit.at_mm, y: sawn || here || slit.marked === null ? stop : deep * 0.6 },
        { x: slit.at_mm, y: here ? deep * 1.3 : deep },
      ],
    });
    const count = plan.slits.length;
    const end = slit.number === 1 || slit.number === count;
    const fifth = slit.number % 5 === 0 && slit.number < count - 1;
    if (here || end || fifth) {
      items.push({
        is: 'label',
        at: { x: slit.at_mm, y: here ? deep * 1.6 : -deep * 0.5 },
        text: String(slit.number),
        anchor: 'middle',
        ...(here ? { lit: true as const } : {}),
      });
    }
  }
  items.push({ is: 'label', at: { x: 0, y: deep * 1.6 }, text: 'entry', anchor: 'left' });
  items.push({ is: 'label', at: { x: long, y: deep * 1.6 }, text: 'lip', anchor: 'right' });
  return { title: `rail ${rail}, back wall down, to scale along`, items };
};

/**
 * One rail lying straight with its slits: back wall below, slit face above, entry end to the left. Along is to scale, depth is not.
 * A sawn slit reaches down to the stop line, a marked one is short, a planned one dotted.
 * @param lit number of the slit the step is about
 */
export const slitStrip = (s: Situation, rail: RailName, lit?: number): Scene =>
  lazyScene(() => drawStrip(s, rail, lit));
