import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { viewOf } from '../../src/coach/view.ts';
import { tick } from './doings.ts';
import { entriesOf, NOW } from './situation-for.ts';
import { begun } from './weld-doings.ts';

/** Steps in which a tube is closed by its weld: the entry's side plates, uprights, diagonals, crossmembers, foot plates. */
const CLOSES = [
  'brace/join-entry@A',
  'brace/fit-uprights@A',
  'brace/weld-joints@B',
  'brace/weld-uprights@A',
  'brace/weld-diagonals@A',
  'assemble/crossmembers',
  'assemble/weld-joints',
  'assemble/feet',
];

describe('a tube is vented before it is closed', () => {
  test('each step that closes one waits while a tube in hand has no hole', () => {
    const view = viewOf(entriesOf(begun()), NOW);
    const waits = (key: string) => view.steps.find(s => s.key === key)?.waitsFor ?? [];
    expect(CLOSES.filter(key => !waits(key).includes('prep/vents'))).toEqual([]);
  });

  test('and no more once all that is in hand is drilled', () => {
    const view = viewOf(entriesOf(begun()), NOW);
    const holes = view.steps.find(s => s.key === 'prep/vents')?.items ?? [];
    expect(holes.length).toBeGreaterThan(4);
    const all = viewOf(entriesOf(begun(...holes.map(i => tick(i.key)))), NOW);
    for (const key of CLOSES)
      expect(all.steps.find(s => s.key === key)?.waitsFor ?? []).not.toContain('prep/vents');
  });

  test('a diagonal that is cut later calls the drill out again before it is welded', () => {
    const view = viewOf(entriesOf(begun()), NOW);
    const holes = view.steps.find(s => s.key === 'prep/vents')?.items ?? [];
    const diagonals = view.ramp.members.filter(m => m.kind === 'diagonal' && m.rail === 'A');
    expect(diagonals.length).toBeGreaterThan(0);
    const cut = diagonals.map(
      (m): Doing => ({
        kind: 'piece-cut',
        need: m.need,
        section: '30x30x2',
        asked_mm: m.long_mm,
        length_mm: m.long_mm,
        typed: 'as asked',
        ends_rad: [0, 0],
      }),
    );
    const now = viewOf(entriesOf(begun(...holes.map(i => tick(i.key)), ...cut)), NOW);
    expect(now.steps.find(s => s.key === 'brace/weld-diagonals@A')?.waitsFor).toContain('prep/vents');
  });
});
