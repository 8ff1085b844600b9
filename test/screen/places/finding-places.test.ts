import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { goNow } from '../../../src/screen/places/common.ts';
import type { Content } from '../../../src/words/schema.ts';
import { deskFor, type TestDesk } from '../desk-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;
const DOWN = '\x1b[B';

/** A desk with a metric build agreed as it comes, its plan open. */
const atPlan = (): TestDesk => {
  const t = deskFor(content);
  const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
  if (typeof keeper === 'string') throw new Error(keeper);
  t.desk.open(keeper);
  t.desk.act({ do: 'agree' });
  goNow(t.desk);
  return t;
};
const down = (t: TestDesk, to: RegExp): void => {
  for (let i = 0; i < 40 && !to.test(t.text()); i++) t.press(DOWN);
};

describe('the findings before all is worked out', () => {
  test('nothing is said to be in order that may yet stop the build', async () => {
    const t = atPlan();
    t.desk.act({ do: 'answer', field: 'spacing', value: '900 mm' });
    // The ways to slit a rail are on the page at once; deciding them leaves the list empty of what is open.
    t.desk.act({ do: 'choose', finding: 'slit-ways', remedy: 'leave-slits' });
    t.press('f');
    expect(t.text()).not.toContain('Nothing to fix.');
    await t.think();
    await t.think();
    expect(t.text()).toContain('Uprights too far apart');
    expect(t.text()).not.toContain('Nothing to fix.');
  });
});

describe('a change that is a number somebody says', () => {
  test('is said in its step, and the page shows it there', async () => {
    const t = atPlan();
    t.desk.act({ do: 'read', step: 'plan/ground', ask: 'anchors', value: '0' });
    t.desk.act({ do: 'read', step: 'plan/ground', ask: 'entry-anchors', value: '0' });
    await t.think();
    t.press('f', '\r');
    expect(t.text()).toContain('▸ 4 anchors, 2 at the entry');
    t.press('\r');
    expect(t.text()).toContain('Say how many anchors will hold it');
    expect(t.desk.view.build.readings.get('plan/ground#anchors')?.value).toBe(4);
    expect(t.desk.view.build.readings.get('plan/ground#entry-anchors')?.value).toBe(2);
    await t.think();
    expect(t.desk.view.findings.some(f => f.key.startsWith('ride-anchors'))).toBe(false);
  });
});

describe('an answer that stops the build', () => {
  test('brings its stop on the page at once, and its step is not done until that is settled', async () => {
    const t = atPlan();
    t.desk.root(t.desk.around.ways.stage(t.desk, { stage: 'plan', step: 'plan/ground', item: 0 }));
    t.press('\r', '2', '\r', '\r');
    t.press('1', '\r', '\r');
    await t.think();
    expect(t.text()).toContain('■ STOP');
    expect(t.text()).toContain('Only 2 of 4 anchors');
    const state = () => t.desk.view.steps.find(s => s.key === 'plan/ground')?.state;
    expect(state()).toBe('stop');
    t.press('\x1b');
    expect(t.text()).toMatch(/■ STOP {2}Say how many anchors/);
    // The number itself is asked again there, and a better one settles it.
    t.press('\r', '4', '\r', '2', '\r');
    expect(state()).toBe('done');
  });

  test('of several, the foot says which key shows all', async () => {
    const t = atPlan();
    const read = (step: string, ask: string, value: string) => t.desk.act({ do: 'read', step, ask, value });
    read('plan/ground', 'anchors', '0');
    read('plan/ground', 'entry-anchors', '0');
    read('plan/ride', 'entry-speed', '5.5 m/s');
    read('plan/landing', 'landing-table', '0');
    read('plan/landing', 'landing-gap', '3 m');
    read('plan/landing', 'landing-down', '0.9 m');
    read('plan/landing', 'landing-slope', '20 deg');
    read('plan/landing', 'landing-length', '6 m');
    await t.think();
    t.press('1');
    expect(t.text()).toMatch(/■ stop 1 of (\d+) .* f: all \1$/m);
  });
});

describe('a danger on its page', () => {
  test('it is taken on by a typed sentence that names it, and stands on every page afterwards', async () => {
    const t = atPlan();
    const read = (step: string, ask: string, value: string) => t.desk.act({ do: 'read', step, ask, value });
    t.desk.act({ do: 'answer', field: 'shape', value: { height: '900 mm', exit: '30 deg' } });
    read('plan/ride', 'entry-speed', '5.5 m/s');
    read('plan/landing', 'landing-down', '900 mm');
    read('plan/landing', 'landing-slope', '0 deg');
    await t.think();
    t.desk.push(t.desk.around.ways.finding('ride-flat-from-high'));
    down(t, /▸ I may break bones/);
    t.press('\r');
    expect(t.text()).toContain('with "break bones" in it');
    t.type('yes');
    expect(t.desk.view.build.chosen).toEqual([]);
    expect(t.text()).toContain('A sentence with "break bones" in it.');
    t.press('\r');
    t.type('I know I may break bones');
    expect(t.desk.view.build.chosen.at(-1)?.plan.typed).toBe('I know I may break bones');
    for (const key of ['1', '5', '8']) {
      t.press(key);
      expect(t.text(), key).toMatch(/Accepted: a fall of/);
    }
    t.press('j');
    expect(t.text(120)).toContain('I know I may break bones');
  });
});

describe('what is asked only when the design is looked at again', () => {
  test.each([
    [
      'order',
      'one after the other',
      (t: TestDesk) => t.desk.view.ramp.design.sequence,
      'one after the other',
    ],
    ['tolerance', "a careful shop's", (t: TestDesk) => t.desk.view.ramp.design.tolerance, 'careful shop'],
    ['bending', 'rolled by a fabricator', (t: TestDesk) => t.desk.view.ramp.design.route, 'rolled'],
  ])('%s is chosen from a list', (question, shown, kept, value) => {
    const t = atPlan();
    t.press('c');
    down(t, new RegExp(`▸ ${question} `));
    t.press('\r', DOWN, '\r');
    expect(kept(t)).toBe(value);
    expect(t.text()).toMatch(new RegExp(`▸ ${question} +${shown}`));
  });

  test('the page says that a change is weighed before it is kept, and that more is below', () => {
    const t = atPlan();
    t.press('c');
    expect(t.text()).toContain('Before a change is kept');
    expect(t.text()).toContain('more below');
  });

  test('posts are three sizes at once, and clamps a count', () => {
    const t = atPlan();
    t.press('c');
    down(t, /▸ posts /);
    t.press('\r', ...'30x30x2.5', '\r');
    expect(t.desk.view.ramp.design.post).toEqual({ depth_mm: 30, width_mm: 30, wall_mm: 2.5 });
    down(t, /▸ clamps /);
    t.press('\r', ...'10', '\r');
    expect(t.desk.view.ramp.design.clamps).toBe(10);
  });
});
