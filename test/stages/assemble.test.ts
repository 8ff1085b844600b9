import { describe, expect, test } from 'vitest';
import { walk } from '../../src/coach/walk.ts';
import { frameBalance, sideBalance, sideTipsAt } from '../../src/stages/assemble/balance.ts';
import { basePacks, mismatch } from '../../src/stages/assemble/match.ts';
import { handsWanted } from '../../src/stages/assemble/people.ts';
import { assembleSheet, STEPS } from '../../src/stages/assemble/sheet.ts';
import { TURN } from '../../src/stages/order.ts';
import type { SheetDraft } from '../../src/stages/sheet.ts';
import { read, set, tick } from './doings.ts';
import { american, situation, stationsOf, survey } from './frame-doings.ts';
import { longWords, WORDS, wordGaps } from './word-gaps.ts';

const DEG = Math.PI / 180;
const step = (sheet: SheetDraft, key: string) => sheet.steps.find(s => s.key === key);
const exact = (sheet: SheetDraft, id: string): number => {
  const value = sheet.figures.find(f => f.id === id)?.value;
  return value?.is === 'exact' ? value.v : Number.NaN;
};
const loose = (rail: string, offsets: readonly number[]) => survey(rail, 'unclamped', offsets, stationsOf());
const helpers = (count: number) => read('plan/helpers', 'helpers', count);
const boards = set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 });

describe('rails are trimmed together', () => {
  test('only after every side frame stands by itself and was read, 50 past the lip mark', () => {
    const sheet = assembleSheet(situation(boards));
    expect(step(sheet, 'assemble/trim-rails')?.needs).toEqual([
      'brace/survey@A',
      'brace/survey@B',
      'brace/survey@C',
    ]);
    expect(step(sheet, 'assemble/trim-rails')?.fills).toMatchObject({ spare: { v: 50, as: 'length' } });
    expect(exact(sheet, 'lip-mark')).toBe(situation(boards).ramp.plans.get('A')?.toLip_mm);
  });

  test('their mismatch is not known before both are read, then it is the worst at one spot', () => {
    const value = (s: ReturnType<typeof situation>) =>
      assembleSheet(s).figures.find(f => f.id === 'mismatch')?.value;
    expect(value(situation(...loose('A', [0, 1, 2, 3, 4])))).toMatchObject({ is: 'unknown' });
    const s = situation(...loose('A', [0, 1, 2, 3, 4]), ...loose('B', [0, 1, 2, 0, -1]));
    expect(value(s)).toMatchObject({ is: 'exact' });
    expect(mismatch(s).mm).toBeCloseTo(5, 6);
    expect(mismatch(s).along_mm).toBeCloseTo(s.ramp.plans.get('A')?.toLip_mm ?? 0, 6);
  });
});

describe('a rail that lies lower as a whole', () => {
  const low = [...loose('A', [2, 2, 2, 2, 2]), ...loose('B', [-1, -1, -1, -1, -1])];

  test('is packed up at its base by what it is low, and needs nothing under the deck for that', () => {
    const s = situation(...low);
    expect([...basePacks(s)]).toEqual([['B', 3]]);
    expect(step(assembleSheet(s), 'assemble/pack-base@B')).toMatchObject({ uses: ['base-pack@B'] });
    expect(exact(assembleSheet(s), 'base-pack@B')).toBe(3);
    expect(step(assembleSheet(s), 'assemble/pack-base@A')).toBeUndefined();
  });

  test('one that differs in shape but not in height is left to the deck', () => {
    expect(basePacks(situation(...loose('A', [-2, 1, 2, 1, -2]), ...loose('B', [0, 0, 0, 0, 0]))).size).toBe(
      0,
    );
  });
});

describe('side frames fall over', () => {
  test('half the tube’s width over the height of the weight is the lean that tips it', () => {
    const s = situation();
    const { y_mm, mass_kg } = sideBalance(s, 'A');
    expect(sideTipsAt(s, 'A')).toBeCloseTo(Math.atan(20 / y_mm), 9);
    expect(y_mm).toBeGreaterThan(40);
    expect(y_mm).toBeLessThan(s.ramp.lip.y_mm / 2);
    expect(mass_kg).toBeGreaterThan(10);
  });

  test('a higher ramp tips sooner', () => {
    const steep = situation(set('shape', { radius: 3000, exit: 45 * DEG }));
    expect(sideTipsAt(steep, 'A')).toBeLessThan(sideTipsAt(situation(), 'A'));
  });

  test('two timber spreaders for every half metre of height, between each pair of frames', () => {
    expect(exact(assembleSheet(situation()), 'spreaders')).toBe(4);
    expect(exact(assembleSheet(situation(set('shape', { height: 480, exit: 30 * DEG }))), 'spreaders')).toBe(
      2,
    );
    expect(exact(assembleSheet(situation(boards)), 'spreaders')).toBe(8);
  });

  test('alone nobody stands one up: the step says wait, and its gate is shut until someone comes', () => {
    const props = (...doings: Parameters<typeof situation>) =>
      step(assembleSheet(situation(...doings)), 'assemble/props');
    expect(props(helpers(0))).toMatchObject({ words: 'props-alone' });
    expect(props(helpers(0))?.gates?.[0]).toMatchObject({ id: 'too-few-hands', shut: true });
    expect(props(helpers(1))).toMatchObject({ words: 'props' });
    expect(props(helpers(1))?.gates?.[0]?.shut).toBe(false);
    expect(props()?.gates?.[0]?.shut).toBe(false);
  });
});

describe('standing the frame up', () => {
  test('people by mass: two thirds of 25 kg each, so 53 kg takes four', () => {
    const s = situation();
    expect(frameBalance(s).mass_kg).toBeCloseTo(s.ramp.masses.frame_kg, 6);
    expect(handsWanted(s)).toBe(Math.ceil(s.ramp.masses.frame_kg / (25 * (2 / 3))));
    expect(handsWanted(s, 20)).toBe(2);
    expect(handsWanted(s, 5)).toBe(2);
    expect(handsWanted(s, 51)).toBe(4);
  });

  test('too few said in plan: another step with a hoist, and a gate; enough, and it is lifted', () => {
    const up = (...doings: Parameters<typeof situation>) =>
      step(assembleSheet(situation(...doings)), 'assemble/stand-up');
    expect(up(helpers(1))).toMatchObject({ words: 'stand-up-few', fills: { here: 2, wanted: 4 } });
    expect(up(helpers(1))?.gates?.[0]).toMatchObject({
      shut: true,
      measure: 'plan/helpers',
      fills: { more: 2 },
    });
    expect(up(helpers(3))).toMatchObject({ words: 'stand-up' });
    expect(up(helpers(3))?.gates?.[0]?.shut).toBe(false);
  });

  test('the way out is walked with the frame as light as it will be, after paint and before the deck', () => {
    const out = step(assembleSheet(situation()), 'assemble/move-out');
    expect(out?.turn).toBeGreaterThan(TURN.finish + 90);
    expect(out?.turn).toBeLessThan(TURN.finish + 130);
    expect(out?.gates?.find(g => g.id === 'door-too-small')?.shut).toBe(false);
    const narrow = situation(set('door', { width_mm: 550, height_mm: 2000 }));
    expect(
      step(assembleSheet(narrow), 'assemble/move-out')?.gates?.find(g => g.id === 'door-too-small')?.shut,
    ).toBe(true);
  });
});

describe('square before it is welded', () => {
  test('either diagonal asked for follows from the width as read, not as drawn', () => {
    const s = situation(read('assemble/width', 'entry', 1206), read('assemble/width', 'lip', 1206));
    const base = s.ramp.members.find(m => m.kind === 'base rail')?.long_mm ?? 0;
    expect(exact(assembleSheet(s), 'frame-diagonal')).toBeCloseTo(Math.hypot(1206, base), 9);
    expect(exact(assembleSheet(situation()), 'frame-diagonal')).toBeCloseTo(Math.hypot(1200, base), 9);
  });

  test('crossmembers are welded end by end, a key each: from rail to rail by turns, no neighbours while hot', () => {
    const s = situation();
    const items = assembleSheet(s).steps.find(x => x.key === 'assemble/weld-joints')?.items ?? [];
    const across = s.ramp.members.filter(m => /crossmember|rear diagonal/.test(m.kind));
    expect(items.length).toBe(2 * across.length);
    expect(new Set(items.map(i => i.key)).size).toBe(items.length);
    const row = across.filter(m => m.kind === 'crossmember');
    expect(row.length).toBeGreaterThanOrEqual(5);
    const first = items.slice(0, row.length);
    expect(first.map(i => i.name.slice(-1))).toEqual(row.map((_, k) => (k % 2 === 0 ? 'A' : 'B')));
    const places = first.map(i => row.findIndex(m => i.name.startsWith(`${m.need.split(':')[1]} `)));
    expect([...places].sort((a, b) => a - b)).toEqual(row.map((_, k) => k));
    for (const [k, at] of places.slice(1).entries())
      expect(Math.abs(at - (places[k] ?? 0))).toBeGreaterThan(1);
    // The other ends in the same order, each at the other rail.
    expect(items.slice(row.length, 2 * row.length).map(i => i.name)).toEqual(
      first.map(i => i.name.replace(/[AB]$/, r => (r === 'A' ? 'B' : 'A'))),
    );
    expect(items[3]?.note?.words).toBe('says.assemble-diagonals-now');
  });

  test('the drawing lights the end that is next, and marks those that are welded', () => {
    const one = (...doings: Parameters<typeof situation>) =>
      assembleSheet(situation(...doings)).steps.find(x => x.key === 'assemble/weld-joints');
    const items = one()?.items ?? [];
    expect(one()?.scene?.title).toContain(`${items[0]?.name.slice(0, -2)} at ${items[0]?.name.slice(-1)}`);
    const after = one(tick(items[0]?.key ?? ''));
    expect(after?.scene?.title).toContain(`${items[1]?.name.slice(0, -2)} at ${items[1]?.name.slice(-1)}`);
    const dots = (scene: typeof after) =>
      scene?.scene?.items.filter(i => i.is === 'mark' && i.sign === 'dot');
    expect(dots(one())).toHaveLength(0);
    expect(dots(after)).toHaveLength(1);
  });

  test('a frame that an older build ticked as welded in one is not asked end by end', () => {
    const steps = assembleSheet(situation(tick('assemble/weld'))).steps.map(x => x.key);
    expect(steps).not.toContain('assemble/weld-joints');
    expect(steps).toContain('assemble/weld');
  });

  test('welding waits for width, diagonals and twist, and for what is decided about them', () => {
    const before = [
      read('assemble/width', 'entry', 1200),
      read('assemble/width', 'lip', 1200),
      read('assemble/diagonals', 'd1', 1796),
      read('assemble/diagonals', 'd2', 1785),
      ...[1, 2, 3, 4].flatMap(k => [read('assemble/pads', `z${k}`, 0), read('assemble/twist', `c${k}`, 5)]),
    ];
    const state = (...doings: Parameters<typeof situation>) => {
      const s = situation(...before, ...doings);
      return walk(s.build, [assembleSheet(s)]).find(w => w.key === 'assemble/weld-joints')?.state;
    };
    expect(state()).toBe('stop');
    expect(
      state({
        kind: 'remedy-chosen',
        finding: 'diagonals-differ',
        remedy: 'leave-skew',
        plan: {},
        worst_mm: 11,
      }),
    ).toBe('to do');
    expect(state(read('assemble/diagonals', 'd1', 1786))).toBe('to do');
  });

  test('every crossmember is an item of its own, numbered by its flat, also between three rails', () => {
    const names = (s: ReturnType<typeof situation>) =>
      step(assembleSheet(s), 'assemble/crossmembers')?.items?.map(i => i.name) ?? [];
    const two = names(situation());
    expect(two).toEqual(expect.arrayContaining(['entry', 'lip', 'base front', 'base rear', 'diagonal']));
    expect(new Set(two).size).toBe(two.length);
    const three = names(situation(boards));
    expect(three).toEqual(expect.arrayContaining(['A-B entry', 'B-C lip']));
    expect(new Set(three).size).toBe(three.length);
    const keys =
      step(assembleSheet(situation(boards)), 'assemble/crossmembers')?.items?.map(i => i.key) ?? [];
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('the entry in front of the rails', () => {
  test('each bearer’s height is the plate’s underside there, and the plate is as long as the arc over it', () => {
    const s = situation();
    const items = step(assembleSheet(s), 'assemble/bearers')?.items ?? [];
    const R = s.ramp.design.arc.radius_mm;
    for (const [k, item] of items.entries()) {
      const x = s.ramp.entry.length_mm - (item.value?.v ?? 0);
      // The plate's underside is the circle 5 mm outside the deck top.
      expect(item.second?.v).toBeCloseTo(R - Math.sqrt((R + 5) ** 2 - x ** 2), 6);
      expect(item.name).toBe(String(k + 1));
    }
    expect(items.length).toBeGreaterThan(0);
    const long = exact(assembleSheet(s), 'plate-length');
    expect(R * Math.sin(long / R)).toBeCloseTo(s.ramp.entry.length_mm, 6);
  });
});

describe('words of assembly', () => {
  const builds = {
    'as drawn': situation(),
    'two said to come': situation(
      helpers(1),
      ...loose('A', [2, 2, 2, 2, 2]),
      ...loose('B', [-1, -1, -1, -1, -1]),
    ),
    alone: situation(helpers(0)),
    'all three findings': situation(
      read('assemble/width', 'entry', 1190),
      read('assemble/width', 'lip', 1210),
      read('assemble/diagonals', 'd1', 1796),
      read('assemble/diagonals', 'd2', 1775),
      ...[1, 2, 3, 4].map(k => read('assemble/twist', `c${k}`, k === 4 ? 40 : 20)),
    ),
    'all three findings, welded': situation(
      tick('assemble/weld'),
      read('assemble/width', 'entry', 1190),
      read('assemble/width', 'lip', 1210),
      read('assemble/diagonals', 'd1', 1796),
      read('assemble/diagonals', 'd2', 1775),
      ...[1, 2, 3, 4].map(k => read('assemble/twist', `c${k}`, k === 4 ? 40 : 20)),
    ),
    'too wide for the door': situation(set('door', { width_mm: 550, height_mm: 2000 })),
    'boards on more rails': situation(boards),
    'US sizes': american(),
  };
  test.each(Object.entries(builds))('none missing, no mark left open: %s', (_, s) => {
    expect(wordGaps(assembleSheet(s), STEPS)).toEqual([]);
  });

  test('every step of the stage has words that fit its rows', () => {
    expect(longWords('assemble', STEPS)).toEqual([]);
    expect(STEPS.filter(key => WORDS.steps.assemble?.[key] === undefined)).toEqual([]);
  });
});
