import type { Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { cracks, failing, LOOKS } from './failing.ts';

/** No reason opens it: a crack is ground out, welded and looked at again, or the ramp stays out of use. */
const crackGate = (s: Situation): Gate => {
  const open = cracks(s);
  return {
    id: 'open-crack',
    shut: open.length > 0,
    never: true,
    fills: { count: open.reduce((sum, c) => sum + c.count, 0) },
    measure: open[0]?.step ?? LOOKS.slits,
  };
};

/** Welds that fail in another way and are not yet welded again and read as sound, nor left as within the figures. */
const failingGate = (s: Situation): Gate => {
  const open = failing(s).filter(f => f.seen !== 'weld-crack' && f.seen !== 'leave-weld');
  return {
    id: 'weld-fails',
    shut: open.length > 0,
    fills: { count: open.reduce((sum, f) => sum + f.count, 0) },
    measure: open[0]?.step ?? LOOKS.across,
  };
};

/** What no load and no deck goes on over. */
export const weldGates = (s: Situation): readonly Gate[] => [crackGate(s), failingGate(s)];

/** Shut where welds were passed over unseen: who rides says who looked instead. */
export const unseenGate = (s: Situation): Gate => {
  const looks = [...s.ramp.rails.map(LOOKS.joints), LOOKS.across, LOOKS.slits];
  const unseen = [...s.build.skips.keys()].filter(key => looks.includes(key.split('#')[0] ?? '')).length;
  return { id: 'welds-unseen', shut: unseen > 0, fills: { count: unseen } };
};
