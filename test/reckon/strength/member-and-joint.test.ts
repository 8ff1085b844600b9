import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { JOINT_DERATE, jointWeld } from '../../../src/reckon/strength/joint-weld.ts';
import { memberCapacity } from '../../../src/reckon/strength/member-check.ts';
import { slitAllowed_MPa, slitStress, slitUse } from '../../../src/reckon/strength/slit-check.ts';
import { passesAt, slitSection, throatShare } from '../../../src/reckon/strength/slit-section.ts';
import { type Standard, tubeStrength } from '../../../src/reckon/strength/tube-strength.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';
import { POST, TUBE } from './side-frames.ts';

const S235 = { yield_MPa: 235, tensile_MPa: 360 };
const capacity = (standard: Standard, length: number) =>
  kept(memberCapacity(kept(tubeStrength(POST, standard, S235)), length, length));

describe.each(['EN', 'AISC'] as const)('a member by %s', standard => {
  test('what it bears alone uses it up: pressed, pulled, bent, sheared', () => {
    const member = capacity(standard, 500);
    const { tension_N, moment_Nmm, shear_N } = member.strength;
    const none = { axial_N: 0, shear_N: 0, moment_Nmm: 0 };
    expect(member.use({ ...none, axial_N: -member.compression_N })).toEqual({
      utilisation: expect.closeTo(1, 12),
      check: 'buckling',
    });
    expect(member.use({ ...none, axial_N: tension_N })).toEqual({
      utilisation: expect.closeTo(1, 12),
      check: 'tension',
    });
    expect(member.use({ ...none, moment_Nmm: -moment_Nmm })).toEqual({
      utilisation: expect.closeTo(1, 12),
      check: 'bending',
    });
    expect(member.use({ ...none, shear_N })).toEqual({ utilisation: expect.closeTo(1, 12), check: 'shear' });
    expect(member.use(none).utilisation).toBe(0);
  });

  test('more of anything is never better, and no number is lost even past Euler', () => {
    const member = capacity(standard, 900);
    const share = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(share, share, share, fc.double({ min: 1, max: 2, noNaN: true }), (n, v, m, more) => {
        const forces = {
          axial_N: n * member.compression_N,
          shear_N: v * member.strength.shear_N,
          moment_Nmm: m * member.strength.moment_Nmm,
        };
        expect(member.share(forces.axial_N, forces.shear_N, forces.moment_Nmm)).toBe(
          member.use(forces).utilisation,
        );
        const grown = {
          axial_N: more * forces.axial_N,
          shear_N: more * forces.shear_N,
          moment_Nmm: more * forces.moment_Nmm,
        };
        const [less, greater] = [member.use(forces).utilisation, member.use(grown).utilisation];
        expect(Number.isFinite(greater)).toBe(true);
        expect(greater).toBeGreaterThanOrEqual(less * (1 - 1e-9));
      }),
    );
  });

  test('longer is weaker when pressed', () => {
    const borne = [200, 500, 1000, 2000].map(length => capacity(standard, length).compression_N);
    expect(borne).toEqual([...borne].sort((a, b) => b - a));
  });
});

describe('a pressed and bent member', () => {
  test('by EN: N/Nb and the moment enlarged by 1/(1 − N/Ncr) (derived from 6.3.3)', () => {
    const member = capacity('EN', 1500);
    const N = 0.3 * member.compression_N;
    const M = 0.4 * member.strength.moment_Nmm;
    const expected = 0.3 + 0.4 / (1 - N / member.euler_N);
    expect(member.use({ axial_N: -N, shear_N: 0, moment_Nmm: M }).utilisation).toBeCloseTo(expected, 12);
  });

  test('by AISC: H1-1a over a fifth, H1-1b under it, with B1 (derived from H1 and appendix 8)', () => {
    const member = capacity('AISC', 1500);
    const M = 0.4 * member.strength.moment_Nmm;
    const used = (share: number) =>
      member.use({ axial_N: -share * member.compression_N, shear_N: 0, moment_Nmm: M }).utilisation;
    const bent = (share: number) => 0.4 / (1 - (1.6 * share * member.compression_N) / member.euler_N);
    expect(used(0.3)).toBeCloseTo(0.3 + (8 / 9) * bent(0.3), 12);
    expect(used(0.1)).toBeCloseTo(0.05 + bent(0.1), 12);
  });

  test('shear over half of what it bears weakens bending by EN 6.2.8', () => {
    const member = capacity('EN', 300);
    const M = 0.75 * member.strength.moment_Nmm;
    const V = 0.7 * member.strength.shear_N;
    expect(member.use({ axial_N: 0, shear_N: V, moment_Nmm: M }).utilisation).toBeCloseTo(
      0.75 / (1 - 0.16),
      9,
    );
  });
});

describe('tubes that are refused', () => {
  test.each(['EN', 'AISC'] as const)('a wall that folds first, by %s', standard => {
    const fault = refused(tubeStrength({ depth_mm: 80, width_mm: 80, wall_mm: 1 }, standard, S235));
    expect(fault).toMatchObject({ code: 'no-solution', field: 'wall_mm' });
    expect(fault.accepted).toMatch(/engineer/);
  });

  test('steel without strength', () => {
    expect(refused(tubeStrength(TUBE, 'EN', { ...S235, yield_MPa: 0 })).field).toBe('yield_MPa');
    expect(refused(tubeStrength(TUBE, 'EN', { ...S235, tensile_MPa: Number.NaN })).field).toBe('tensile_MPa');
  });
});

describe('a slit', () => {
  test('half the wall is weld in 3 mm, 0.7 with a V, and in 2 mm without one', () => {
    expect(throatShare(3, false)).toBe(0.5);
    expect(throatShare(3, true)).toBe(0.7);
    expect(throatShare(2, false)).toBe(0.7);
    // 14 gauge is reckoned with 0.93 of 2.11 mm; 11 gauge with 2.83.
    expect(throatShare(0.93 * 2.108, false)).toBe(0.7);
    expect(throatShare(0.93 * 3.048, false)).toBe(0.5);
  });

  test('is weaker than the tube on every side, and stronger with a V', () => {
    const closed = kept(slitSection({ shape: 'square', ...TUBE, rule: 'EN10219' }, false));
    const opened = kept(slitSection({ shape: 'square', ...TUBE, rule: 'EN10219' }, true));
    for (const part of ['area', 'top', 'back'] as const) {
      expect(closed.of_tube[part]).toBeLessThan(opened.of_tube[part]);
      expect(opened.of_tube[part]).toBeLessThan(1);
    }
    expect(closed.axis_mm).toBeLessThan(20);
  });

  test('a tube with all its wall as weld would be the tube: the parts add up', () => {
    // A 2.2 mm wall takes a share of 0.7; its missing 0.3 of three walls must be the missing area, to the corners.
    const tube = { shape: 'square', depth_mm: 40, wall_mm: 2, rule: 'EN10219' } as const;
    const slit = kept(slitSection(tube, false));
    // Flats and corners of three walls by their middle lines, less 2t of each side that stays whole.
    const middle = 32 + 2 * 32 + 2 * (Math.PI / 2) * 3;
    expect(slit.area_mm2 / slit.of_tube.area - slit.area_mm2).toBeCloseTo(0.3 * 2 * middle, 6);
  });

  test('sagging presses its face and pulls its back wall', () => {
    const section = kept(slitSection({ shape: 'square', ...TUBE, rule: 'EN10219' }, false));
    const stress = slitStress(section, 0, 1e5);
    expect(stress.top_MPa).toBeLessThan(0);
    expect(stress.back_MPa).toBeGreaterThan(0);
    expect(slitUse(stress, Math.abs(stress.top_MPa))).toBe(1);
  });

  test('half is allowed until the test piece passes; the weld is the limit of stronger steel', () => {
    expect(slitAllowed_MPa('EN', S235, false)).toBeCloseTo(slitAllowed_MPa('EN', S235, true) / 2, 12);
    expect(slitAllowed_MPa('AISC', S235, true)).toBeCloseTo(235 / 1.67, 9);
    const strong = { yield_MPa: 345, tensile_MPa: 425 };
    expect(slitAllowed_MPa('AISC', strong, true)).toBeLessThan(345 / 1.67);
    expect(slitAllowed_MPa('AISC', strong, true)).toBeCloseTo((0.6 * 482.6) / 1.88, 9);
  });

  test('passes go with the cube of the range, and a range of nothing is no division by it', () => {
    expect(passesAt(80) / passesAt(160)).toBeCloseTo(8, 12);
    expect(Number.isFinite(passesAt(0))).toBe(true);
  });
});

describe('a fillet all round', () => {
  const input = {
    standard: 'EN',
    grade: S235,
    depth_mm: 30,
    width_mm: 30,
    leg_mm: 2,
    thinnerWall_mm: 2,
    proven: true,
  } as const;

  test('counts half until the T test piece passes', () => {
    const forces = { axial_N: 3000, shear_N: 800, moment_Nmm: 60_000 };
    const [proven, first] = [kept(jointWeld(input)), kept(jointWeld({ ...input, proven: false }))];
    expect(first.use(forces)).toBeCloseTo(proven.use(forces) / JOINT_DERATE, 12);
  });

  test('a leg wider than the wall helps no further than the wall', () => {
    const wide = kept(jointWeld({ ...input, leg_mm: 8 }));
    expect(wide.governedBy).toBe('wall');
    expect(wide.perMm_N).toBe(kept(jointWeld({ ...input, leg_mm: 20 })).perMm_N);
    expect(kept(jointWeld({ ...input, standard: 'AISC', depth_mm: 60, leg_mm: 8 })).governedBy).toBe(
      'thin sheet',
    );
  });

  test('the way a force goes makes no difference', () => {
    const weld = kept(jointWeld(input));
    expect(weld.use({ axial_N: -1000, shear_N: -200, moment_Nmm: -5000 })).toBe(
      weld.use({ axial_N: 1000, shear_N: 200, moment_Nmm: 5000 }),
    );
  });

  test('sizes that are none are refused', () => {
    expect(refused(jointWeld({ ...input, leg_mm: 0 })).field).toBe('leg_mm');
    expect(refused(jointWeld({ ...input, depth_mm: Number.NaN })).field).toBe('depth_mm');
  });
});
