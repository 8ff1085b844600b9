import { describe, expect, test } from 'vitest';
import { slitSection } from '../../../src/reckon/strength/slit-section.ts';
import { willItHold } from '../../../src/reckon/strength/will-it-hold.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';
import { madeFrame, TUBE } from './side-frames.ts';

const held = async (made: Parameters<typeof madeFrame>[0] = {}) => kept(await willItHold(madeFrame(made)));

describe('a sound beginner’s side frame', () => {
  test.each(['EN', 'AISC'] as const)(
    'holds by %s before any test piece, with its margins',
    async standard => {
      const holding = await held({ change: { standard } });
      expect(holding.holds).toBe(true);
      expect(holding.governing.utilisation).toBeLessThan(1);
      expect(holding.governing.utilisation).toBeGreaterThan(0.3);
      expect(holding.slits).toHaveLength(12);
    },
  );

  test('every place carries the wheel at some time: a member forgotten by the loads would stand at nought', async () => {
    const holding = await held();
    for (const member of holding.members.filter(({ kind }) => kind !== 'side plates'))
      expect(member.utilisation, `${member.kind} ${member.name}`).toBeGreaterThan(0.01);
  });

  test('a slit test piece that passes doubles what a slit may bear, and leaves the range as it is', async () => {
    const before = await held();
    const after = await held({ change: { slitProven: true } });
    for (const [k, slit] of before.slits.entries()) {
      expect(after.slits[k]!.utilisation).toBeCloseTo(slit.utilisation / 2, 9);
      expect(after.slits[k]!.range_MPa).toBeCloseTo(slit.range_MPa, 9);
    }
  });

  test('a T test piece does the same for joints alone', async () => {
    const before = await held();
    const after = await held({ change: { jointProven: true } });
    expect(after.joints[0]!.utilisation).toBeCloseTo(before.joints[0]!.utilisation / 2, 9);
    expect(after.slits[0]!.utilisation).toBeCloseTo(before.slits[0]!.utilisation, 9);
  });

  test('the range at a slit lies between the tension it pulls and the whole single-span moment', async () => {
    const { slits } = await held();
    const section = kept(slitSection({ shape: 'square', ...TUBE, rule: 'EN10219' }, true));
    const single = (2648 * 320) / 4 / section.top_mm3;
    for (const { range_MPa, x_mm } of slits.filter(slit => slit.x_mm > 1100)) {
      expect(range_MPa, `slit at ${x_mm}`).toBeLessThan(single);
      expect(range_MPa, `slit at ${x_mm}`).toBeGreaterThan(single / 6);
    }
  });

  test('the feet bear the rider and the ramp: what presses down at once is at least a rider on one foot', async () => {
    const { feet } = await held();
    expect(Math.max(...feet.map(({ down_N }) => down_N))).toBeGreaterThan(2648);
    expect(feet.filter(({ along_N }) => along_N > 0).map(({ name }) => name)).toEqual([
      feet[0]!.name,
      feet.at(-1)!.name,
    ]);
  });
});

describe('bad ones are found', () => {
  test('uprights too far apart', async () => {
    const holding = await held({ spacing_mm: 900 });
    expect(holding.holds).toBe(false);
    expect(['slit', 'slit, ridden again and again', 'joint']).toContain(holding.governing.what);
  });

  test('too much load for its slits', async () => {
    const change = { loads: { ...madeFrame().loads, riding_N: 6000, drop_N: 6000 } };
    expect((await held({ change })).holds).toBe(false);
  });

  test('more load, more use, of everything', async () => {
    const light = await held();
    const heavy = await held({ change: { loads: { ...madeFrame().loads, riding_N: 3500, drop_N: 3500 } } });
    for (const [k, slit] of light.slits.entries())
      expect(heavy.slits[k]!.utilisation).toBeGreaterThan(slit.utilisation);
    expect(heavy.sags.span.sag_mm).toBeGreaterThan(light.sags.span.sag_mm);
  });

  test('long thin uprights buckle rather than bend', async () => {
    const change = { grade: { yield_MPa: 235, tensile_MPa: 360 } };
    const thin = { depth_mm: 12, width_mm: 12, wall_mm: 1 };
    const frame = madeFrame({ radius_mm: 9000, exit_rad: 0.6, spacing_mm: 600, change });
    const slight = { ...frame, uprights: frame.uprights.map(one => ({ ...one, tube: thin })) };
    const holding = kept(await willItHold(slight));
    const last = holding.members.filter(({ kind }) => kind === 'upright').at(-1)!;
    expect(last.slenderness).toBeGreaterThan(200);
    expect(last.utilisation).toBeGreaterThan(1);
    expect(last.check).toBe('buckling');
  });

  test('an upright much narrower than the rail is told: the rail’s wall may fold in under it', async () => {
    const frame = madeFrame();
    const narrow = { depth_mm: 20, width_mm: 20, wall_mm: 2 };
    const uprights = frame.uprights.map(one => ({ ...one, tube: narrow }));
    const told = kept(await willItHold({ ...frame, uprights })).joints.filter(joint => joint.narrow);
    expect(new Set(told.map(({ name }) => name)).size).toBe(uprights.length);
    expect(kept(await willItHold(frame)).joints.some(joint => joint.narrow)).toBe(false);
  });
});

describe('numbers that contradict themselves are refused at the place', () => {
  const faultOf = async (change: Parameters<typeof willItHold>[0]) => refused(await willItHold(change));
  const frame = madeFrame();

  test.each([
    ['a rail of one point', { rail: { ...frame.rail, points: [frame.rail.points[0]!] } }, 'rail.points'],
    [
      'a rail that turns back',
      { rail: { ...frame.rail, points: [...frame.rail.points, frame.rail.points[0]!] } },
      'rail.points.14.x_mm',
    ],
    [
      'a base rail without length',
      { base: { ...frame.base, to_x_mm: frame.base.from_x_mm } },
      'base.to_x_mm',
    ],
    ['an upright beyond the lip', { uprights: [{ ...frame.uprights[0]!, x_mm: 9000 }] }, 'uprights.0.x_mm'],
    [
      'a diagonal from nowhere',
      { diagonals: [{ name: 'd', base_x_mm: 0, rail_x_mm: 1500, tube: TUBE }] },
      'diagonals.0.base_x_mm',
    ],
    ['nothing that keeps it', { feet: frame.feet.map(foot => ({ ...foot, anchored: false })) }, 'feet'],
    [
      'two feet in one place',
      { feet: [...frame.feet, { ...frame.feet[1]!, name: 'again' }] },
      `feet.${frame.feet.length}.x_mm`,
    ],
    ['no load at all is a number', { loads: { ...frame.loads, riding_N: Number.NaN } }, 'loads.riding_N'],
    ['a wall that fills the tube', { rail: { ...frame.rail, tube: { ...TUBE, wall_mm: 20 } } }, 'wall_mm'],
    [
      'a wall that folds before it yields',
      { base: { ...frame.base, tube: { depth_mm: 100, width_mm: 100, wall_mm: 1 } } },
      'wall_mm',
    ],
    [
      'a tie that meets one upright',
      {
        ties: [{ name: 't', from_x_mm: frame.uprights.at(-1)!.x_mm, to_x_mm: 1234, y_mm: 200, tube: TUBE }],
      },
      'ties.0',
    ],
  ] as const)('%s', async (_, change, field) => {
    expect((await faultOf({ ...frame, ...change })).field).toBe(field);
  });

  test('a frame on one foot falls over: said in the words of statics', async () => {
    const fault = await faultOf({ ...frame, feet: [{ ...frame.feet[2]!, anchored: true }] });
    expect(fault.code).toBe('mechanism');
    expect(fault.message).toMatch(/moves freely/);
  });
});
