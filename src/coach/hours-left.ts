import type { Band } from '../build/shop/learned.ts';
import { learnedMinutes, type Shop, type TimedWork } from '../build/shop/shop.ts';
import type { MemberKind } from '../ramp/members.ts';
import type { Stage } from '../stages/sheet.ts';
import type { View } from './view.ts';
import type { Step } from './walk.ts';

/** Steps in which joints are welded, and what is joined in each. */
const JOINED: readonly Readonly<{ step: RegExp; kinds: readonly MemberKind[] }>[] = [
  { step: /^brace\/weld-uprights@(.+)$/, kinds: ['upright', 'lip upright'] },
  { step: /^brace\/weld-diagonals@(.+)$/, kinds: ['diagonal'] },
  { step: /^assemble\/weld$/, kinds: ['crossmember', 'base crossmember', 'rear diagonal'] },
];
/** A step whose items are joints. */
const JOINT_ITEMS = /^assemble\/weld-joints/;

/** Joints that a step or its item welds; 0 for any other. What was welded item by item is not counted again at the step after it. */
const jointsOf = (view: View, key: string): number => {
  if (JOINT_ITEMS.test(key)) return key.includes('#') ? 1 : 0;
  if (key === 'assemble/weld' && view.steps.some(s => JOINT_ITEMS.test(s.key))) return 0;
  for (const { step, kinds } of JOINED) {
    const found = step.exec(key);
    if (found === null) continue;
    const mine = view.ramp.members.filter(
      m => kinds.includes(m.kind) && (found[1] === undefined || m.rail === found[1]),
    );
    return mine.reduce((sum, m) => sum + m.joints, 0);
  }
  return 0;
};

/** A likely number alone is taken for a band so wide to both sides: one logged batch scatters by a third [practice]. */
const AS_BEGUN = 1.33;

const SAWN_SLITS = /^cut\/saw-third@/;

/** Work of a kind that was done since a moment: cuts logged, slits and joints ticked. */
export const doneSince = (view: View, what: TimedWork, since: string | null): number => {
  const after = (at: string): boolean => since === null || at > since;
  const { pieces, ticks } = view.build;
  if (what === 'cut') return pieces.filter(p => after(p.at)).length;
  const done = [...ticks].filter(([, tick]) => after(tick.at)).map(([key]) => key);
  return what === 'slit'
    ? done.filter(key => SAWN_SLITS.test(key) && key.includes('#')).length
    : done.reduce((sum, key) => sum + jointsOf(view, key), 0);
};

/** What a step is counted in, where it is counted in anything, and how many of it are still to do. */
const countedIn = (view: View, step: Step): Readonly<{ what: TimedWork; count: number }> | null => {
  const open = (step.items?.length ?? 0) - step.itemsDone;
  if (SAWN_SLITS.test(step.key)) return { what: 'slit', count: open };
  if (step.items?.some(i => i.piece !== undefined)) return { what: 'cut', count: open };
  if (step.piece !== undefined) return { what: 'cut', count: 1 };
  if (JOINT_ITEMS.test(step.key)) return { what: 'joint', count: open };
  const joints = jointsOf(view, step.key);
  return joints === 0 ? null : { what: 'joint', count: joints };
};

/** Minutes of one step: as the person's own log has it, else as the stage has it for what of it is still open. */
const minutesOf = (view: View, shop: Shop, step: Step): readonly [number, number] => {
  const counted = countedIn(view, step);
  if (counted !== null && shop.minutes[counted.what].length > 0) {
    const each = learnedMinutes(shop, counted.what);
    return [each.low * counted.count, each.high * counted.count];
  }
  // Nothing logged in this shop: the build has what the shop knew when it began.
  const began = counted === null ? undefined : view.build.shop[`minutes-${counted.what}`];
  if (counted !== null && began !== undefined)
    return [(began / AS_BEGUN) * counted.count, began * AS_BEGUN * counted.count];
  const items = step.items?.length ?? 0;
  const share = items === 0 ? 1 : (items - step.itemsDone) / items;
  return [step.minutes[0] * share, step.minutes[1] * share];
};

/**
 * Minutes of work left, as a band: of one stage, or of the whole build.
 * @param stage null for all of them
 */
export const minutesLeft = (view: View, shop: Shop, stage: Stage | null): Band => {
  const open = view.steps.filter(
    s =>
      (stage === null || s.stage === stage) &&
      (s.state === 'to do' || s.state === 'waiting' || s.state === 'stop'),
  );
  const each = open.map(step => minutesOf(view, shop, step));
  const low = each.reduce((sum, m) => sum + m[0], 0);
  const high = each.reduce((sum, m) => sum + m[1], 0);
  return { low, likely: Math.sqrt(low * high), high };
};
