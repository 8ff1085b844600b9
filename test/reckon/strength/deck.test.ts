import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boardCheck,
  deckWheel,
  railsNeeded,
  STILL_WHEEL_N,
} from '../../../src/reckon/strength/deck-board.ts';
import { plyGrade, sheetCheck } from '../../../src/reckon/strength/deck-sheet.ts';
import { entryPlate } from '../../../src/reckon/strength/entry-plate.ts';
import { EN_BOARDS, enBoard, NDS_BOARDS, ndsBoard } from '../../../src/reckon/strength/timber.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const board = {
  standard: 'EN',
  strength: enBoard(EN_BOARDS.C24, 38),
  thickness_mm: 38,
  board_mm: 140,
  span_mm: 500,
  wheel_N: 3000,
} as const;

describe('boards across the rails', () => {
  test('the largest span is the one that is just used up', () => {
    const { largest_mm } = kept(boardCheck(board));
    const there = kept(boardCheck({ ...board, span_mm: largest_mm }));
    expect(Math.max(there.utilisation, there.sag_utilisation)).toBeCloseTo(1, 9);
  });

  test('a soft board is limited by its sag', () => {
    const soft = { bending_MPa: 80, E_MPa: 4000 };
    const { largest_mm } = kept(boardCheck({ ...board, strength: soft }));
    expect(kept(boardCheck({ ...board, strength: soft, span_mm: largest_mm })).sag_utilisation).toBeCloseTo(
      1,
      9,
    );
  });

  test('a heavy ride governs over twice a standing rider, a light one does not', () => {
    expect(deckWheel('EN', 3400)).toBe(3400);
    expect(deckWheel('EN', 1800)).toBe(2 * STILL_WHEEL_N.EN);
  });

  test('rails are as many as leave no span too wide: 1.2 m of 40 mm rails', () => {
    expect(railsNeeded(1200, 40, 1160)).toBe(2);
    expect(railsNeeded(1200, 40, 1159)).toBe(3);
    expect(railsNeeded(1200, 40, 580)).toBe(3);
    expect(railsNeeded(1200, 40, 364)).toBe(5);
    expect(railsNeeded(300, 40, 900)).toBe(2);
  });

  test('for any width the rails are enough and not one too many', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 4000 }),
        fc.double({ min: 80, max: 1500, noNaN: true }),
        (width, largest) => {
          const rails = railsNeeded(width, 40, largest);
          expect((width - 40) / (rails - 1)).toBeLessThanOrEqual(largest * (1 + 1e-6));
          if (rails > 2) expect((width - 40) / (rails - 2)).toBeGreaterThan(largest);
        },
      ),
    );
  });

  test('incised and wide boards are weaker', () => {
    const pine = NDS_BOARDS['Southern Pine No.2'];
    expect(ndsBoard(pine, 139.7, true).bending_MPa).toBeCloseTo(
      0.8 * ndsBoard(pine, 139.7, false).bending_MPa,
      12,
    );
    expect(ndsBoard(pine, 285.75, false).bending_MPa).toBeLessThan(ndsBoard(pine, 139.7, false).bending_MPa);
    expect(enBoard(EN_BOARDS.C16, 38).bending_MPa).toBeLessThan(enBoard(EN_BOARDS.C24, 38).bending_MPa);
  });

  test('no board, no check', () => {
    expect(refused(boardCheck({ ...board, thickness_mm: 0 })).field).toBe('thickness_mm');
    expect(refused(boardCheck({ ...board, span_mm: Number.NaN })).field).toBe('span_mm');
  });
});

describe('a sheet bent over crossmembers', () => {
  const sheet = {
    grade: plyGrade('birch', 9),
    layer_mm: 9,
    layers: 2,
    grainAlong: true,
    spacing_mm: 250,
    wheel_N: 2648,
  } as const;

  test('two layers of 9 mm birch bear a rider at 250 mm, in the band of the trade, and not at 300', () => {
    const at = kept(sheetCheck(sheet));
    expect(at.utilisation).toBeLessThan(1);
    expect(at.largest_mm).toBeGreaterThan(250);
    expect(at.largest_mm).toBeLessThan(300);
    expect(kept(sheetCheck({ ...sheet, spacing_mm: at.largest_mm })).utilisation).toBeCloseTo(1, 9);
  });

  test('one layer, the grain across, or softwood want them closer', () => {
    const { largest_mm } = kept(sheetCheck(sheet));
    expect(kept(sheetCheck({ ...sheet, layers: 1 })).largest_mm).toBeLessThan(largest_mm);
    expect(kept(sheetCheck({ ...sheet, grainAlong: false })).largest_mm).toBeLessThan(largest_mm);
    const softwood = { ...sheet, grade: plyGrade('softwood', 9) };
    expect(kept(sheetCheck(softwood)).largest_mm).toBeLessThan(largest_mm);
  });

  test('never over 300 mm, however thick', () => {
    expect(kept(sheetCheck({ ...sheet, layers: 6 })).largest_mm).toBe(300);
    expect(refused(sheetCheck({ ...sheet, layers: 0 })).field).toBe('layers');
  });
});

describe('an entry plate', () => {
  test('of 3 mm wants continuous backing, on which it does', () => {
    expect(kept(entryPlate(3, 100, 2650, 235)).holds).toBe(false);
    expect(kept(entryPlate(3, 0, 2650, 235))).toMatchObject({ holds: true, stress_MPa: 0 });
  });

  test('of 3/16 in counts as 5 mm, of 1/4 in as 6', () => {
    expect(kept(entryPlate(4.76, 250, 2650, 235)).holds).toBe(true);
    expect(kept(entryPlate(6.35, 400, 2650, 235)).holds).toBe(true);
    expect(kept(entryPlate(6.35, 420, 2650, 235)).holds).toBe(false);
  });

  test('under a heavier wheel the bearers come closer', () => {
    const { largest_mm } = kept(entryPlate(5, 250, 4000, 235));
    expect(largest_mm).toBeLessThan(250);
    expect(kept(entryPlate(5, largest_mm, 4000, 235)).utilisation).toBeCloseTo(1, 9);
    expect(refused(entryPlate(0, 250, 4000, 235)).field).toBe('thickness_mm');
    expect(refused(entryPlate(5, -1, 4000, 235)).field).toBe('spacing_mm');
  });
});
