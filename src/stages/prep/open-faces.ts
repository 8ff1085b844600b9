import type { RailName } from '../../ramp/design.ts';
import { railTurn } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { slitStrip } from '../slit-strip.ts';
import { DISC_FITS } from './disc-speed.ts';

/** From this wall a closed slit welded from one side is opened to a V first, mm (common practice). */
const OPEN_FROM_WALL = 2.5;
/** The V: depth and width at the face, mm, low and high (common practice). */
const V = { deep: [1, 1.5], wide: [2, 2.5] } as const;
/** Throat that a bead is counted with, share of the wall: without the V, and with it (common practice). */
const THROAT = { closed: 50, opened: 70 } as const;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** Opening the closed faces of a rail's slits for the weld: only where the wall is thick enough to need it. */
export const openFaces = (s: Situation, rail: RailName, index: number): readonly StepDraft[] => {
  const plan = s.ramp.plans.get(rail);
  const wall = s.measured.tubes.get(rail)?.wall_mm ?? s.ramp.design.tube.wall_mm;
  const count = plan?.slits.length ?? 0;
  if (count === 0 || wall < OPEN_FROM_WALL) return [];
  return [
    {
      key: `prep/open-faces@${rail}`,
      stage: 'prep',
      words: 'open-faces',
      fills: {
        rail,
        count,
        'deep-low': thickness(V.deep[0]),
        'deep-high': thickness(V.deep[1]),
        'wide-low': thickness(V.wide[0]),
        'wide-high': thickness(V.wide[1]),
        wall: thickness(wall),
        closed: { v: THROAT.closed, as: 'percent' },
        opened: { v: THROAT.opened, as: 'percent' },
      },
      turn: railTurn(s.ramp.design, index, { after: 'survey', at: 17 }),
      needs: [`tack/survey@${rail}`, `tack/sideways@${rail}`, `tack/carry@${rail}`, DISC_FITS],
      uses: [],
      cautions: ['prep-guard'],
      minutes: [count, 2 * count],
      scene: slitStrip(s, rail),
    },
  ];
};
