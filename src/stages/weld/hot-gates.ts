import { thickestOnePass } from '../../reckon/welding/duty.ts';
import type { Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MACHINE, machineOf, ruledFor } from './machine.ts';
import { onceAlone } from './once.ts';
import { pairingGates } from './pairing.ts';
import { placesOf, wallAt } from './places.ts';

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
const current = (v: number) => ({ v, as: 'current' }) as const;

/** A wire or rod that the thinnest wall to be welded with it does not stand. */
const wireGates = (s: Situation): readonly Gate[] => {
  const machine = machineOf(s);
  if (machine === null || machine.filler_mm === null || machine.set.ok) return [];
  const wall_mm = wallAt(s, 'slits');
  const suited = ruledFor(machine.kind, wall_mm, null);
  return [
    {
      id: 'wire-wrong',
      shut: true,
      fills: {
        wire: thickness(machine.filler_mm),
        wall: thickness(wall_mm),
        suited: thickness(suited.ok ? suited.value.filler_mm : machine.filler_mm),
      },
      measure: MACHINE,
    },
  ];
};

/** A machine that gives less than the least the thickest wall asks, or a mains too small for it in one pass. */
export const machineGates = (s: Situation): readonly Gate[] => {
  const machine = machineOf(s);
  if (machine === null) return [];
  const { most_A, mains_V, kind, process, filler_mm } = machine;
  const wall_mm = Math.max(...placesOf(s).map(place => wallAt(s, place)));
  const ruled = ruledFor(kind, wall_mm, filler_mm);
  const onePass = mains_V === null ? null : thickestOnePass(mains_V, process);
  if (ruled.ok && most_A !== null && most_A < ruled.value.amps.low)
    return [
      {
        id: 'machine-small',
        shut: true,
        fills: { most: current(most_A), least: current(ruled.value.amps.low), wall: thickness(wall_mm) },
        measure: MACHINE,
      },
    ];
  return mains_V !== null && onePass !== null && wall_mm > onePass
    ? [
        {
          id: 'mains-small',
          shut: true,
          fills: {
            mains: { v: mains_V, as: 'tension' },
            wall: thickness(wall_mm),
            most: thickness(onePass),
          },
          measure: MACHINE,
        },
      ]
    : [];
};

/** What keeps every arc of this page off: a wire too thick, and wire, gas and pole that do not go together. */
export const hotGates = onceAlone((s: Situation): readonly Gate[] => [...wireGates(s), ...pairingGates(s)]);
