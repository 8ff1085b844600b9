import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { stageChange } from '../../../src/screen/pages/stage-change.ts';
import type { Content } from '../../../src/words/schema.ts';
import { deskFor, type TestDesk } from '../desk-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;

/** A desk with a metric build agreed as it comes, its dangers read, on a step. */
const at = (step: string): TestDesk => {
  const t = deskFor(content);
  const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
  if (typeof keeper === 'string') throw new Error(keeper);
  t.desk.open(keeper);
  t.desk.act({ do: 'agree' });
  for (const caution of ['plan-not-for', 'plan-guidance', 'plan-alone'])
    t.desk.act({ do: 'caution', caution });
  t.desk.act({ do: 'tick', step: 'plan/dangers' });
  const stage = step.split('/')[0] === 'plan' ? 'plan' : 'cut';
  t.desk.push(t.desk.around.ways.stage(t.desk, { stage, step, item: 0 }));
  return t;
};

describe('the list of what to buy', () => {
  const ticked = (t: TestDesk): string[] =>
    [...t.desk.view.build.ticks.keys()].filter(k => k.startsWith('plan/buy#')).map(k => k.split('#')[1]!);

  test('Enter ticks all that one shop sold, each line for itself, and z takes one back', () => {
    const t = at('plan/buy');
    t.press('\r');
    expect(ticked(t)).toEqual(['spare-rail', 'rail-tube', 'post-tube', 'plates', 'entry-plate']);
    expect(t.text()).toContain('5 lines from the steel yard ticked.');
    t.press('z');
    expect(ticked(t)).toEqual(['spare-rail', 'rail-tube', 'post-tube', 'plates']);
  });

  test('a few keys for the whole list; fire kit and body cover one by one', () => {
    const t = at('plan/buy');
    for (let shop = 0; shop < 4; shop++) t.press('\r');
    const step = t.desk.view.steps.find(s => s.key === 'plan/buy');
    const open = (step?.items ?? []).filter(i => !t.desk.view.build.ticks.has(i.key));
    expect(open.map(i => i.name)).toEqual(['fire kit', 'body cover']);
    t.press('\r');
    expect(t.text()).toContain('Space ticks it');
  });
});

describe('a step that goes on in another stage', () => {
  const t = at('plan/buy');
  const context = t.desk.context();
  const next = (key: string) => t.desk.view.steps.find(s => s.key === key)!;

  test('says which step waits for it', () => {
    const waited = t.desk.view.steps.find(
      s => s.stage === 'cut' && s.waitsFor.some(k => k.startsWith('weld/')),
    );
    const key = waited?.waitsFor.find(k => k.startsWith('weld/')) ?? '';
    expect(stageChange(context, 'cut', next(key))).toMatch(/^On to weld: ".+" in cut waits for this\.$/);
  });

  test('or how much of the stage is still to come, and nothing where it stays', () => {
    expect(stageChange(context, 'plan', next('cut/check-steel'))).toMatch(/^On to cut: /);
    expect(stageChange(context, 'cut', next('cut/check-steel'))).toBeNull();
  });
});
