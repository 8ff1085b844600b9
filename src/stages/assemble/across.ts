import type { Member } from '../../ramp/members.ts';
import type { Situation } from '../situation.ts';

const ACROSS = new Set(['crossmember', 'base crossmember', 'rear diagonal']);

/** What joins the side frames: crossmembers on the rails, on the base, and diagonals across the rear. */
export const acrossOf = (s: Situation): readonly Member[] => s.ramp.members.filter(m => ACROSS.has(m.kind));

const WHERE: Readonly<Partial<Record<Member['kind'], string>>> = {
  'base crossmember': 'base ',
  'rear diagonal': 'diagonal',
};

/** The pair of rails it joins: A-B. */
export const pairOf = (m: Member): string => (m.need.split('@')[1] ?? '').split(':')[0] ?? '';

/** What is written on a crossmember: `entry`, `6`, `base rear`; with more than two rails the pair comes first. */
export const acrossName = (s: Situation, m: Member): string => {
  const [, place = ''] = (m.need.split('@')[1] ?? '').split(':');
  const own = `${WHERE[m.kind] ?? ''}${place}`;
  return s.ramp.rails.length > 2 ? `${pairOf(m)} ${own}` : own;
};

/** Its name in keys, which no other has. */
export const acrossKey = (m: Member): string =>
  `${m.need.split('@')[1]}${m.kind === 'crossmember' ? '' : ` ${m.kind}`}`;

/** Where it goes: along the back wall from the entry end on the rails, along the ground from the base rails' front; mm. */
export const acrossAt = (s: Situation, m: Member): number | null => {
  if (m.kind === 'rear diagonal') return null;
  const front = s.ramp.members.find(b => b.kind === 'base rail');
  const from = (front?.x_mm ?? 0) - (front?.long_mm ?? 0) / 2;
  return m.along_mm ?? m.x_mm - from;
};
