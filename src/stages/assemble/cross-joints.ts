import type { Member } from '../../ramp/members.ts';
import { FACES, firstEnd, skipAround } from '../joint-order.ts';
import { TURN } from '../order.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { acrossKey, acrossName, acrossOf, pairOf } from './across.ts';
import { acrossScene, type CrossJoint } from './across-scene.ts';

export const JOINTS = 'assemble/weld-joints';

/** Minutes for one end of a crossmember, three faces (common practice, first frame: 9 to 16 both ends). */
const MINUTES = [4.5, 8] as const;
/** After so many ends the diagonals are looked at (bench rule; practice). */
const LOOK_AFTER = 4;

/**
 * The ends of one row in the order they are welded: skipping along it, one end each, from rail to rail by turns; then the ends
 * left over likewise. So neither rail is ever two welds ahead, and no neighbour is hot.
 */
const crosswise = (row: readonly Member[]): readonly CrossJoint[] => {
  const order = skipAround(row);
  const at = (member: Member, k: number, round: 0 | 1): CrossJoint => {
    const [one = '', other = ''] = pairOf(member).split('-');
    return { member, rail: firstEnd(k + round, one, other) };
  };
  return [...order.map((m, k) => at(m, k, 0)), ...order.map((m, k) => at(m, k, 1))];
};

/** Every end between the side frames in the order it is welded: on the rails, on the base, the diagonals across the rear. */
export const crossJoints = (s: Situation): readonly CrossJoint[] => {
  const across = acrossOf(s);
  return (['crossmember', 'base crossmember', 'rear diagonal'] as const).flatMap(kind =>
    crosswise(across.filter(m => m.kind === kind)),
  );
};

const keyOf = (j: CrossJoint): string => `${JOINTS}#${acrossKey(j.member)} ${j.rail}`;

/** Welded all in one by a build older than this order. */
const weldedBefore = (s: Situation, keys: readonly string[]): boolean =>
  s.build.ticks.has('assemble/weld') && !keys.some(key => s.build.ticks.has(key));

/** The ends of all crossmembers, one key each, the one to weld lit in the drawing; nothing where an older build welded them in one. */
export const crossJointSteps = (s: Situation): readonly StepDraft[] => {
  const joints = crossJoints(s);
  const items = joints.map((j, k): Item => {
    // Where each stands was read when it was tacked: its room is wanted for the caution.
    return {
      key: keyOf(j),
      name: `${acrossName(s, j.member)} ${j.rail}`,
      ...(k + 1 === LOOK_AFTER ? { note: { words: 'says.assemble-diagonals-now' } } : {}),
    };
  });
  if (
    weldedBefore(
      s,
      items.map(i => i.key),
    )
  )
    return [];
  const welded = joints.filter((_, k) => s.build.ticks.has(items[k]?.key ?? ''));
  const next =
    joints.find(
      (_, k) => !s.build.ticks.has(items[k]?.key ?? '') && !s.build.skips.has(items[k]?.key ?? ''),
    ) ?? joints[0];
  const n = joints.length;
  return [
    {
      key: JOINTS,
      stage: 'assemble',
      words: 'weld-joints',
      fills: {
        count: n,
        one: FACES.crossmember[0],
        two: FACES.crossmember[1],
        four: FACES.crossmember[3],
        look: LOOK_AFTER,
      },
      turn: TURN.assemble + 78,
      needs: ['assemble/width', 'assemble/diagonals', 'assemble/twist', 'prep/vents'],
      uses: [],
      items,
      cautions: ['crossmember-vents'],
      minutes: [Math.ceil(n * MINUTES[0]), Math.ceil(n * MINUTES[1])],
      ...(next === undefined ? {} : { scene: acrossScene(s, joints, welded, next) }),
    },
  ];
};
