// Fillets as lines. AISC 360 J2, 0.30·FEXX [found] and J4, 0.30·Fu of the wall [memory]; AISI S100 for thin sheet [memory]; EN 1993-1-8
// 4.5.3 [memory]; the line method is Blodgett's [memory]. The worked tube is arithmetic from those [calc].
import { describe, expect, test } from 'vitest';
import { filletStrength_MPa, jointWeld } from '../../src/reckon/strength/joint-weld.ts';
import { kept } from '../quantity/expect-outcome.ts';

const INCH = 25.4;
const KSI = 6.894757293;
const KIP = 4448.2216153;
const KIP_IN = KIP * INCH;
const E70 = 70 * KSI;
const A500B = { yield_MPa: 46 * KSI, tensile_MPa: 58 * KSI };

const square2 = (wall: number, proven = true) =>
  kept(
    jointWeld({
      standard: 'AISC',
      grade: A500B,
      depth_mm: 2 * INCH,
      width_mm: 2 * INCH,
      leg_mm: INCH / 8,
      thinnerWall_mm: wall * INCH,
      electrode_MPa: E70,
      proven,
    }),
  );

describe('a 2 × 2 in tube, 1/8 in fillet all round, E70', () => {
  test('0.928 kip/in for each 1/16 in of leg: 14.85 kip straight, S 5.33 in², 9.90 kip·in bent', () => {
    const weld = square2(0.25);
    expect(weld.governedBy).toBe('weld');
    expect((weld.perMm_N * INCH) / KIP / 2).toBeCloseTo(0.928, 3);
    expect((weld.perMm_N * weld.length_mm) / KIP).toBeCloseTo(14.85, 2);
    expect(weld.modulus_mm2 / INCH ** 2).toBeCloseTo(5.33, 2);
    expect((weld.perMm_N * weld.modulus_mm2) / KIP_IN).toBeCloseTo(9.9, 2);
    expect(weld.use({ axial_N: 14.85 * KIP, shear_N: 0, moment_Nmm: 0 })).toBeCloseTo(1, 3);
    expect(weld.use({ axial_N: 0, shear_N: 0, moment_Nmm: 9.9 * KIP_IN })).toBeCloseTo(1, 3);
  });

  test.each([
    [0.065, 1.13],
    [0.083, 1.44],
    [0.12, 2.09],
    [0.1875, 3.26],
    [0.25, 4.35],
  ])('the wall of %d in bears %d kip/in in rupture', (wall, perInch) => {
    const weld = kept(
      jointWeld({
        standard: 'AISC',
        grade: A500B,
        depth_mm: 50,
        width_mm: 50,
        leg_mm: 20,
        thinnerWall_mm: wall * INCH,
        electrode_MPa: E70,
        proven: true,
      }),
    );
    // Under 3 mm the sheet rule may be stricter still: 0.75/3.05 for 0.30 from 25 walls on, (1 − 0.01 L/t)/2.55 before [memory].
    const walls = 50 / (wall * INCH);
    const sheet = walls < 25 ? (1 - 0.01 * walls) / 2.55 : 0.75 / 3.05;
    const share = wall * INCH < 3 ? Math.min(1, sheet / 0.3) : 1;
    expect((weld.perMm_N * INCH) / KIP / share).toBeCloseTo(perInch, 1);
    expect(weld.governedBy).toBe(wall * INCH < 3 ? 'thin sheet' : 'wall');
  });

  test('thin sheet along a long fillet: 0.065 in, 0.93 kip/in [memory]', () => {
    const weld = square2(0.065);
    expect(weld.governedBy).toBe('thin sheet');
    expect((weld.perMm_N * INCH) / KIP).toBeCloseTo(0.93, 2);
  });

  test('a first-timer’s counts half [practice]', () => {
    expect(square2(0.25, false).counted_N_mm).toBeCloseTo(square2(0.25).perMm_N / 2, 12);
  });
});

describe('EN 1993-1-8, throat strength fu/(√3 βw 1.25) [memory]', () => {
  test.each([
    ['S235', 235, 360, 208, 147],
    ['S275', 275, 410, 223, 158],
    ['S355', 355, 490, 251, 178],
  ])('%s: %d/%d MPa gives %d MPa, %d N/mm for each mm of leg', (_, yield_MPa, tensile_MPa, strength, leg) => {
    const got = filletStrength_MPa('EN', { yield_MPa, tensile_MPa });
    expect(got).toBeCloseTo(strength, 0);
    expect(got * Math.SQRT1_2).toBeCloseTo(leg, -0.5);
  });
});
