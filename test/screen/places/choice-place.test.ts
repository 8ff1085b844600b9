import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { goNow } from '../../../src/screen/places/common.ts';
import type { Content } from '../../../src/words/schema.ts';
import { deskFor } from '../desk-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;
const DOWN = '\x1b[B';

/** The helpers of a plan, asked as one of a few answers instead of a number. */
const asked = (): Content => {
  const own = structuredClone(content) as unknown as {
    steps: Record<string, Record<string, { choices?: Record<string, string[]> }>>;
  };
  const helpers = own.steps.plan?.helpers;
  if (helpers === undefined) throw new Error('plan asks for no helpers');
  helpers.choices = { helpers: ['nobody', 'one', 'two', 'three', 'four', 'five'] };
  return own as unknown as Content;
};

describe('a reading that is one of a few answers', () => {
  const atStage = (stage: 'plan' | 'prep', step: string) => {
    const t = deskFor(asked());
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.act({ do: 'agree' });
    goNow(t.desk);
    if (stage === 'prep') t.desk.act({ do: 'skip', step: 'plan/dangers', why: 'read' });
    t.desk.root(t.desk.around.ways.stage(t.desk, { stage, step, item: 0 }));
    return t;
  };
  const atHelpers = () => atStage('plan', 'plan/helpers');

  test('is chosen from a list, kept as its number and shown as its words', () => {
    const t = atHelpers();
    t.press('m');
    expect(t.text()).toMatch(/▸ \d (nobody|one|two|three|four|five)/);
    for (let i = 0; i < 8; i++) t.press('p');
    t.press(DOWN, DOWN, DOWN, '\r');
    expect(t.desk.view.build.readings.get('plan/helpers#helpers')?.value).toBe(3);
    t.desk.root(t.desk.around.ways.stage(t.desk, { stage: 'plan', step: 'plan/helpers', item: 0 }));
    expect(t.text()).toContain('three');
    t.press('j');
    expect(t.text()).toContain('three');
  });

  test('where a wrong answer is dangerous none is lit, and Enter alone keeps nothing', () => {
    const t = atStage('prep', 'prep/steel');
    t.press('\r');
    expect(t.text()).toContain('bare, grey-blue scale or oiled');
    expect(t.text()).not.toMatch(/^ ▸ \d (bare|spangled)/m);
    t.press('\r');
    expect(t.text()).toContain('choose one first');
    expect(t.desk.view.build.readings.has('prep/steel#look')).toBe(false);
    t.press(DOWN, DOWN, '\r');
    expect(t.desk.view.build.readings.get('prep/steel#look')?.value).toBe(2);
    // Read once more it is looked at once more: what was kept is not lit either.
    t.press('\x1b', 'm', '\r');
    expect(t.text()).toContain('choose one first');
  });

  test('takes its number: one key keeps it, and a number past the list nothing', () => {
    const t = atHelpers();
    t.press('m', '8');
    expect(t.text()).toContain('only 1 to 6 here');
    expect(t.desk.view.build.readings.has('plan/helpers#helpers')).toBe(false);
    t.press('4');
    expect(t.desk.view.build.readings.get('plan/helpers#helpers')?.value).toBe(3);
  });

  test('where a slip is dangerous a number only lights it, and Enter keeps it', () => {
    const t = atStage('prep', 'prep/steel');
    t.press('\r', '2');
    expect(t.desk.view.build.readings.has('prep/steel#look')).toBe(false);
    t.press('\r');
    expect(t.desk.view.build.readings.get('prep/steel#look')?.value).toBe(2);
  });

  test('a space keeps nothing, and Esc leaves it unread', () => {
    const t = atHelpers();
    t.press('m', ' ');
    expect(t.text()).toContain('Enter keeps the lit one');
    t.press('\x1b');
    expect(t.desk.view.build.readings.has('plan/helpers#helpers')).toBe(false);
  });
});
