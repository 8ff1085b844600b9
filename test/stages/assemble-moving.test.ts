import { describe, expect, test } from 'vitest';
import { memberMass } from '../../src/ramp/mass.ts';
import { carriedBalance, frameBalance, sideBalance } from '../../src/stages/assemble/balance.ts';
import { forceAt, frameUp, lowLimit_kg, sideUp } from '../../src/stages/assemble/lifting.ts';
import { howMoved, movesOf } from '../../src/stages/assemble/moving.ts';
import { assembleSheet } from '../../src/stages/assemble/sheet.ts';
import type { SheetDraft } from '../../src/stages/sheet.ts';
import { read, set } from './doings.ts';
import { situation, stationsOf, survey } from './frame-doings.ts';
import { longWords, wordGaps } from './word-gaps.ts';

const DEG = Math.PI / 180;
const G = 9.80665;
const helpers = (count: number) => read('plan/helpers', 'helpers', count);
const slope = (degrees: number) => read('assemble/way', 'slope', degrees * DEG);
const step = (sheet: SheetDraft, key: string) => sheet.steps.find(s => s.key === key);
const value = (sheet: SheetDraft, id: string) => sheet.figures.find(f => f.id === id)?.value;

describe('mass and where it sits', () => {
  test('entry plate and bearers move the balance of what is carried toward the entry', () => {
    const s = situation();
    const [bare, carried] = [frameBalance(s), carriedBalance(s)];
    expect(carried.mass_kg).toBeCloseTo(bare.mass_kg + s.ramp.masses.entry_kg, 9);
    const moment = s.ramp.entry.pieces.reduce((sum, m) => sum + memberMass(m) * m.x_mm, 0);
    expect(carried.x_mm * carried.mass_kg).toBeCloseTo(bare.x_mm * bare.mass_kg + moment, 3);
    expect(carried.x_mm).toBeLessThan(bare.x_mm);
  });

  test('of a rail measured lower, the weight of its side sits lower: as built, not as drawn', () => {
    const low = situation(...survey('A', 'unclamped', [-10, -10, -10, -10, -10], stationsOf()));
    expect(Math.abs(sideBalance(low, 'A').y_mm - sideBalance(situation(), 'A').y_mm)).toBeGreaterThan(2);
  });
});

describe('standing up', () => {
  test('force over angle: moments about the edge, heaviest at the start, nothing past the balance', () => {
    const s = situation();
    const { mass_kg, x_mm, y_mm } = frameBalance(s);
    const up = frameUp(s);
    if (up === null) throw new Error('a frame can be stood up');
    const along = s.ramp.lip.x_mm - x_mm;
    const hands = s.ramp.lip.x_mm - s.ramp.entry.length_mm;
    const by = (a: number) => (mass_kg * G * (along * Math.cos(a) - y_mm * Math.sin(a))) / hands;
    expect(forceAt(up, 0)).toBeCloseTo(by(0), 6);
    expect(forceAt(up, 30 * DEG)).toBeCloseTo(by(30 * DEG), 6);
    expect(forceAt(up, 30 * DEG)).toBeLessThan(forceAt(up, 0));
    expect(up.balance_rad).toBeCloseTo(Math.atan2(along, y_mm), 9);
    expect(forceAt(up, up.balance_rad + 0.01)).toBe(0);
    expect(value(assembleSheet(s), 'stand-balance')).toEqual({ is: 'exact', v: up.balance_rad });
  });

  test('a side frame by its lip: its weight by its height over the lip’s', () => {
    const s = situation();
    const { mass_kg, y_mm } = sideBalance(s, 'A');
    expect(sideUp(s, 'A')?.start_N).toBeCloseTo((mass_kg * G * y_mm) / s.ramp.lip.y_mm, 6);
  });

  test('NIOSH for one: 23 kg by its multipliers; less at bare tube near the floor than at a handle', () => {
    // H 35, V 10, D 65 cm, poor grip; H 30, V 30, D 45 cm, good grip; once in five minutes.
    const end = 23 * (25 / 35) * (1 - 0.003 * 65) * (0.82 + 4.5 / 65) * 0.9;
    const handle = 23 * (25 / 30) * (1 - 0.003 * 45) * (0.82 + 4.5 / 45);
    expect(lowLimit_kg('end')).toBeCloseTo(end, 9);
    expect(lowLimit_kg('handles')).toBeCloseTo(handle, 9);
    expect(end).toBeLessThan(handle);
  });
});

describe('asking for help', () => {
  test('by how many were said in plan: unsaid, enough, too few and how many more', () => {
    const help = (...doings: Parameters<typeof situation>) =>
      step(assembleSheet(situation(...doings)), 'assemble/help');
    expect(help()?.words).toBe('help');
    const most = Number(help()?.fills?.most);
    expect(most).toBeGreaterThanOrEqual(2);
    expect(help(helpers(most - 1))?.words).toBe('help-enough');
    expect(help(helpers(most - 2))).toMatchObject({ words: 'help-few', fills: { more: 1 } });
  });
});

describe('moving it to its place', () => {
  test('carried with enough hands, slid on boards by those who are there, roped where the way is steep', () => {
    expect(howMoved(situation(helpers(8))).words).toBe('move-out');
    const carried = howMoved(situation(helpers(8))).people;
    const some = howMoved(situation(helpers(2)));
    expect(some.words).toBe('move-out-slide');
    const few = howMoved(situation(helpers(1)));
    expect(few.words).toBe('move-out-trolley');
    expect(few.people).toBeLessThan(some.people);
    expect(some.people).toBeLessThan(carried);
    expect(howMoved(situation(helpers(8), slope(4))).words).toBe('move-out');
    expect(howMoved(situation(helpers(8), slope(8))).words).toBe('move-out-rope');
  });

  test('two on hand pass the gate by a trolley, where carrying would have kept it shut; one never', () => {
    const shut = (count: number) =>
      step(assembleSheet(situation(helpers(count))), 'assemble/move-out')?.gates?.find(
        g => g.id === 'too-few-hands',
      )?.shut;
    expect(shut(1)).toBe(false);
    expect(shut(0)).toBe(true);
  });

  test('pullers by HSE’s 20 kg each to start it, and a rope five times as strong as the pull', () => {
    const s = situation(helpers(2));
    const start = movesOf(s)?.boards.start_N.high ?? 0;
    const mass = carriedBalance(s).mass_kg;
    expect(start).toBeCloseTo(mass * G * 0.4 * 1.3, 6);
    expect(howMoved(s).people).toBe(Math.max(2, Math.ceil(start / (20 * G))));
    expect(value(assembleSheet(s), 'rope-breaks')).toMatchObject({ is: 'exact', v: 5 * start });
  });

  test('a steeper way takes more to pull up and, on wheels, more to hold back', () => {
    const flat = movesOf(situation(slope(0)));
    const steep = movesOf(situation(slope(12)));
    expect(flat?.wheels.hold_N).toEqual({ low: 0, high: 0 });
    expect(steep?.boards.start_N.high ?? 0).toBeGreaterThan(flat?.boards.start_N.high ?? 0);
    const weight = carriedBalance(situation()).mass_kg * G;
    expect(steep?.wheels.hold_N.high).toBeCloseTo(
      weight * (Math.sin(12 * DEG) - 0.08 * Math.cos(12 * DEG)),
      6,
    );
    // On boards it stays by itself at 12°: their least friction is 0.25.
    expect(steep?.boards.hold_N.high).toBe(0);
  });

  test('words for each way, in both systems', () => {
    const ways = [
      situation(helpers(0)),
      situation(helpers(1), slope(2)),
      situation(helpers(2), slope(2)),
      situation(helpers(9)),
      situation(slope(10)),
      situation(set('ground', 'wet lawn'), slope(3)),
    ];
    const words = [
      'help',
      'help-enough',
      'help-few',
      'way',
      'move-out',
      'move-out-slide',
      'move-out-trolley',
      'move-out-rope',
    ];
    for (const s of ways) expect(wordGaps(assembleSheet(s), words)).toEqual([]);
    expect(longWords('assemble', words)).toEqual([]);
  });
});
