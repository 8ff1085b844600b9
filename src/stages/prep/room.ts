import { TURN } from '../order.ts';
import type { Ask, Figure, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { readAt, valueAt } from './reading.ts';

/** Air for one welder without a fan, m³: 10 000 cubic feet. Ceiling under which a fan is needed whatever the room, m: 16 ft (29 CFR 1910.252(c)(2) [found]). */
export const ROOM_m3 = 10_000 * 0.3048 ** 3;
export const CEILING_m = 16 * 0.3048;
/** Air that carries smoke off the place of welding, m/s: 100 feet a minute (29 CFR 1910.252(c)(3) [found]). */
export const MOVING_m_s = (100 * 0.3048) / 60;

export const ROOM = 'prep/room';
/** Where it is welded, by number. */
const WHERE = { outdoors: 0, room: 1, cellar: 2 } as const;

export type Room = Readonly<{
  cellar: boolean;
  outdoors: boolean;
  /** Its air, m³; null outdoors, and until it is measured. */
  air_m3: number | null;
  /** Too little air or too low for one welder without moving air. */
  small: boolean;
}>;

/** The place as it was told; null until then. */
export const roomOf = (s: Situation): Room | null => {
  const where = valueAt(s, ROOM, 'where');
  if (where === undefined) return null;
  const [long, wide, high] = ['long', 'wide', 'high'].map(ask => valueAt(s, ROOM, ask));
  const known = where === WHERE.room && long !== undefined && wide !== undefined && high !== undefined;
  const air_m3 = known ? long * wide * high : null;
  return {
    cellar: where >= WHERE.cellar,
    outdoors: where === WHERE.outdoors,
    air_m3,
    small: known && (long * wide * high < ROOM_m3 || high < CEILING_m),
  };
};

/** Walls and ceiling are measured only where there are any. */
const roomAsks = (s: Situation): readonly Ask[] => {
  const where: Ask = { ask: 'where', as: 'count', expected: [1, 1], possible: [0, 2], unlit: true };
  if (readAt(s, ROOM, 'where')?.value !== WHERE.room) return [where];
  return [
    where,
    { ask: 'long', as: 'distance', expected: [3, 9], possible: [1, 100] },
    { ask: 'wide', as: 'distance', expected: [2.5, 9.5], possible: [1, 100] },
    { ask: 'high', as: 'distance', expected: [2, 2.8], possible: [1.5, 20] },
  ];
};

export const roomStep = (s: Situation): StepDraft => ({
  key: ROOM,
  stage: 'prep',
  words: 'room',
  fills: {
    ceiling: { v: CEILING_m, as: 'distance' },
    move: { v: MOVING_m_s, as: 'speed' },
  },
  turn: TURN.place - 5,
  needs: [],
  uses: [],
  asks: roomAsks(s),
  minutes: [3, 5],
});

/** How much of the air that one welder wants the room holds. */
export const roomFigures = (s: Situation): readonly Figure[] => {
  const air = roomOf(s)?.air_m3 ?? null;
  return air === null
    ? []
    : [
        {
          id: 'room-air',
          kind: 'size',
          as: 'percent',
          value: { is: 'exact', v: (100 * air) / ROOM_m3 },
          matters: 5,
        },
      ];
};
