import { describe, expect, test } from 'vitest';
import { forcedOf, holdingOf } from '../../src/stages/brace/holding.ts';
import { middleFirst } from '../../src/stages/brace/let-go.ts';
import { openedRise, openPerUpright } from '../../src/stages/brace/opening.ts';
import { braceSheet, STEPS } from '../../src/stages/brace/sheet.ts';
import { uprightsOf } from '../../src/stages/brace/side.ts';
import { type RailQuestion, railAnswer } from '../../src/stages/heavy/rail-answer.ts';
import { type SpringBackQuestion, springBackAnswer } from '../../src/stages/heavy/spring-back-answer.ts';
import { skipAround } from '../../src/stages/joint-order.ts';
import type { Figure, SheetDraft } from '../../src/stages/sheet.ts';
import { askKey } from '../../src/stages/situation.ts';
import { begun, read, set, tick } from './doings.ts';
import { american, situation, stationsOf, survey } from './frame-doings.ts';
import { situationFor } from './situation-for.ts';
import { longWords, WORDS, wordGaps } from './word-gaps.ts';

const DEG = Math.PI / 180;
const step = (sheet: SheetDraft, key: string) => sheet.steps.find(s => s.key === key);
const exact = (sheet: SheetDraft, id: string): number => {
  const value = sheet.figures.find(f => f.id === id)?.value;
  return value?.is === 'exact' ? value.v : Number.NaN;
};
const figure = (sheet: SheetDraft, id: string): Figure | undefined => sheet.figures.find(f => f.id === id);
const cold = (rail: string, offset: number) =>
  survey(rail, 'cold', [offset, offset, offset, offset, offset], stationsOf());

describe('uprights are cut to the rail that exists', () => {
  test('a rail that lies 6 toward the centre all along makes each upright 6·cos(slope) longer at its flat', () => {
    const drawn = situation();
    const measured = situation(...cold('A', 6));
    const before = uprightsOf(drawn, 'A');
    for (const [k, m] of uprightsOf(measured, 'A').entries()) {
      const was = before[k];
      const mean = (p: typeof m) => (p.long_mm + p.short_mm) / 2;
      expect(mean(m) - mean(was as typeof m)).toBeCloseTo(6 * Math.cos(m.ends.second_rad), 6);
    }
  });

  test('long and short point differ by the width of the tube times the slope, base end square, and the survey is named', () => {
    const sheet = braceSheet(situation(...cold('A', 6)));
    const cut = exact(sheet, 'upright-rail-cut@A:lip');
    expect(exact(sheet, 'upright-long@A:lip') - exact(sheet, 'upright-short@A:lip')).toBeCloseTo(
      30 * Math.tan(cut),
      9,
    );
    expect(exact(sheet, 'upright-base-cut@A:lip')).toBe(0);
    expect(figure(sheet, 'upright-long@A:lip')?.on).toBe('survey-A-cold');
    expect(figure(sheet, 'upright-long@A:lip')).toMatchObject({
      line: { face: 'rail bottom face', rail: 'A' },
    });
    expect(figure(sheet, 'upright-long@B:lip')?.on).toBeUndefined();
  });

  test('as long as no survey counts the step says its numbers are the drawing’s', () => {
    expect(step(braceSheet(situation()), 'brace/uprights@A')?.words).toBe('uprights-drawn');
    expect(step(braceSheet(situation(...cold('A', 0))), 'brace/uprights@A')).toMatchObject({
      words: 'uprights',
      fills: { phase: 'cold' },
    });
  });

  test('each piece carries what it is cut to, and the words name the first one not cut', () => {
    const s = situation(...cold('A', 0));
    const items = step(braceSheet(s), 'brace/uprights@A')?.items ?? [];
    const lip = items[0];
    expect(lip).toMatchObject({ key: 'brace/uprights@A#lip', name: 'lip' });
    expect(lip?.piece).toMatchObject({ need: 'lip upright@A', section: '30x30x2' });
    expect(lip?.piece?.long_mm).toBe(lip?.value?.v);
    const one = situation(...cold('A', 0), {
      kind: 'piece-cut',
      need: 'lip upright@A',
      section: '30x30x2',
      asked_mm: 500,
      length_mm: 500,
      typed: '500',
      ends_rad: [0, 0.5],
    });
    expect(step(braceSheet(one), 'brace/uprights@A')?.fills?.name).toBe(items[1]?.name);
  });

  test('a diagonal has two mitres that leave a right angle less the rail’s slope between them', () => {
    const sheet = braceSheet(situation(...cold('A', 0)));
    const base = exact(sheet, 'diagonal-base-cut@A:lip');
    const rail = exact(sheet, 'diagonal-rail-cut@A:lip');
    const slope = exact(sheet, 'upright-rail-cut@A:lip');
    expect(rail - base).toBeCloseTo(slope, 9);
    expect(step(sheet, 'brace/diagonals@A')?.uses).toContain('diagonal-base-cut@A:lip');
  });

  test('a low ramp has no bay worth a diagonal, and lets go without one', () => {
    const sheet = braceSheet(situation(set('shape', { height: 300, exit: 20 * DEG })));
    expect(step(sheet, 'brace/diagonals@A')).toBeUndefined();
    expect(step(sheet, 'brace/clamps@A')?.needs).not.toContain('brace/weld-diagonals@A');
  });
});

describe('what holds a rail before its clamps come off', () => {
  const fitted = (...names: string[]) => names.map(name => tick(`brace/fit-uprights@A#${name}`));
  const all = uprightsOf(situation(), 'A').map(m => (m.flat === undefined ? 'lip' : String(m.flat)));

  test('two uprights beside the lip upright for a small pull, three for one over 5', () => {
    expect(holdingOf(situation(read('brace/forced@A', 'forced', 5)), 'A').needed).toBe(2);
    expect(holdingOf(situation(read('brace/forced@A', 'forced', 5.5)), 'A').needed).toBe(3);
  });

  test('until the gaps at the blocks are read, the worst offset of the cold rail counts as pulled', () => {
    const s = situation(...survey('A', 'cold', [0, -1, -2, -4, -7], stationsOf()));
    expect(forcedOf(s, 'A')).toEqual({ mm: 7, read: false });
    expect(holdingOf(s, 'A').needed).toBe(3);
    const then = situation(
      ...survey('A', 'cold', [0, -1, -2, -4, -7], stationsOf()),
      read('brace/forced@A', 'forced', 0),
    );
    expect(forcedOf(then, 'A')).toEqual({ mm: 0, read: true });
  });

  test('an upright tacked on four sides counts a third, and the lip upright must be welded', () => {
    const tacked = holdingOf(situation(...fitted(...all), tick('brace/hold-base@A')), 'A');
    expect(tacked.between).toBeCloseTo(0.3 * (all.length - 1), 9);
    expect(tacked).toMatchObject({ lip: false, enough: false });
  });

  test('the clamps stay shut behind their gate until uprights, diagonals and the held base are all there', () => {
    const shut = (...doings: Parameters<typeof situation>) =>
      step(braceSheet(situation(...cold('A', 0), ...doings)), 'brace/clamps@A')?.gates?.find(
        g => g.id === 'rail-not-held',
      )?.shut;
    const welded = [...fitted(...all), tick('brace/weld-uprights@A')];
    expect(shut()).toBe(true);
    expect(shut(...welded)).toBe(true);
    expect(shut(...welded, tick('brace/weld-diagonals@A'))).toBe(true);
    expect(shut(...welded, tick('brace/weld-diagonals@A'), tick('brace/hold-base@A'))).toBe(false);
    expect(
      shut(
        ...fitted('lip'),
        tick('brace/weld-uprights@A'),
        tick('brace/weld-diagonals@A'),
        tick('brace/hold-base@A'),
      ),
    ).toBe(true);
  });

  test('middle clamps first, the ends last', () => {
    expect(middleFirst([1, 3, 5, 8, 10])).toEqual([5, 3, 8, 1, 10]);
    expect(middleFirst([1, 2, 3, 4])).toEqual([2, 3, 1, 4]);
    expect(middleFirst([])).toEqual([]);
  });

  test('slits welded and cold first, base held, uprights, diagonals, clamps, survey: in this order on one side, then the next', () => {
    const sheet = braceSheet(situation());
    const turn = (key: string) => step(sheet, key)?.turn ?? Number.NaN;
    const order = [
      'hold-base',
      'forced',
      'uprights',
      'join-entry',
      'fit-uprights',
      'weld-joints',
      'weld-uprights',
      'diagonals',
      'weld-diagonals',
      'clamps',
      'survey',
    ];
    const turns = ['A', 'B'].flatMap(rail => order.map(name => turn(`brace/${name}@${rail}`)));
    expect([...turns].sort((a, b) => a - b)).toEqual(turns);
    expect(step(sheet, 'brace/hold-base@A')?.needs).toContain('weld/cold-survey@A');
    expect(step(sheet, 'brace/weld-joints@A')?.needs).toContain('brace/fit-uprights@A');
    expect(step(sheet, 'brace/weld-uprights@A')?.needs).toContain('brace/weld-joints@A');
  });

  test('the last survey reads the stations of the cold one, so that the two compare spot by spot', () => {
    expect(step(braceSheet(situation()), 'brace/survey@A')?.survey?.stations_mm.length).toBeGreaterThan(8);
    const ask = step(braceSheet(situation(...cold('A', 0))), 'brace/survey@A')?.survey;
    expect(ask).toMatchObject({ kind: 'curve', rail: 'A', phase: 'unclamped', to: 'finished line' });
    expect(ask?.stations_mm).toEqual(stationsOf());
  });
});

describe('what comes back if the clamps are let go now', () => {
  const bowed = survey(
    'A',
    'cold',
    [0, 3, 4, 3, 0].map(o => 3 * o),
    stationsOf(),
  );
  const after = async (...doings: Parameters<typeof situation>) => {
    const all = [begun(), ...bowed, ...doings];
    const asked = braceSheet(situationFor(all)).asked ?? [];
    const answers = new Map<string, unknown>();
    for (const ask of asked) {
      const known =
        ask.topic === 'spring-back'
          ? await springBackAnswer(ask.input as SpringBackQuestion)
          : railAnswer(ask.input as RailQuestion);
      answers.set(askKey(ask), known);
    }
    return braceSheet(situationFor(all, answers));
  };
  const fitted = uprightsOf(situation(), 'A').map(m => tick(`brace/fit-uprights@A#${m.flat ?? 'lip'}`));
  const welded = [
    ...fitted,
    tick('brace/weld-uprights@A'),
    tick('brace/weld-diagonals@A'),
    tick('brace/hold-base@A'),
  ];

  test('is worked out off the page, and falls as uprights are tacked, then welded', async () => {
    expect(figure(braceSheet(situation(...bowed)), 'springs-back@A')?.value).toEqual({ is: 'pending' });
    const bare = exact(await after(), 'springs-back@A');
    const tacked = exact(await after(...fitted), 'springs-back@A');
    const firm = exact(await after(...welded), 'springs-back@A');
    expect(bare).toBeGreaterThan(tacked);
    expect(tacked).toBeGreaterThan(firm);
    expect(firm).toBeGreaterThan(0);
    expect(exact(await after(), 'springs-back-next@A')).toBeLessThan(bare + 1e-9);
    expect(exact(await after(), 'clamp-holds@A')).toBeGreaterThan(50);
  });

  test('a rail that rests on its blocks holds no force and brings nothing back', () => {
    const sheet = braceSheet(situation(...cold('A', 0), read('brace/forced@A', 'forced', 0)));
    expect(exact(sheet, 'springs-back@A')).toBe(0);
    expect(exact(sheet, 'clamp-holds@A')).toBe(0);
  });

  test('a rail surveyed as true that the blocks say is pulled is reckoned as pulled, and says so', async () => {
    // All stations read 0, and yet a gap of 6 at a block: its base is off, or it moved. Nothing may stay unknown for that.
    const doings = [...cold('A', 0), read('brace/forced@A', 'forced', 6)];
    const answers = new Map<string, unknown>();
    const all = [begun(), ...doings];
    const asked = braceSheet(situationFor(all)).asked ?? [];
    // What is in by now, and the table of what would be in.
    expect(asked.map(a => a.topic)).toEqual(['spring-back', 'spring-back']);
    for (const ask of asked)
      answers.set(askKey(ask), await springBackAnswer(ask.input as SpringBackQuestion));
    const sheet = braceSheet(situationFor(all, answers));
    expect(exact(sheet, 'springs-back@A')).toBeGreaterThan(1);
    expect(exact(sheet, 'springs-back@A')).toBeLessThanOrEqual(6);
    expect(exact(sheet, 'clamp-holds@A')).toBeGreaterThan(10);
  });

  test('says how many uprights to weld before letting go, with and without diagonals, the base loose or held', async () => {
    const table = async (...more: Parameters<typeof after>) => {
      const sheet = await after(read('brace/forced@A', 'forced', 6), ...more);
      return ['one', 'two', 'all', 'diagonals', 'held'].map(
        id => exact(sheet, `springs-${id}@A`) ?? Number.NaN,
      );
    };
    const [one, two, all, diagonals, held] = await table();
    expect(two).toBeLessThan(one!);
    expect(all).toBeLessThan(two!);
    expect(diagonals).toBeLessThan(all!);
    expect(held).toBeLessThan(all!);
    expect(held).toBeGreaterThan(0);
    // What is in by now changes what comes back now, and not the table.
    expect(await table(...welded)).toEqual([one, two, all, diagonals, held]);
    const sheet = await after(read('brace/forced@A', 'forced', 6), ...welded);
    expect(step(sheet, 'brace/clamps@A')?.uses).toEqual(
      expect.arrayContaining(['springs-one@A', 'springs-held@A']),
    );
  });

  test('a rail surveyed as true brings nothing back until the blocks say otherwise', () => {
    expect(exact(braceSheet(situation(...cold('A', 0))), 'springs-back@A')).toBe(0);
  });

  test('with everything in and still too much to come, the clamps are shut by a gate of their own', async () => {
    const gate = (sheet: SheetDraft) =>
      step(sheet, 'brace/clamps@A')?.gates?.find(g => g.id === 'springs-too-far');
    // Far more than any rail is pulled: this frame is stiff, and the gate is about what is left, however it came.
    const pulled = await after(...welded, read('brace/forced@A', 'forced', 600));
    expect(exact(pulled, 'springs-back@A')).toBeGreaterThan(4);
    expect(gate(pulled)?.shut).toBe(true);
    expect(gate(await after(...welded, read('brace/forced@A', 'forced', 6)))?.shut).toBe(false);
    expect(gate(await after(read('brace/forced@A', 'forced', 600)))?.shut).toBe(false);
  });
});

describe('uprights open the rail a little', () => {
  test('2.7 mrad an upright for 3 mm legs on 30 mm tube under 40×40×3 (Blodgett’s bow in its local form, derived)', () => {
    expect(openPerUpright(situation()) * 1000).toBeCloseTo(2.7, 1);
  });

  test('spread evenly along the rail, N of them take N·θ·L/8 of rise, give or take half', () => {
    const s = situation();
    const long = s.ramp.plans.get('A')?.toLip_mm ?? 0;
    const rise = openedRise(s, 'A');
    expect(rise.likely).toBeCloseTo((uprightsOf(s, 'A').length * openPerUpright(s) * long) / 8, 9);
    expect(rise.low).toBeCloseTo(rise.likely / 2, 9);
    expect(rise.high).toBeCloseTo(1.5 * rise.likely, 9);
  });
});

describe('an upright too near a slit', () => {
  // Flats too short for uprights as thick as the rail: there is no clear flat to move the lip upright to.
  const steep = [
    set('shape', { radius: 3000, exit: 45 * DEG }),
    set('post', { depth_mm: 40, width_mm: 40, wall_mm: 2 }),
  ] as const;

  test('is said with its clear distance and three ways, one of them to leave it', () => {
    const found = braceSheet(situation(...steep)).findings.find(f => f.key === 'near-slit@A');
    const clear = found?.tall?.v ?? Number.NaN;
    const plan = situation(...steep).ramp.plans.get('A');
    const lip = uprightsOf(situation(...steep), 'A')[0];
    const last = plan?.slits.at(-1)?.at_mm ?? 0;
    const to = (lip?.along_mm ?? 0) - 20 / Math.cos(lip?.ends.second_rad ?? 0) - last;
    expect(clear).toBeCloseTo(Math.max(0, to), 6);
    expect(clear).toBeLessThan(25);
    expect(found?.offers.length).toBeGreaterThanOrEqual(3);
    expect(found?.offers.map(o => o.remedy)).toContain('leave-near-slit');
  });

  test('is no finding on the gentler curve, nor on rails without slits', () => {
    const keys = (s: ReturnType<typeof situation>) => braceSheet(s).findings.map(f => f.key);
    expect(keys(situation())).not.toContain('near-slit@A');
    expect(keys(situation(...steep, set('route', 'rolled')))).not.toContain('near-slit@A');
  });
});

describe('joints are welded in balance', () => {
  test('uprights in skip order, the lip upright first, each begun at the other end than the last', () => {
    const s = situation(...cold('A', 0));
    const joints = step(braceSheet(s), 'brace/weld-joints@A');
    const names = joints?.items?.map(i => i.name) ?? [];
    const row = uprightsOf(s, 'A').map(m => (m.flat === undefined ? 'lip' : String(m.flat)));
    expect([...names].sort()).toEqual([...row].sort());
    expect(names[0]).toBe('lip');
    expect(names).toEqual(skipAround(row));
    expect(joints?.items?.map(i => i.note?.words)).toEqual(
      names.map((_, k) => (k % 2 === 0 ? 'says.brace-rail-first' : 'says.brace-foot-first')),
    );
    expect(step(braceSheet(s), 'brace/weld-uprights@A')?.fills?.order).toBe(names.join(', '));
  });

  test('the drawing is of the joint that comes next', () => {
    const title = (...doings: Parameters<typeof situation>) =>
      step(braceSheet(situation(...cold('A', 0), ...doings)), 'brace/weld-joints@A')?.scene?.title;
    const names = step(braceSheet(situation(...cold('A', 0))), 'brace/weld-joints@A')?.items ?? [];
    expect(title()).toBe('upright lip at the rail: faces in order');
    expect(title(tick('brace/weld-joints@A#lip'))).toBe(
      `upright ${names[1]?.name} at the base: faces in order`,
    );
  });

  test('tacks of 4 times the thicker wall: 12 under a 3 mm rail', () => {
    expect(step(braceSheet(situation()), 'brace/fit-uprights@A')?.fills?.tack).toEqual({
      v: 12,
      as: 'length',
    });
  });

  test('uprights ticked as welded by an older build are not asked for again', () => {
    const sheet = braceSheet(situation(...cold('A', 0), tick('brace/weld-uprights@A')));
    expect(step(sheet, 'brace/weld-joints@A')).toBeUndefined();
  });
});

describe('words of bracing', () => {
  const builds = {
    'as drawn': situation(),
    measured: situation(...cold('A', 3), ...cold('B', -2)),
    'pulled over, tacked': situation(
      ...survey('A', 'cold', [0, 2, 4, 6, 8], stationsOf()),
      read('brace/forced@A', 'forced', 8),
      tick('brace/fit-uprights@A#lip'),
    ),
    'steep, slits near': situation(
      set('shape', { radius: 3000, exit: 45 * DEG }),
      set('post', { depth_mm: 40, width_mm: 40, wall_mm: 2 }),
    ),
    'rolled rails': situation(set('route', 'rolled')),
    'boards on more rails': situation(set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 })),
    'US sizes': american(),
  };
  test.each(Object.entries(builds))('none missing, no mark left open: %s', (_, s) => {
    expect(wordGaps(braceSheet(s), STEPS)).toEqual([]);
  });

  test('every step of the stage has words that fit its rows, and no words are left over', () => {
    expect(longWords('brace', STEPS)).toEqual([]);
    const mine = Object.keys(WORDS.steps.brace ?? {});
    expect(STEPS.filter(key => !mine.includes(key))).toEqual([]);
  });
});
