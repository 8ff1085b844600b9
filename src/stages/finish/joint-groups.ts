import type { RailName } from '../../ramp/design.ts';
import type { Member, MemberKind } from '../../ramp/members.ts';
import type { Situation } from '../situation.ts';
import { anchorsAnEnd } from '../standing-still.ts';

/** Welds that look alike and are walked along in one go. */
export type JointGroup = Readonly<{
  /** Name of the ask in which its failing welds are said. */
  ask: string;
  /** As it is written on the page. */
  name: string;
  welds: number;
}>;

const welds = (members: readonly Member[], ...kinds: readonly MemberKind[]): number =>
  members.filter(m => kinds.includes(m.kind)).reduce((sum, m) => sum + m.joints, 0);

/** Groups of one side frame, from the entry to the lip, slits last; those that it has. */
export const sideGroups = (s: Situation, rail: RailName): readonly JointGroup[] => {
  const side = s.ramp.members.filter(m => m.rail === rail);
  const stands = side.filter(m => m.kind === 'upright' || m.kind === 'lip upright').length;
  return [
    { ask: 'entry', name: 'entry plates', welds: welds(side, 'base rail', 'side plate') },
    { ask: 'bottoms', name: 'upright bottoms', welds: stands },
    { ask: 'tops', name: 'upright tops', welds: stands },
    { ask: 'diagonals', name: 'diagonals', welds: welds(side, 'diagonal') },
    { ask: 'feet', name: 'feet', welds: welds(side, 'foot plate') },
    { ask: 'slits', name: 'slits', welds: s.ramp.plans.get(rail)?.slits.length ?? 0 },
  ].filter(group => group.welds > 0);
};

/** Two handles a side, each with two ends. */
const HANDLE_WELDS = 2 * 2 * 2;

/** Groups between the side frames, and what is welded on to all of them. */
export const acrossGroups = (s: Situation): readonly JointGroup[] => {
  const across = s.ramp.members.filter(m => m.rail === undefined);
  return [
    { ask: 'rails', name: 'crossmembers', welds: welds(across, 'crossmember') },
    { ask: 'bases', name: 'base crossmembers', welds: welds(across, 'base crossmember') },
    { ask: 'rear', name: 'rear diagonals', welds: welds(across, 'rear diagonal') },
    {
      ask: 'plate',
      name: 'entry plate and bearers',
      welds: s.ramp.entry.pieces.reduce((sum, m) => sum + m.joints, 0),
    },
    { ask: 'lugs', name: 'lugs and handles', welds: 2 * anchorsAnEnd(s) + HANDLE_WELDS },
  ].filter(group => group.welds > 0);
};
