import { readingKey } from '../../build/fold.ts';
import type { Ask, Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { type Kind, machineOf } from './machine.ts';
import { numbered } from './numbered.ts';
import { SETTINGS } from './setting-now.ts';

/**
 * What is on the machine, by number, as its labels say. Spool: 1 solid steel wire, 2 cored wire without gas, 3 cored wire for gas,
 * 4 anything else; packet: 1 rutile, 2 low-hydrogen, 3 cellulosic, 4 anything else. Bottle: 1 argon with CO2, 2 CO2, 3 argon alone,
 * 4 anything else. Gun or holder on: 1 plus, 2 minus, 3 alternating.
 */
const SPOOL: Readonly<Record<Kind, number>> = { 1: 1, 2: 1, 3: 2, 4: 1, 5: 2 };
const BOTTLE: Readonly<Partial<Record<Kind, number>>> = { 1: 1, 2: 2 };
/** Poles a kind runs on, the usual one first: solid wire +, self-shielded −, E6013 any, E7018 + or alternating. */
const POLES: Readonly<Record<Kind, readonly number[]>> = { 1: [1], 2: [1], 3: [2], 4: [1, 2, 3], 5: [1, 3] };

const OTHER = 4;

const read = (s: Situation, ask: string): number | undefined =>
  s.build.readings.get(readingKey(SETTINGS, ask))?.value;

type Wrong = Readonly<{ ask: string; gate: string; never?: true }>;

/** What was read off the machine that does not go together. */
const wrongs = (s: Situation, kind: Kind): readonly Wrong[] => {
  const spool = read(s, 'spool');
  const bottle = read(s, 'bottle');
  const pole = read(s, 'polarity');
  const list: Wrong[] = [];
  if (spool !== undefined && spool !== SPOOL[kind])
    list.push(
      spool === OTHER
        ? { ask: 'spool', gate: 'spool-other', never: true }
        : { ask: 'spool', gate: kind >= 4 ? 'packet-wrong' : 'spool-wrong' },
    );
  const gas = BOTTLE[kind];
  if (gas !== undefined && bottle !== undefined && bottle !== gas)
    list.push(
      bottle === OTHER
        ? { ask: 'bottle', gate: 'gas-other', never: true }
        : { ask: 'bottle', gate: bottle === 3 ? 'gas-argon' : bottle === 2 ? 'gas-is-co2' : 'gas-is-mix' },
    );
  if (pole !== undefined && !POLES[kind].includes(pole))
    list.push({ ask: 'polarity', gate: kind === 3 ? 'pole-minus' : kind === 5 ? 'pole-rod' : 'pole-plus' });
  return list;
};

/** Gates that keep the arc off while wire, gas and pole do not go together. */
export const pairingGates = (s: Situation): readonly Gate[] => {
  const machine = machineOf(s);
  return machine === null
    ? []
    : wrongs(s, machine.kind).map(w => ({
        id: w.gate,
        shut: true,
        measure: SETTINGS,
        ...(w.never === undefined ? {} : { never: true as const }),
      }));
};

/** Labels to be read, what is wrong first, so that it is the one that is read again. */
export const pairingAsks = (s: Situation, kind: Kind): readonly Ask[] => {
  const gas = BOTTLE[kind];
  const poles = POLES[kind];
  const asks: readonly Ask[] = [
    numbered('spool', SPOOL[kind], 4),
    ...(gas === undefined ? [] : [numbered('bottle', gas, 4)]),
    poles.length === 3
      ? { ask: 'polarity', as: 'count', expected: [1, 3], possible: [1, 3], unlit: true }
      : numbered('polarity', poles[0] ?? 1, 3),
  ];
  const wrong = new Set(wrongs(s, kind).map(w => w.ask));
  return [...asks.filter(a => wrong.has(a.ask)), ...asks.filter(a => !wrong.has(a.ask))];
};
