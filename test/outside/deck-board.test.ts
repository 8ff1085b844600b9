// Boards and plates under a wheel. Strengths and factors: AWC/SPIB addendum to the NDS 2012 table 4B and NDS copies [found, wet and
// duration factors memory]; EN 338 and EN 1995-1-1 tables 3.1 and 2.3 [found], clause 3.2 [memory]. The worked boards are arithmetic
// from those [calc]; the wheel, twice a standing rider, is practice.
import { describe, expect, test } from 'vitest';
import { boardCheck, deckWheel } from '../../src/reckon/strength/deck-board.ts';
import { entryPlate } from '../../src/reckon/strength/entry-plate.ts';
import { EN_BOARDS, enBoard, NDS_BOARDS, ndsBoard } from '../../src/reckon/strength/timber.ts';
import { kept } from '../quantity/expect-outcome.ts';

const INCH = 25.4;
const PSI = 0.006894757293;

describe('Southern Pine No.2, treated, laid flat: 300 lb, twice', () => {
  const pine = (thickness: number, span: number) =>
    kept(
      boardCheck({
        standard: 'AISC',
        strength: ndsBoard(NDS_BOARDS['Southern Pine No.2'], 5.5 * INCH, false),
        thickness_mm: thickness * INCH,
        board_mm: 5.5 * INCH,
        span_mm: span * INCH,
        wheel_N: deckWheel('AISC', 0),
      }),
    );

  test('Fb′ = 1000 · 1.6 · 1.15 · 1.0 = 1840 psi [found factors]', () => {
    expect(ndsBoard(NDS_BOARDS['Southern Pine No.2'], 5.5 * INCH, false).bending_MPa / PSI).toBeCloseTo(
      1840,
      6,
    );
  });

  test('2×6 over 24 in: 1745 psi, 0.95; sags L/540 under a rider standing still [calc]', () => {
    const board = pine(1.5, 24);
    expect(board.stress_MPa / PSI).toBeCloseTo(1745, 0);
    expect(board.utilisation).toBeCloseTo(0.95, 2);
    expect((24 * INCH) / board.sag_mm / 540).toBeCloseTo(1, 1);
    expect(board.sag_mm / INCH).toBeCloseTo(0.044, 3);
  });

  test.each([
    [11, 1800, true],
    [12, 1964, false],
    [16, 2618, false],
  ])('5/4×6 over %d in: %d psi, holds: %s [calc]', (span, stress, holds) => {
    const board = pine(1, span);
    expect(board.stress_MPa / PSI / stress).toBeCloseTo(1, 3);
    expect(board.utilisation <= 1).toBe(holds);
  });

  test('5/4 boards want 11 to 12 in, not the 16 in of a walking deck [calc]', () => {
    const { largest_mm } = pine(1, 16);
    expect(largest_mm / INCH).toBeGreaterThan(11);
    expect(largest_mm / INCH).toBeLessThan(12);
  });
});

describe('C24 outdoors, laid flat: 1.5 kN × 2 × 1.5', () => {
  const c24 = (thickness_mm: number, board_mm: number, span_mm: number) =>
    kept(
      boardCheck({
        standard: 'EN',
        strength: enBoard(EN_BOARDS.C24, thickness_mm),
        thickness_mm,
        board_mm,
        span_mm,
        wheel_N: deckWheel('EN', 0),
      }),
    );

  test('28 mm: f = 0.90 · 1.3 · 24 / 1.3 = 21.6 MPa [found factors]', () => {
    expect(enBoard(EN_BOARDS.C24, 28).bending_MPa).toBeCloseTo(21.6, 9);
  });

  test.each([
    [300, 17.8, true],
    [350, 20.8, true],
    [400, 23.8, false],
  ])('28×145 over %d mm: %d MPa, holds: %s [calc]', (span, stress, holds) => {
    const board = c24(28, 145, span);
    expect(board.stress_MPa).toBeCloseTo(stress, 1);
    expect(board.utilisation <= 1).toBe(holds);
  });

  test.each([
    [28, 145, 364],
    [38, 140, 647],
    [45, 145, 920],
  ])('%d×%d spans %d mm at most [calc]', (thickness, width, span) => {
    // Strength is used up before the sag of L/240.
    expect(Math.abs(c24(thickness, width, 300).largest_mm - span)).toBeLessThan(1);
  });
});

describe('an entry plate under 2.65 kN on 200 mm of its width, 235 MPa [practice, calc]', () => {
  test.each([
    [3, 250, false],
    [5, 250, true],
    [5, 300, false],
    [6, 400, true],
    [6, 450, false],
  ])('%d mm on bearers %d mm apart holds: %s', (thickness, spacing, holds) => {
    expect(kept(entryPlate(thickness, spacing, 2650, 235)).holds).toBe(holds);
  });

  test('5 mm at 250 mm: PL/4 on 833 mm³ is 199 MPa', () => {
    expect(kept(entryPlate(5, 250, 2650, 235)).stress_MPa).toBeCloseTo(198.75, 6);
  });
});
