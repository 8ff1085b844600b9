import { describe, expect, test } from 'vitest';
import { asksOf } from '../../src/coach/tasks.ts';
import { viewOf } from '../../src/coach/view.ts';
import { keptByInput } from '../../src/stages/kept-by-input.ts';
import { buildSaid, saidBuild } from '../../src/stages/plan/mends-asked.ts';
import { askKey } from '../../src/stages/situation.ts';
import { read, set } from './doings.ts';
import { anchored, KIND_LANDING, ridden, rideFindingsOf, Told } from './ride-told.ts';
import { entriesOf, NOW, situationFor } from './situation-for.ts';

const DEG = Math.PI / 180;
const begun = { kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric' } as const;
const tooFast = [
  begun,
  set('shape', { radius: 2500, exit: 30 * DEG }),
  ridden(7.3),
  ...KIND_LANDING,
  ...anchored(4, 2),
];

describe('a failing page waits for nothing', () => {
  test('it says what is wrong at once, and that the changes are being worked out', () => {
    const found = rideFindingsOf(viewOf(entriesOf(tooFast), NOW)).find(f => f.key === 'ride-load-novice');
    expect(found?.pending).toBe(true);
    expect(found?.offers.some(o => o.plan.field !== undefined || o.plan.readings !== undefined)).toBe(false);
  });

  test('once they are, they stand there, and nothing is asked again', async () => {
    const told = new Told('metric', ...tooFast.slice(1));
    const view = await told.view();
    const found = rideFindingsOf(view).find(f => f.key === 'ride-load-novice');
    expect(found?.pending).toBeUndefined();
    expect(found?.offers.map(o => o.remedy)).toEqual(expect.arrayContaining(['ride-slower']));
    expect(asksOf(view)).toEqual([]);
  });

  test('a number of another stage asks for nothing anew, another speed does', () => {
    const keys = (...more: ReturnType<typeof read>[]) =>
      asksOf(viewOf(entriesOf([...tooFast, ...more]), NOW)).map(askKey);
    expect(keys(read('prep/weather', 'air', 12))).toEqual(keys());
    expect(keys(ridden(7.4))).not.toEqual(keys());
  });
});

describe('a build told to whoever tries the changes', () => {
  test.each([
    ['as drawn', []],
    ['with a tube that was measured', [read('cut/measure-tube@A', 'depth', 39.6)]],
  ])('%s: as plain data it makes the same ramp and the same ride', (_, more) => {
    const s = situationFor([...tooFast, ...more]);
    const said = structuredClone(JSON.parse(JSON.stringify(saidBuild(s))));
    const again = buildSaid(said);
    expect(again?.ramp.members).toEqual(s.ramp.members);
    expect(again?.ramp.design).toEqual(s.ramp.design);
    expect(again === null ? null : saidBuild(again).readings).toEqual(saidBuild(s).readings);
  });
});

describe('an answer kept by its input', () => {
  test('is reckoned once, and once more when another input, or too many of them, came between', () => {
    let times = 0;
    const square = keptByInput(({ v }: { v: number }) => {
      times++;
      return v * v;
    }, 2);
    expect([square({ v: 3 }), square({ v: 3 }), times]).toEqual([9, 9, 1]);
    expect([square({ v: 4 }), square({ v: 3 }), times]).toEqual([16, 9, 2]);
    square({ v: 5 });
    expect([square({ v: 3 }), times]).toEqual([9, 4]);
  });
});
