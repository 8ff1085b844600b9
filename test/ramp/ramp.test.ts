import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boardSpan, sheetBendRadius, thickestLayer } from '../../src/ramp/deck.ts';
import type { Answered } from '../../src/ramp/design.ts';
import { deckLength } from '../../src/ramp/mass.ts';
import { type Measured, NOTHING_MEASURED } from '../../src/ramp/measured.ts';
import { CLEAR_OF_SLIT, clearWidth, UPRIGHT_SPACING } from '../../src/ramp/members.ts';
import { tackLineOffset } from '../../src/ramp/rail-shape.ts';
import { type Ramp, rampOf } from '../../src/ramp/ramp.ts';

const made = (answers: Answered = {}, measured: Measured = NOTHING_MEASURED): Ramp => {
  const r = rampOf('test', 'metric', answers, measured);
  if (!r.ok) throw new Error(r.fault.message);
  return r.value;
};
const member = (r: Ramp, need: string) => {
  const m = r.members.find(x => x.need === need);
  if (m === undefined) throw new Error(`no ${need} among ${r.members.map(x => x.need).join(', ')}`);
  return m;
};
const codes = (r: Ramp): string[] => r.problems.map(p => p.code);
const DEG = Math.PI / 180;

describe('the default design: lip 600 mm, 30°, 40×40×3, two layers of 9 mm', () => {
  const r = made();
  const plan = r.plans.get('A')!;

  test('its curve follows from lip and exit', () => {
    expect(r.design.arc.radius_mm).toBeCloseTo(4478.46, 1);
    expect(r.design.arc.run_mm).toBeCloseTo(2239.23, 1);
    expect(r.problems).toEqual([]);
    expect(r.rails).toEqual(['A', 'B']);
  });

  test('the rail begins where its bottom face reaches the ground, and bends only the rest', () => {
    const bottom = plan.finished.radius_mm;
    expect(bottom).toBeCloseTo(r.design.arc.radius_mm + 58, 9);
    expect(r.design.arc.radius_mm - bottom * Math.cos(plan.start_rad)).toBeCloseTo(0, 6);
    expect(plan.turn_rad).toBeCloseTo(30 * DEG - plan.start_rad, 12);
    expect(r.entry.length_mm).toBeCloseTo(bottom * Math.sin(plan.start_rad), 6);
  });

  test('slits close, with the pull of their welds, exactly the bend the rail makes', () => {
    const closed = plan.slits.reduce((sum, s) => sum + s.close_rad + plan.pull.rad, 0);
    expect(closed).toBeCloseTo(plan.turn_rad, 12);
    const lever = 40 - 1.5;
    for (const s of plan.slits) expect(s.close_rad).toBeLessThanOrEqual(1.2 / lever + 1e-12);
    expect(plan.slits[0]!.at_mm).toBeCloseTo(plan.pitch_mm / 2, 9);
    expect(plan.cut_mm - plan.toLip_mm).toBe(50);
    expect(plan.slits.map(s => s.third)).toEqual([1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3]);
  });

  test('uprights stand on flats, clear of slits, no farther apart than a novice rail carries', () => {
    const ups = r.members.filter(m => m.rail === 'A' && (m.kind === 'upright' || m.kind === 'lip upright'));
    const along = ups.map(m => m.along_mm!).sort((a, b) => b - a);
    for (let i = 1; i < along.length; i++)
      expect(along[i - 1]! - along[i]!).toBeLessThanOrEqual(UPRIGHT_SPACING);
    for (const m of ups) {
      for (const s of plan.slits) {
        expect(Math.abs(s.at_mm - m.along_mm!) - r.design.post.depth_mm / 2).toBeGreaterThanOrEqual(
          CLEAR_OF_SLIT,
        );
      }
      // long − short = b·tanθ; the base end is square, the rail end takes the slope.
      expect(m.long_mm - m.short_mm).toBeCloseTo(30 * Math.tan(m.ends.second_rad), 6);
    }
  });

  test('crossmembers fill the clear width, the frame is as wide as the deck', () => {
    expect(clearWidth(r.design)).toBe(1120);
    expect(member(r, 'crossmember@A-B:lip').long_mm).toBe(1120);
    expect(r.envelope.width_mm).toBe(1200);
    expect(r.envelope.fits).toBe(true);
  });

  test('the tack line lies outside the finished line by what the welds will pull', () => {
    expect(tackLineOffset(plan, 0)).toBeCloseTo(0, 9);
    const atLip = tackLineOffset(plan, plan.toLip_mm);
    // Small-angle check: half the pull's turn times the length.
    expect(atLip).toBeLessThan(0);
    expect(Math.abs(atLip)).toBeCloseTo((plan.pull.rad * plan.slits.length * plan.toLip_mm) / 2, -1);
  });
});

describe('a tight curve of thick tube: slits stand close', () => {
  const r = made({ shape: { radius: 3000, exit: 45 * DEG } });
  const plan = r.plans.get('A')!;
  const clear = (m: {
    along_mm?: number;
    tube: { depth_mm: number };
    ends: { second_rad: number };
  }): number =>
    Math.min(...plan.slits.map(s => Math.abs(s.at_mm - m.along_mm!))) -
    m.tube.depth_mm / 2 / Math.cos(m.ends.second_rad);

  test('the lip upright moves to the last whole flat, the base rail still ends under the lip', () => {
    const up = member(r, 'lip upright@A');
    expect(clear(up)).toBeGreaterThanOrEqual(CLEAR_OF_SLIT);
    expect(up.along_mm).toBeCloseTo(plan.flats_mm.at(-2)!, 9);
    const base = member(r, 'base rail@A');
    const lipUnder = r.shapes.get('A')!.bottomAt(plan.toLip_mm).x;
    expect(base.x_mm + base.long_mm / 2).toBeGreaterThan(lipUnder - 25);
    expect(
      r.members.filter(m => m.rail === 'A' && m.kind === 'upright' && m.flat === plan.flats_mm.length - 2),
    ).toEqual([]);
  });

  test('the crossmembers at both ends keep clear too, and none is there twice', () => {
    const across = r.members.filter(m => m.kind === 'crossmember');
    for (const m of across) expect(clear(m)).toBeGreaterThanOrEqual(CLEAR_OF_SLIT);
    expect(new Set(across.map(m => Math.round(m.along_mm!))).size).toBe(across.length);
  });
});

describe('upright cut lengths against a worked table (R_b 3058, b 30; derived)', () => {
  // Long / centre / short at θ 10°…40° above the line's lowest point: 49.1/46.5/43.9 … 728.1/715.4/702.9.
  test.each([
    [10, 49.1, 46.5, 43.9],
    [20, 189.9, 184.4, 179.0],
    [30, 418.4, 409.7, 401.1],
    [40, 728.1, 715.4, 702.9],
  ])('at %d°', (deg, long, centre, short) => {
    const y = 2 * 3058 * Math.sin((deg * DEG) / 2) ** 2;
    const lean = 15 * Math.tan(deg * DEG);
    expect(y).toBeCloseTo(centre, 1);
    expect(y + lean).toBeCloseTo(long, 0);
    expect(y - lean).toBeCloseTo(short, 0);
  });
});

describe('a caliper reading changes its own rail, and the frame only where it hangs on it', () => {
  const drawn = made();
  const read = (tubes: Measured['tubes']): Ramp => made({}, { ...NOTHING_MEASURED, tubes });
  const one = read(new Map([['A', { depth_mm: 40.6, width_mm: 40.4, wall_mm: 2.9 }]]));

  test('one of two rails: its slits and where it begins; the other rail, the entry and the base rails stay', () => {
    expect(one.plans.get('A')!.start_rad).not.toBe(drawn.plans.get('A')!.start_rad);
    expect(one.plans.get('A')!.slits[0]!.close_rad).not.toBe(drawn.plans.get('A')!.slits[0]!.close_rad);
    expect(one.plans.get('B')).toEqual({ ...drawn.plans.get('B')!, tube: one.plans.get('B')!.tube });
    expect(one.entry.length_mm).toBe(drawn.entry.length_mm);
    expect(member(one, 'base rail@B').long_mm).toBe(member(drawn, 'base rail@B').long_mm);
    expect(member(one, 'lip upright@B').long_mm).toBe(member(drawn, 'lip upright@B').long_mm);
    expect(one.envelope).toEqual(drawn.envelope);
  });

  test('a deeper rail lies lower under the same deck: its uprights are shorter by as much', () => {
    const shorter = member(drawn, 'lip upright@A').long_mm - member(one, 'lip upright@A').long_mm;
    expect(shorter).toBeCloseTo(0.6 * Math.cos(30 * DEG), 0);
    expect(shorter).toBeGreaterThan(0.3);
  });

  test('a wider rail leaves less between the rails, by just its own width', () => {
    expect(clearWidth(drawn.design) - clearWidth(one.design)).toBeCloseTo(0.4, 9);
    expect(member(one, 'crossmember@A-B:lip').long_mm).toBeCloseTo(1119.6, 9);
  });

  test('once every rail was read the frame follows their mean', () => {
    const both = read(
      new Map([
        ['A', { depth_mm: 40.6, wall_mm: 2.9 }],
        ['B', { depth_mm: 40.2, wall_mm: 3.1 }],
      ]),
    );
    expect(both.design.tube.depth_mm).toBeCloseTo(40.4, 9);
    expect(both.design.tube.wall_mm).toBeCloseTo(3, 9);
    expect(both.entry.length_mm).toBeGreaterThan(drawn.entry.length_mm);
  });
});

describe('what was measured changes the ramp', () => {
  test('a wider kerf learned on the test piece makes fewer slits, a narrower one more', () => {
    const count = (kerf_mm: number): number =>
      made({}, { ...NOTHING_MEASURED, kerf_mm }).plans.get('A')!.slits.length;
    expect(count(1.6)).toBeLessThan(count(1.2));
    expect(count(1.0)).toBeGreaterThan(count(1.2));
  });

  test('a third that bent less leaves more for the slits still to come, and its marks stay', () => {
    const plan = made().plans.get('A')!;
    const first = plan.slits.filter(s => s.third === 1);
    const marked = (bent_rad: number | null): Measured => ({
      ...NOTHING_MEASURED,
      marks: new Map([
        [
          'A',
          [
            {
              entry: 'e',
              third: 1,
              first: 1,
              marks_mm: first.map(s => s.at_mm),
              close_rad: first[0]!.close_rad,
              kerf_mm: 1.2,
              gap_mm: 0,
              bent_rad,
              feeler_mm: null,
            },
          ],
        ],
      ]),
    });
    const asPlanned = made({}, marked(null)).plans.get('A')!;
    const short = made({}, marked(first[0]!.close_rad * first.length * 0.8)).plans.get('A')!;
    expect(short.slits.slice(0, first.length).map(s => s.at_mm)).toEqual(first.map(s => s.at_mm));
    const rest = (p: typeof plan): number =>
      p.slits.slice(first.length).reduce((n, s) => n + s.close_rad + p.pull.rad, 0);
    expect(rest(short) - rest(asPlanned)).toBeCloseTo(first[0]!.close_rad * first.length * 0.2, 9);
    const total = short.slits.slice(first.length).reduce((n, s) => n + s.close_rad, 0);
    expect(
      total + first[0]!.close_rad * first.length * 0.8 + short.pull.rad * short.slits.length,
    ).toBeCloseTo(plan.turn_rad, 9);
  });

  test('a rail that lies lower gets shorter uprights, each rail its own', () => {
    const r = made();
    const stations_mm = [0, 400, 800, 1200, 1650];
    const low = made(
      {},
      {
        ...NOTHING_MEASURED,
        curves: new Map([
          [
            'B',
            {
              survey: 's',
              phase: 'cold',
              line: 'finished line',
              stations_mm,
              offsets_mm: stations_mm.map(() => -6),
              read_to_mm: 0.5,
            },
          ],
        ]),
      },
    );
    const need = r.members.find(m => m.kind === 'upright' && m.rail === 'B')!.need;
    const change = member(low, need).long_mm - member(r, need).long_mm;
    expect(change).toBeLessThan(-5);
    expect(change).toBeGreaterThan(-9);
    const other = need.replace('@B', '@A');
    expect(member(low, other).long_mm).toBe(member(r, other).long_mm);
  });
});

describe('designs that cannot or should not be built say which number to change', () => {
  test('wall under 2 mm with slits for a first-timer', () => {
    const thin = { tube: { depth_mm: 40, width_mm: 40, wall_mm: 1.5 } };
    expect(codes(made(thin))).toContain('wall-thin');
    expect(codes(made({ ...thin, route: 'rolled' }))).not.toContain('wall-thin');
  });
  test.each(['tube', 'post'] as const)(
    'a %s whose corners do not fit its sides, and the wall that would',
    field => {
      const tube = { depth_mm: 40, width_mm: 20, wall_mm: 5.5 };
      const p = made({ [field]: tube }).problems.find(x => x.code === 'wall-too-thick');
      expect(p).toMatchObject({
        severity: 'refuse',
        fields: [field],
        fills: { most: { v: 5, as: 'thickness' } },
      });
      expect(codes(made({ [field]: { ...tube, wall_mm: 5 } }))).not.toContain('wall-too-thick');
    },
  );
  test('kerf over half the wall and 0.3', () => {
    const p = made({ cutter: { kind: 'chop saw', kerf_mm: 2.8 } }).problems.find(x => x.code === 'kerf-wide');
    expect(p?.fills.most).toEqual({ v: 1.8, as: 'thickness' });
  });
  test('flats shorter than the tube is deep', () => {
    const p = made({
      shape: { radius: 900, exit: 45 * DEG },
      deck: { kind: 'sheet', layer_mm: 3, layers: 5 },
    }).problems;
    expect(p.map(x => x.code)).toContain('flats-short');
    const to = p.find(x => x.code === 'flats-short')!.fills.radius!.v;
    expect(
      codes(made({ shape: { radius: to, exit: 45 * DEG }, deck: { kind: 'sheet', layer_mm: 3, layers: 5 } })),
    ).not.toContain('flats-short');
  });
  test('no room between the rails', () => {
    expect(codes(made({ width: 150 }))).toContain('too-narrow');
  });
  test('a sheet that will not bend to the radius, with the layer that does', () => {
    const p = made({
      shape: { radius: 3000, exit: 45 * DEG },
      deck: { kind: 'sheet', layer_mm: 18, layers: 1 },
    }).problems;
    const stiff = p.find(x => x.code === 'sheet-too-stiff');
    expect(stiff?.fills.to).toEqual({ v: 9, as: 'thickness' });
  });
  test('an entry longer than half the run is warned of, not refused', () => {
    const p = made({ shape: { radius: 8000, exit: 12 * DEG } }).problems.find(x => x.code === 'entry-long');
    expect(p?.severity).toBe('warn');
    expect(p?.fills.share?.v).toBeCloseTo(57.8, 0);
  });
  test('two sizes that no circle has are the fault of the curve', () => {
    expect(rampOf('x', 'metric', { shape: { height: 3000, radius: 1000 } }, NOTHING_MEASURED).ok).toBe(false);
  });
});

describe('boards across ask for rails', () => {
  // Largest span at 1.5 kN × 2 × 1.5, C24 in service class 3: 364, 647, 920 mm (derived from EN 1995-1-1 factors, memory).
  test.each([
    [28, 145, 364],
    [38, 140, 647],
    [45, 145, 920],
  ])('%d × %d carries a wheel over %d mm', (t, w, span) => {
    expect(boardSpan(t, w)).toBeCloseTo(span, -0.3);
  });
  test('1.2 m of 28 mm boards wants five rails, of 45 mm boards three', () => {
    expect(made({ deck: { kind: 'boards', thickness_mm: 28, board_mm: 145 } }).rails.length).toBe(5);
    expect(made({ deck: { kind: 'boards', thickness_mm: 45, board_mm: 145 } }).rails.length).toBe(3);
  });
  test('3/4 in ply asks for 20 ft along its grain (APA curved-panel table, memory)', () => {
    expect(sheetBendRadius(19.05)).toBeCloseTo(20 * 304.8, 6);
    expect(thickestLayer(3000)).toBe(9);
  });
});

test('any curve that can be built closes to its exit and keeps every mark on the bend', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2200, max: 9000, noNaN: true }),
      fc.double({ min: 18, max: 50, noNaN: true }),
      fc.double({ min: 0.9, max: 1.7, noNaN: true }),
      fc.double({ min: 0, max: 300, noNaN: true }),
      (radius, exit, kerf_mm, straight) => {
        const r = made({
          shape: { radius, exit: exit * DEG },
          cutter: { kind: 'thin disc', kerf_mm },
          straight,
        });
        const plan = r.plans.get('A')!;
        const closed = plan.slits.reduce((n, s) => n + s.close_rad + plan.pull.rad, 0);
        expect(closed).toBeCloseTo(plan.turn_rad, 9);
        for (const s of plan.slits) {
          expect(s.at_mm).toBeGreaterThan(0);
          expect(s.at_mm).toBeLessThan(plan.bend_mm);
        }
        for (const m of r.members) {
          expect(Number.isFinite(m.long_mm) && m.long_mm > 0).toBe(true);
        }
        // Bearers are flat bars as high as the plate's underside, none farther from the next than the plate may span.
        const { bearers, length_mm } = r.entry;
        const underside = (x: number): number => radius + 5 - Math.sqrt((radius + 5) ** 2 - x ** 2) - 5;
        for (const b of bearers) expect(underside(b.x_mm)).toBeCloseTo(b.height_mm, 6);
        const touches = Math.sqrt((radius + 5) ** 2 - radius ** 2);
        const marks = [length_mm, ...bearers.map(b => b.x_mm), touches];
        for (const [i, x] of marks.slice(1).entries())
          expect((marks[i] ?? 0) - x).toBeLessThanOrEqual(250 + 1e-6);
        const plate = r.entry.pieces.find(p => p.kind === 'entry plate')!;
        expect(r.design.arc.arc_mm + straight - plate.tube.width_mm).toBeCloseTo(deckLength(r.design), 6);
        expect(radius * Math.sin(plate.tube.width_mm / radius)).toBeCloseTo(length_mm, 6);
      },
    ),
    { numRuns: 200 },
  );
});
