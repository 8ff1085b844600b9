import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { viewOf } from '../../src/coach/view.ts';
import { prepSheet } from '../../src/stages/prep/sheet.ts';
import type { Figure } from '../../src/stages/sheet.ts';
import { sawItemKey } from '../../src/stages/slit-strip.ts';
import { read, tick } from './doings.ts';
import { entriesOf, NOW, situationFor } from './situation-for.ts';
import { begun } from './weld-doings.ts';

const gas: Doing[] = [read('weld/machine', 'kind', 1), read('weld/machine', 'wire', 0.8)];
const sheet = (...more: Doing[]) => prepSheet(situationFor(begun(...more)));
const band = (figures: readonly Figure[], id: string) => {
  const value = figures.find(f => f.id === id)?.value;
  if (value?.is !== 'band') throw new Error(`${id} is no band`);
  return value;
};
const finding = (words: string, ...more: Doing[]) =>
  sheet(...gas, ...more).findings.find(f => f.words === words);

describe('what each part uses up', () => {
  test('nothing is asked before the welder is told; then spool and bottle, or rods', () => {
    expect(sheet().steps.some(s => s.key.startsWith('prep/supplies'))).toBe(false);
    const asks = (...more: Doing[]) =>
      sheet(...more)
        .steps.find(s => s.key === 'prep/supplies@rails')
        ?.asks?.map(a => a.ask);
    expect(asks(...gas)).toEqual(['spool', 'bottle', 'needle']);
    expect(asks(read('weld/machine', 'kind', 2))).toEqual(['spool', 'co2']);
    expect(asks(read('weld/machine', 'kind', 3))).toEqual(['spool']);
    expect(asks(read('weld/machine', 'kind', 4))).toEqual(['rods']);
  });

  test('slits of both rails: 108 mm each, arc at 250 mm a minute, gas half as long again', () => {
    const s = situationFor(begun(...gas));
    const slits = [...s.ramp.plans.values()].reduce((n, p) => n + p.slits.length, 0);
    const arc_min = (slits * 108) / 250;
    const need = band(prepSheet(s).figures, 'gas-need@rails');
    // At 12 l/min.
    expect(need.likely).toBeCloseTo(arc_min * 1.5 * 12, 3);
    // 50 g of weld metal a metre, nine tenths of the wire kept, a beginner's third on top.
    const wire = band(prepSheet(s).figures, 'wire-need@rails');
    expect(wire.likely).toBeCloseTo(((slits * 0.108 * 0.05) / 0.9) * 1.3, 6);
    expect(wire.low).toBeLessThan(wire.likely);
    expect(wire.high).toBeGreaterThan(wire.likely);
  });

  test('all parts together are the whole frame', () => {
    const s = situationFor(begun(...gas));
    const joints = s.ramp.members.reduce((n, m) => n + m.joints, 0);
    const welds = prepSheet(s)
      .steps.filter(x => x.key.startsWith('prep/supplies'))
      .reduce((n, x) => n + Number(x.fills?.welds), 0);
    const slits = [...s.ramp.plans.values()].reduce((n, p) => n + p.slits.length, 0);
    expect(welds).toBe(joints + slits);
  });
});

describe('enough for the next part?', () => {
  const bottle = (needle: number): Doing[] => [
    read('prep/supplies@rails', 'spool', 5),
    read('prep/supplies@rails', 'bottle', 2000),
    read('prep/supplies@rails', 'needle', needle),
  ];

  test('a bottle of 2 m³ at a twentieth is short, at a full needle it is not', () => {
    const short = finding('gas-short', ...bottle(5));
    expect(short?.severity).toBe('fix');
    expect(short?.offers.map(o => o.remedy).sort()).toEqual([
      'gas-fetch',
      'gas-part',
      'gas-save',
      'leave-gas',
    ]);
    expect(short?.blocks).toContain('weld/sides-first@A');
    // A twentieth of 2000 l.
    const left = short?.fills?.left;
    expect(typeof left === 'object' ? left.v : 0).toBeCloseTo(100, 6);
    expect(finding('gas-short', ...bottle(100))).toBeUndefined();
  });

  test('short gas stops the first weld until it is decided', () => {
    const view = viewOf(entriesOf(begun(...gas, ...bottle(5))), NOW);
    expect(view.findings.some(f => f.words === 'gas-short' && f.blocks?.includes('weld/tops-odd@A'))).toBe(
      true,
    );
  });

  test('a little short of the slow evening is only watched', () => {
    const s = situationFor(begun(...gas));
    const need = band(prepSheet(s).figures, 'wire-need@rails');
    const spool = (need.likely + need.high) / 2;
    const tight = finding('wire-tight', read('prep/supplies@rails', 'spool', spool));
    expect(tight?.severity).toBe('watch');
    expect(tight?.blocks).toBeUndefined();
    expect(Number(tight?.fills?.reach)).toBeLessThan(Number(tight?.fills?.all));
  });

  test('what the rails used teaches the side frames: twice the wire of the rule, twice the wire to come', () => {
    const s = situationFor(begun(...gas));
    const rails = band(prepSheet(s).figures, 'wire-need@rails');
    const sides = band(prepSheet(s).figures, 'wire-need@sides');
    const log = (used: number): Doing[] => [
      read('prep/supplies@rails', 'spool', 5),
      read('prep/supplies@sides', 'spool', 5 - used),
    ];
    const learned = band(sheet(...gas, ...log(2 * rails.likely)).figures, 'wire-need@sides');
    expect(learned.likely).toBeCloseTo(2 * sides.likely, 6);
    expect(learned.high - learned.low).toBeLessThan(sides.high - sides.low + 2 * sides.likely);
    // A new spool weighs more than the old one did: nothing is learned from it.
    const changed = band(sheet(...gas, ...log(-3)).figures, 'wire-need@sides');
    expect(changed.likely).toBeCloseTo(sides.likely, 6);
  });

  test('CO2 is weighed, and told as the scale has it; a kilogram is 540 l', () => {
    const co2 = sheet(
      read('weld/machine', 'kind', 2),
      read('weld/machine', 'wire', 0.8),
      read('prep/supplies@rails', 'co2', 0.1),
    ).findings.find(f => f.words === 'gas-short');
    expect(co2?.fills?.left).toMatchObject({ v: 0.1, as: 'mass' });
    const figures = prepSheet(
      situationFor(begun(read('weld/machine', 'kind', 2), read('weld/machine', 'wire', 0.8))),
    ).figures;
    const mixed = prepSheet(situationFor(begun(...gas))).figures;
    expect(band(mixed, 'gas-need@rails').likely / band(figures, 'gas-need@rails').likely).toBeCloseTo(540, 6);
  });
});

describe('thin discs', () => {
  test('one disc for all slits is too few, and the wear so far is learned', () => {
    const s = situationFor(begun());
    const first = s.ramp.plans.get('A')?.slits.filter(x => x.third === 1) ?? [];
    const saws = first.map(x => tick(sawItemKey('A', 1, x.number)));
    const short = (thin: number, left?: number) =>
      sheet(
        read('prep/discs', 'thin', thin),
        ...saws,
        ...(left === undefined ? [] : [read('prep/discs-left@A', 'thin', left)]),
      );
    expect(
      sheet(read('prep/discs', 'thin', 1)).findings.find(f => f.words === 'discs-short')?.offers.length,
    ).toBe(3);
    const low = (x: ReturnType<typeof sheet>) =>
      Number(x.steps.find(y => y.key === 'prep/discs-left@A')?.fills?.likely);
    // Two discs for a third that likely wears one.
    expect(low(short(10, 8))).toBeGreaterThan(low(short(10, 9)));
    expect(short(10, 1).findings.some(f => f.words === 'discs-short')).toBe(true);
    expect(short(12, 11).findings.some(f => f.words === 'discs-short')).toBe(false);
  });
});
