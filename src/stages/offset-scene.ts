import type { RailPlan } from '../ramp/rail-plan.ts';
import type { Scene, SceneItem } from '../scene/scene.ts';
import type { LineName } from './sheet.ts';

/** Offsets read so far, by station along the line, mm; null where not read. */
export type Read = Readonly<{ station_mm: number; offset_mm: number | null }>;

/** Magnifications written beside a drawing of offsets: the largest that keeps them within a tenth of the rail's length. */
const MAGNIFY = [1, 2, 5, 10, 20, 50, 100] as const;

/**
 * A rail's line as dots, and the rail as it lies with its offsets magnified, + toward the centre. The lit station carries a mark.
 */
export const offsetScene = (
  plan: RailPlan,
  line: LineName,
  read: readonly Read[],
  lit: number | null,
): Scene => {
  const { radius_mm, turn_rad } = line === 'tack line' ? plan.tack : plan.finished;
  const arc = radius_mm * turn_rad;
  const spot = (s: number, off: number): { x: number; y: number } => {
    const a = Math.min(s, arc) / radius_mm;
    const beyond = Math.max(0, s - arc);
    return {
      x: (radius_mm - off) * Math.sin(a) + beyond * Math.cos(a),
      y: radius_mm - (radius_mm - off) * Math.cos(a) + beyond * Math.sin(a),
    };
  };
  const end = arc + plan.straight_mm;
  const worst = Math.max(0.5, ...read.map(r => Math.abs(r.offset_mm ?? 0)));
  const times = [...MAGNIFY].reverse().find(m => worst * m <= end / 10) ?? 1;
  const dots = Array.from({ length: 41 }, (_, k) => spot((end * k) / 40, 0));
  const known = read.filter(r => r.offset_mm !== null);
  const rail = known.map(r => spot(r.station_mm, (r.offset_mm ?? 0) * times));
  const at = lit === null ? undefined : read[lit];
  const items: SceneItem[] = [
    { is: 'path', points: dots, stroke: 'dotted' },
    ...(rail.length > 1 ? [{ is: 'path', points: rail, stroke: 'solid' } as const] : []),
    ...known
      .filter(r => Math.abs(r.offset_mm ?? 0) >= 0.5)
      .map(
        (r): SceneItem => ({
          is: 'mark',
          at: spot(r.station_mm, (r.offset_mm ?? 0) * times),
          sign: (r.offset_mm ?? 0) > 0 ? 'plus' : 'minus',
        }),
      ),
    ...(at === undefined
      ? []
      : ([
          { is: 'mark', at: spot(at.station_mm, (at.offset_mm ?? 0) * times), sign: 'here', lit: true },
          {
            is: 'label',
            at: spot(at.station_mm, (at.offset_mm ?? 0) * times + end / 20),
            text: String((lit ?? 0) + 1),
            anchor: 'right',
            lit: true,
          },
        ] as const)),
    { is: 'label', at: { x: 0, y: -end / 40 }, text: 'entry', anchor: 'left' },
  ];
  return { title: `drawn as it lies, offsets x ${times}`, items };
};
