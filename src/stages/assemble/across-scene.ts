import type { RailName } from '../../ramp/design.ts';
import { clearWidth, type Member } from '../../ramp/members.ts';
import { lazyScene } from '../../scene/lazy-scene.ts';
import type { Scene, SceneItem } from '../../scene/scene.ts';
import type { Situation } from '../situation.ts';
import { acrossName, pairOf } from './across.ts';

/** An end of what joins two side frames. */
export type CrossJoint = Readonly<{ member: Member; rail: RailName }>;

/** Of a crossmember the end that is lit is drawn so far, as a share of its length. */
const LIT = 0.35;
/** What stands on the ground is drawn in a drawing of its own: from above it would lie under the others. */
const onGround = (m: Member): boolean => m.kind !== 'crossmember';

/**
 * The frame from above, lip to the right, the first rail at the top: the end that is welded next lit, those that are welded marked.
 * @param welded ends that are welded already
 */
export const acrossScene = (
  s: Situation,
  joints: readonly CrossJoint[],
  welded: readonly CrossJoint[],
  next: CrossJoint,
): Scene =>
  lazyScene(() => {
    const { rails, design: d } = s.ramp;
    const apart = clearWidth(d) + d.tube.width_mm;
    const y = (rail: RailName): number => -apart * rails.indexOf(rail);
    const shown = joints.filter(j => onGround(j.member) === onGround(next.member));
    const xs = shown.map(j => j.member.x_mm);
    const beyond = d.tube.depth_mm;
    const [from, to] = [Math.min(...xs) - beyond, Math.max(...xs) + beyond];
    const ends = (m: Member): readonly [RailName, RailName] => {
      const [one = '', other = ''] = pairOf(m).split('-');
      return [one, other];
    };
    const items: SceneItem[] = rails.flatMap((rail): readonly SceneItem[] => [
      {
        is: 'path',
        stroke: 'solid',
        points: [
          { x: from, y: y(rail) },
          { x: to, y: y(rail) },
        ],
      },
      { is: 'label', at: { x: from - beyond, y: y(rail) }, text: rail, anchor: 'right' },
    ]);
    for (const m of new Set(shown.map(j => j.member))) {
      const [one, other] = ends(m);
      items.push({
        is: 'path',
        stroke: 'solid',
        points: [
          { x: m.x_mm, y: y(one) },
          { x: m.x_mm, y: y(other) },
        ],
      });
    }
    for (const j of welded.filter(w => shown.includes(w)))
      items.push({ is: 'mark', at: { x: j.member.x_mm, y: y(j.rail) }, sign: 'dot' });
    const { member: m, rail } = next;
    const far = ends(m).find(r => r !== rail) ?? rail;
    items.push(
      {
        is: 'path',
        stroke: 'lit',
        points: [
          { x: m.x_mm, y: y(rail) },
          { x: m.x_mm, y: y(rail) + LIT * (y(far) - y(rail)) },
        ],
      },
      { is: 'mark', at: { x: m.x_mm, y: y(rail) }, sign: 'here', lit: true },
      { is: 'label', at: { x: to + beyond, y: y(rail) }, text: 'lip', anchor: 'left' },
    );
    const where = onGround(m) ? 'the base' : 'the rails';
    return { title: `${where} from above: ${acrossName(s, m)} at ${rail}`, items };
  });
