import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { GRAVITY_m_s2 } from '../../src/quantity/gravity.ts';
import { assembleSheet } from '../../src/stages/assemble/sheet.ts';
import { anchorNeed } from '../../src/stages/finish/anchors.ts';
import {
  alongUnder,
  deckTopLength,
  fromLipOver,
  layBoards,
  laySheets,
  screwSpots,
} from '../../src/stages/finish/deck-layout.ts';
import { railDrainAt } from '../../src/stages/finish/drains.ts';
import { slitsToLookAt } from '../../src/stages/finish/looks.ts';
import { packersOf } from '../../src/stages/finish/packers.ts';
import { paintArea, paintWeather } from '../../src/stages/finish/paint.ts';
import { fastestCovered, proofForce, worstSpan } from '../../src/stages/finish/proof.ts';
import { finishSheet, STEPS } from '../../src/stages/finish/sheet.ts';
import type { SheetDraft } from '../../src/stages/sheet.ts';
import { standingStill } from '../../src/stages/standing-still.ts';
import { read, set, tick } from './doings.ts';
import { american, situation, stationsOf, survey } from './frame-doings.ts';
import { longWords, WORDS, wordGaps } from './word-gaps.ts';

const DEG = Math.PI / 180;
const step = (sheet: SheetDraft, key: string) => sheet.steps.find(s => s.key === key);
const gate = (sheet: SheetDraft, key: string, id: string) => step(sheet, key)?.gates?.find(g => g.id === id);
const exact = (sheet: SheetDraft, id: string): number => {
  const value = sheet.figures.find(f => f.id === id)?.value;
  return value?.is === 'exact' ? value.v : Number.NaN;
};
const loose = (rail: string, offsets: readonly number[]) => survey(rail, 'unclamped', offsets, stationsOf());
const boards = set('deck', { kind: 'boards', thickness_mm: 38, board_mm: 145 });

describe('the order of finishing', () => {
  test('bare inspection, proof, trial deck, edges and drains, paint, deck, anchors, first ride', () => {
    const sheet = finishSheet(
      situation(read('finish/trial-deck', 'sheet', 1220), read('finish/trial-deck', 'long', 2440)),
    );
    const order = [
      'finish/keep-safe',
      'finish/inspect-joints@A',
      'finish/inspect-joints@B',
      'finish/inspect-across',
      'finish/inspect',
      'finish/proof',
      'finish/trial-deck',
      'finish/drill-deck',
      'finish/edges',
      'finish/drains',
      'finish/tins',
      'finish/clean',
      'finish/paint-weather',
      'finish/prime',
      'finish/top',
      'finish/paint',
      'finish/deck',
      'finish/deck-check',
      'finish/stickers',
      'finish/anchors',
      'finish/first-use',
      'finish/look-again@10',
      'finish/look-again@50',
    ];
    const turns = order.map(key => step(sheet, key)?.turn ?? Number.NaN);
    expect([...turns].sort((a, b) => a - b)).toEqual(turns);
    expect(step(sheet, 'finish/deck')?.needs).toContain('finish/paint');
    expect(step(sheet, 'finish/proof')?.needs).toContain('finish/inspect');
  });
});

describe('looking at welds bare', () => {
  test('the five slits nearest the lip, both slits beside each upright, and any with a nicked back wall', () => {
    const s = situation({ kind: 'slit-noted', rail: 'A', slit: 2, note: 'nicked' });
    const slits = s.ramp.plans.get('A')?.slits.length ?? 0;
    const look = slitsToLookAt(s, 'A');
    expect(look).toEqual(expect.arrayContaining([slits, slits - 1, slits - 2, slits - 3, slits - 4, 2]));
    for (const m of s.ramp.members) {
      if (m.rail !== 'A' || m.kind !== 'upright') continue;
      expect(look).toEqual(expect.arrayContaining([m.flat, (m.flat ?? 0) + 1]));
    }
    expect(slitsToLookAt(s, 'B')).not.toContain(2);
  });
});

describe('proof load', () => {
  test('90 kg: a quarter over three times the mass, about 3.3 kN, on the widest gap of uprights', () => {
    const s = situation();
    expect(proofForce(s) / 1000).toBeCloseTo(3.3, 1);
    expect(exact(finishSheet(s), 'proof-mass')).toBeCloseTo(337.5, 9);
    const { rail, span_mm, middle_mm } = worstSpan(s);
    const stands = s.ramp.members
      .filter(m => m.rail === rail && /upright/.test(m.kind))
      .map(m => m.along_mm ?? 0)
      .sort((a, b) => a - b);
    const gaps = stands.slice(1).map((to, k) => to - (stands[k] ?? 0));
    expect(span_mm).toBeCloseTo(Math.max(...gaps), 9);
    expect(stands.every(at => Math.abs(at - middle_mm) >= span_mm / 2 - 1e-9)).toBe(true);
  });

  test('people stand as load only up to a slope of 15°', () => {
    const s = situation();
    expect(exact(finishSheet(s), 'stand-to')).toBeCloseTo(
      s.ramp.design.arc.radius_mm * Math.sin(15 * DEG),
      6,
    );
  });

  test('more than 1 mm of set shuts the first ride, 1 mm or less opens it, unread keeps it shut', () => {
    const shut = (...doings: Parameters<typeof situation>) =>
      step(finishSheet(situation(...doings)), 'finish/first-use')
        ?.gates?.filter(g => g.shut)
        .map(g => g.id);
    expect(shut()).toContain('proof-not-read');
    expect(shut(read('finish/proof', 'set', 1.5))).toContain('proof-set');
    expect(shut(read('finish/proof', 'set', 1))).not.toContain('proof-set');
    const finding = finishSheet(situation(read('finish/proof', 'set', 1.5))).findings[0];
    expect(finding).toMatchObject({ key: 'proof-set', severity: 'stop', worst_mm: 1.5 });
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
  });

  test('the speed it covers is the one at which a stiff rider weighs three times as much at the foot', () => {
    for (const radius of [2500, 4000, 8000]) {
      const s = situation(set('shape', { radius, exit: 25 * DEG }));
      const v = fastestCovered(s);
      expect(1 + v ** 2 / (GRAVITY_m_s2 * (radius / 1000 - 0.9))).toBeCloseTo(3, 9);
    }
  });

  test('a lip over a metre asks for an engineer', () => {
    const high = situation(set('shape', { height: 1200, exit: 45 * DEG }));
    expect(gate(finishSheet(high), 'finish/first-use', 'high-lip')?.shut).toBe(true);
    expect(gate(finishSheet(situation()), 'finish/first-use', 'high-lip')?.shut).toBe(false);
  });
});

describe('deck', () => {
  test('boards and gaps fill the deck from lip to entry, none a sliver, whatever a board measures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 4000, noNaN: true }),
        fc.double({ min: 80, max: 250, noNaN: true }),
        (long, wide) => {
          const laid = layBoards(long, wide, 3);
          const last = laid.at(-1);
          expect((last?.from_mm ?? 0) + (last?.width_mm ?? 0)).toBeCloseTo(long, 6);
          for (const [k, board] of laid.entries()) {
            expect(board.width_mm).toBeLessThanOrEqual(wide + 1e-9);
            expect(board.width_mm).toBeGreaterThanOrEqual(wide / 3 - 1e-6);
            const next = laid[k + 1];
            if (next === undefined) continue;
            const gap = next.from_mm - board.from_mm - board.width_mm;
            expect(gap).toBeGreaterThanOrEqual(3 - 1e-9);
            // A rest too small for a board is shared by the gaps: at most one gap more over all of them.
            expect(gap).toBeLessThanOrEqual(6 + 1e-9);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  test('1480 of deck takes ten boards of 145 and leaves nothing; 1500 rips the last two alike', () => {
    expect(layBoards(1477, 145, 3).map(b => b.width_mm)).toEqual(Array.from({ length: 10 }, () => 145));
    expect(
      layBoards(1500, 145, 3)
        .map(b => Math.round(b.width_mm * 100) / 100)
        .slice(-2),
    ).toEqual([82.5, 82.5]);
  });

  test('a board read 2 narrower than drawn changes how many there are and what the last is ripped to', () => {
    const last = (board: number) =>
      exact(finishSheet(situation(boards, read('finish/trial-deck', 'board', board))), 'deck-last');
    expect(last(143)).not.toBeCloseTo(last(145), 0);
    expect(finishSheet(situation(boards)).figures.find(f => f.id === 'deck-last')?.value).toEqual({
      is: 'unknown',
      needs: 'finish/trial-deck',
    });
    expect(step(finishSheet(situation(boards)), 'finish/drill-deck')).toBeUndefined();
  });

  test('no screw comes within 25 of a slit of any rail, nor within 20 of a board’s edge', () => {
    for (const shape of [
      { height: 600, exit: 30 * DEG },
      { radius: 3000, exit: 45 * DEG },
    ]) {
      const s = situation(boards, set('shape', shape));
      const slits = [...s.ramp.plans.values()].flatMap(p => p.slits.map(x => x.at_mm));
      const laid = layBoards(deckTopLength(s), 145, 3);
      let screws = 0;
      for (const board of laid)
        for (const at of screwSpots(s, board)) {
          screws++;
          expect(at).toBeGreaterThanOrEqual(20);
          expect(at).toBeLessThanOrEqual(board.width_mm - 20);
          const along = alongUnder(s, board.from_mm + at);
          expect(Math.min(...slits.map(x => Math.abs(x - along)))).toBeGreaterThanOrEqual(25);
        }
      expect(screws).toBeGreaterThan(laid.length);
    }
  });

  test('under the lip lies the lip mark, under the deck’s low end the rail’s entry end', () => {
    const s = situation();
    const plan = s.ramp.plans.get('A');
    expect(alongUnder(s, 0)).toBeCloseTo(plan?.toLip_mm ?? 0, 6);
    expect(Math.abs(alongUnder(s, deckTopLength(s)))).toBeLessThan(60);
  });

  test('lower layers of sheet are longer, each by its thickness times the bend; the width is the frame’s as read', () => {
    const s = situation();
    const [lower, upper] = laySheets(s, { width_mm: 1220, long_mm: 2440 }, 1200, 3);
    const turn = (deckTopLength(s) - 0) / s.ramp.design.arc.radius_mm;
    expect((lower?.length_mm ?? 0) - (upper?.length_mm ?? 0)).toBeCloseTo(9 * turn, 6);
    const read1206 = situation(
      read('assemble/width', 'entry', 1204),
      read('assemble/width', 'lip', 1206),
      read('finish/trial-deck', 'sheet', 1220),
      read('finish/trial-deck', 'long', 2440),
    );
    expect(step(finishSheet(read1206), 'finish/drill-deck')?.items?.[0]?.second).toEqual({
      v: 1206,
      as: 'length',
    });
  });

  test('a deck longer or wider than a sheet is pieced, with no joint of one layer over a joint of the next', () => {
    const s = situation();
    const pieces = laySheets(s, { width_mm: 600, long_mm: 1000 }, 1200, 3);
    const joints = (layer: number) => {
      let at = 0;
      return pieces
        .filter(p => p.layer === layer && p.across === 1)
        .slice(0, -1)
        .map(p => {
          at += p.length_mm;
          return at;
        });
    };
    for (const a of joints(1)) for (const b of joints(2)) expect(Math.abs(a - b)).toBeGreaterThan(200);
    expect(joints(1).length).toBeGreaterThan(0);
    expect(new Set(pieces.map(p => p.across)).size).toBe(2);
  });

  test('every joint of a layer lies on a crossmember, that of the next layer on another', () => {
    const s = situation();
    const supports = s.ramp.members
      .filter(m => m.kind === 'crossmember')
      .map(m => fromLipOver(s, m.along_mm ?? 0));
    const R = s.ramp.design.arc.radius_mm;
    const pieces = laySheets(s, { width_mm: 1220, long_mm: 1000 }, 1200, 3);
    const joints = (layer: number) => {
      // A layer below the deck top is longer by its depth over the radius.
      const shrink = R / (R + (2 - layer + 0.5) * 9);
      let at = 0;
      const mine = pieces.filter(p => p.layer === layer);
      expect(mine.every(p => p.length_mm <= 1000 + 1e-6)).toBe(true);
      return mine.slice(0, -1).map(p => {
        at += p.length_mm;
        return at * shrink;
      });
    };
    const all = [...joints(1), ...joints(2)];
    expect(all.length).toBeGreaterThanOrEqual(2);
    for (const joint of all) expect(Math.min(...supports.map(at => Math.abs(at - joint)))).toBeLessThan(0.2);
  });

  test('what lies over a spot of the back wall is what that spot lies under', () => {
    for (const straight of [0, 150]) {
      const s = situation(set('straight', straight));
      for (const at of [0, 60, 200, 700, 1200]) expect(fromLipOver(s, alongUnder(s, at))).toBeCloseTo(at, 6);
    }
  });

  test('a thin wall takes bolts instead of screws', () => {
    const thin = situation(set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 2 }));
    expect(step(finishSheet(thin), 'finish/deck')?.words).toBe('deck-bolts');
    expect(step(finishSheet(situation()), 'finish/deck')?.words).toBe('deck');
  });
});

describe('packers', () => {
  test('bring the lower rail up to the higher one flat by flat, from the surveys with the clamps off', () => {
    const s = situation(...loose('A', [0, 0, 0, 0, 0]), ...loose('B', [0, 0, -2, -4, -6]));
    const packers = packersOf(s);
    expect(packers.every(p => p.rail === 'B')).toBe(true);
    expect(packers.find(p => p.spot === 'lip')?.thick_mm).toBeCloseTo(6, 9);
    expect(packers.every(p => p.thick_mm >= 1 && (p.thick_mm * 2) % 1 === 0)).toBe(true);
    expect(step(finishSheet(s), 'finish/packers')?.items?.at(-1)).toMatchObject({
      name: 'B lip',
      value: { v: 6 },
    });
  });

  test('none where the rails match, however far both are off, and none before both are read', () => {
    const both = [0, 1, 2, 3, 4];
    expect(packersOf(situation(...loose('A', both), ...loose('B', both)))).toEqual([]);
    expect(packersOf(situation(...loose('A', both)))).toEqual([]);
    expect(step(finishSheet(situation(...loose('A', both))), 'finish/packers')).toBeUndefined();
  });

  test('a base packed up by 3 leaves nothing to pack where the rail is level', () => {
    const low = [...loose('A', [2, 2, 2, 2, 2]), ...loose('B', [-1, -1, -1, -1, -1])];
    expect(packersOf(situation(...low)).length).toBeGreaterThan(5);
    const raised = packersOf(situation(...low, tick('assemble/pack-base@B', { 'base-pack@B': 3 })));
    expect(raised).toEqual([]);
  });
});

describe('drains', () => {
  test('before the first slit, 25 clear of it, and never so near the end that no steel is left', () => {
    expect(railDrainAt(48)).toBeCloseTo(19, 9);
    expect(railDrainAt(80)).toBe(25);
    expect(railDrainAt(35)).toBe(12);
    expect(railDrainAt(null)).toBe(25);
  });

  test('under a base rail past its foot plate, not through it', () => {
    const s = situation();
    const foot = s.ramp.members.find(m => m.kind === 'foot plate')?.long_mm ?? 0;
    const base = step(finishSheet(s), 'finish/drains')?.items?.filter(i => i.name.includes('base')) ?? [];
    expect(base.length).toBe(4);
    for (const item of base) expect(item.value?.v).toBe(foot + 25);
  });

  test('one in each curved rail, two in each base rail', () => {
    expect(step(finishSheet(situation()), 'finish/drains')?.items?.length).toBe(6);
  });
});

describe('openings', () => {
  const span = (...doings: Parameters<typeof situation>) => {
    const s = situation(...doings);
    const { value, second } =
      step(finishSheet(s), 'finish/edges')?.items?.find(i => i.name === 'sides') ?? {};
    return { s, from: value?.v ?? Number.NaN, to: second?.v ?? Number.NaN };
  };
  /** Clear height between base rail and curved rail so far along the ground. */
  const clear = (s: ReturnType<typeof situation>, x: number) => {
    const { shapes, plans, entry, design } = s.ramp;
    const plan = plans.get('A');
    const at = (along: number) => shapes.get('A')?.bottomAt(along) ?? { x: 0, y: 0 };
    let [low, high] = [0, plan?.toLip_mm ?? 0];
    for (let k = 0; k < 50; k++) {
      const middle = (low + high) / 2;
      if (at(middle).x - entry.length_mm < x) low = middle;
      else high = middle;
    }
    return at(low).y - design.tube.depth_mm;
  };

  test('the sides are closed from where a finger goes in, to where a head comes out again', () => {
    const { s, from, to } = span(set('shape', { height: 500, exit: 30 * DEG }), set('spacing', 2000));
    expect(clear(s, from)).toBeCloseTo(8, 1);
    if (s.ramp.members.some(m => m.kind === 'diagonal'))
      expect(to).toBeCloseTo(s.ramp.lip.x_mm - s.ramp.entry.length_mm, 6);
    else expect(clear(s, to)).toBeCloseTo(230, 1);
  });

  test('a ramp too low for a head is closed to its lip', () => {
    const { s, to } = span(set('shape', { height: 250, exit: 20 * DEG }));
    expect(to).toBeCloseTo(s.ramp.lip.x_mm - s.ramp.entry.length_mm, 6);
  });
});

describe('paint', () => {
  const weather = (air: number, damp: number, steel: number) => [
    read('finish/paint-weather', 'air', air),
    read('finish/paint-weather', 'steel', steel),
    read('finish/paint-weather', 'damp', damp),
  ];
  const shut = (...doings: Parameters<typeof situation>) =>
    step(finishSheet(situation(...doings)), 'finish/prime')
      ?.gates?.filter(g => g.shut && g.id.startsWith('paint'))
      .map(g => g.id);

  test('air 16 °C at 71 % damp and steel at 13: 2 °C over the dew point of 11, no paint (a paint maker’s note on ambient conditions)', () => {
    expect(paintWeather(situation(...weather(16, 71, 13)))?.dew_C).toBeCloseTo(11, 0);
    expect(shut(...weather(16, 71, 13))).toEqual(['paint-steel-cold']);
  });

  test('steel at 19 over a dew point of 15: 4 °C, paint (the same note)', () => {
    // 21 °C air has that dew point at 68.6 % damp.
    expect(paintWeather(situation(...weather(21, 68.6, 19)))?.dew_C).toBeCloseTo(15, 1);
    expect(shut(...weather(21, 68.6, 19))).toEqual([]);
  });

  test('damper than 85 % is said as that, warm steel or not; unread weather is said as unread', () => {
    expect(shut(...weather(20, 90, 30))).toEqual(['paint-too-damp']);
    expect(shut()).toEqual(['paint-weather-old']);
  });

  test('a reading older than four hours says nothing of now', () => {
    // Doings are an hour apart, so five things done after it make it five hours old.
    const since = Array.from({ length: 5 }, (_, k) => tick(`finish/drains#${k}`));
    expect(shut(...weather(21, 60, 20), ...since)).toEqual(['paint-weather-old']);
  });

  test('the area is the tubes’ outside by their length', () => {
    const s = situation();
    const tubes = s.ramp.members.filter(m => m.kind !== 'side plate' && m.kind !== 'foot plate');
    const boxy = tubes.reduce(
      (sum, m) => sum + 2 * (m.tube.depth_mm + m.tube.width_mm) * ((m.long_mm + m.short_mm) / 2),
      0,
    );
    // Rounded corners take a little off the box; plates and the entry plate come on top.
    expect(paintArea(s)).toBeGreaterThan((0.9 * boxy) / 1e6);
    const liters = finishSheet(s).figures.find(f => f.id === 'top-coat')?.value;
    expect(liters).toMatchObject({ is: 'band' });
    if (liters?.is === 'band') expect(liters.low < liters.likely && liters.likely < liters.high).toBe(true);
  });
});

describe('anchors', () => {
  const pulls = (...held: number[]) => held.map((v, k) => read('finish/anchors', `pull${k + 1}`, v));
  const anchors = (...doings: Parameters<typeof situation>) =>
    gate(finishSheet(situation(...doings)), 'finish/first-use', 'anchors');

  test('no riding until four held what is asked, and no reason does instead', () => {
    const need = anchorNeed(situation())?.pull_N ?? 0;
    expect(anchors()).toMatchObject({ shut: true, never: true, fills: { weak: 4 } });
    expect(anchors(...pulls(need, need, need, need - 20))).toMatchObject({ shut: true, fills: { weak: 1 } });
    expect(anchors(...pulls(need, need, need))).toMatchObject({ shut: true, fills: { weak: 1 } });
    expect(anchors(...pulls(need, need, need, need))).toMatchObject({ shut: false });
  });

  test('where plan wants eight, eight lugs are welded and eight are pulled, and each has a name', () => {
    const wet = situation(set('ground', 'wet lawn'));
    expect(standingStill(wet)?.anchors).toMatchObject({ entry: 4, rear: 4 });
    expect(
      finishSheet(wet)
        .steps.find(d => d.key === 'finish/anchors')
        ?.asks?.map(a => a.ask),
    ).toEqual(Array.from({ length: 8 }, (_, k) => `pull${k + 1}`));
    expect(
      assembleSheet(wet)
        .steps.find(d => d.key === 'assemble/lugs')
        ?.items?.map(i => i.name),
    ).toEqual(['entry A', 'entry B', 'entry 2 A', 'entry 2 B', 'rear A', 'rear B', 'rear 2 A', 'rear 2 B']);
    const need = anchorNeed(wet)?.pull_N ?? 0;
    const four = pulls(need, need, need, need);
    expect(anchors(set('ground', 'wet lawn'), ...four)).toMatchObject({
      shut: true,
      fills: { weak: 4, all: 8 },
    });
    expect(anchors(set('ground', 'wet lawn'), ...pulls(...Array<number>(8).fill(need)))).toMatchObject({
      shut: false,
    });
  });

  test('a heavier rider on a steeper lip asks for more, a flat one for no more than a firm tug', () => {
    const need = (rider: number, exit: number) =>
      anchorNeed(situation(set('rider', rider), set('shape', { radius: 3000, exit: exit * DEG })));
    expect(need(150, 50)?.pull_N ?? 0).toBeGreaterThan(need(90, 45)?.pull_N ?? 0);
    expect(need(60, 20)?.pull_N).toBe(500);
    const hard = need(150, 50);
    expect(hard?.pull_N).toBeCloseTo(1.5 * Math.hypot(hard?.slide_N ?? 0, hard?.lift_N ?? 0), 9);
  });
});

describe('kept safe', () => {
  test('from the evening it stands on its feet, before anything else of finishing', () => {
    const sheet = finishSheet(situation());
    const keep = step(sheet, 'finish/keep-safe');
    expect(keep?.needs).toEqual(['assemble/feet']);
    expect(Math.min(...sheet.steps.map(s => s.turn))).toBe(keep?.turn);
  });
});

describe('words of finishing', () => {
  const sheetRead = [read('finish/trial-deck', 'sheet', 1220), read('finish/trial-deck', 'long', 2440)];
  const builds = {
    'as drawn': situation(),
    'sheet measured': situation(...sheetRead),
    'boards measured': situation(boards, read('finish/trial-deck', 'board', 145)),
    'steep, few clear spots': situation(
      boards,
      set('shape', { radius: 2500, exit: 45 * DEG }),
      read('finish/trial-deck', 'board', 95),
    ),
    cracked: situation(read('finish/inspect', 'cracked@A', 1), read('finish/proof', 'set', 3)),
    'cracks, rolled rails': situation(set('route', 'rolled'), read('finish/inspect', 'cracked@B', 3)),
    'one weld and some welds fail': situation(
      read('finish/inspect-joints@A', 'tops', 1),
      read('finish/inspect-across', 'lugs', 3),
    ),
    'cracked after the proof': situation(
      read('finish/proof', 'set', 0),
      read('finish/look-again@10', 'cracks', 1),
      read('finish/look-again@10', 'cracks', 0),
    ),
    'rust left': situation(read('finish/clean', 'rust', 10)),
    'coat too soon': situation(
      read('finish/tins', 'from', 40 * 3600),
      read('finish/tins', 'to', 80 * 3600),
      tick('finish/prime'),
    ),
    'coat too late': situation(
      tick('finish/prime'),
      tick('finish/other'),
      tick('finish/other2'),
      read('finish/tins', 'from', 3600),
      read('finish/tins', 'to', 3600),
    ),
    packers: situation(...loose('A', [0, 0, 0, 0, 0]), ...loose('B', [0, 0, -2, -4, -6])),
    'weather read': situation(
      read('finish/paint-weather', 'air', 14),
      read('finish/paint-weather', 'steel', 12.5),
      read('finish/paint-weather', 'damp', 82),
    ),
    'thin wall, high lip': situation(
      set('tube', { depth_mm: 40, width_mm: 40, wall_mm: 2 }),
      set('shape', { height: 1200, exit: 45 * DEG }),
    ),
    'US sizes': american(),
  };
  test.each(Object.entries(builds))('none missing, no mark left open: %s', (_, s) => {
    expect(wordGaps(finishSheet(s), STEPS)).toEqual([]);
  });

  test('every step of the stage has words that fit its rows', () => {
    expect(longWords('finish', STEPS)).toEqual([]);
    expect(STEPS.filter(key => WORDS.steps.finish?.[key] === undefined)).toEqual([]);
  });
});

describe('first aid and words of the trade', () => {
  test('each hurt has what to do now and when to call, with no more than five lines', () => {
    expect(Object.keys(WORDS.hurt).sort()).toEqual(
      ['burn', 'concussion', 'cut', 'eye', 'fall', 'fume', 'shock'].sort(),
    );
    for (const [id, h] of Object.entries(WORDS.hurt)) {
      expect(h.now.length, id).toBeLessThanOrEqual(5);
      expect(h.call, id).toMatch(/112, 911, 999/);
    }
  });

  test('every thing the pause page may ask to look at again has words', async () => {
    const { rechecksOf } = await import('../../src/coach/pause.ts');
    expect(typeof rechecksOf).toBe('function');
    for (const id of [
      'rail-offsets',
      'other-rail',
      'bright-metal',
      'gas-wire',
      'clamps',
      'diagonals',
      'anchors',
      'lens-battery',
      'deck-outdoors',
    ])
      expect(WORDS.rechecks[id], id).toBeDefined();
  });
});
