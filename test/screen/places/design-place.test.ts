import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { beginPlace } from '../../../src/screen/places/begin-place.ts';
import { goNow } from '../../../src/screen/places/common.ts';
import { standingStill } from '../../../src/stages/standing-still.ts';
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

describe('the design looked at again', () => {
  test('c: the ground it stands on is said at the bench, and what the anchors hold follows it', () => {
    const t = atPlan();
    const slide = () => standingStill(t.desk.view.situation)?.standing.held.slide_N ?? 0;
    const before = slide();
    t.press('c');
    down(t, /▸ ground/);
    expect(t.text()).toMatch(/▸ ground +dry lawn/);
    t.press('\r');
    expect(t.text()).toContain('asked only here');
    down(t, /▸ lawn that may be wet/);
    t.press('\r');
    expect(t.text()).toMatch(/▸ ground +wet lawn/);
    expect(slide()).toBeGreaterThan(before);
  });

  test('at the end of the beginning c looks the answers over, and which standard judges strength is chosen', () => {
    const t = deskFor(content);
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.root(beginPlace(t.desk));
    t.press('\r', '\r');
    expect(t.text()).not.toContain('change the design');
    for (let i = 0; i < 40 && !/all answered/.test(t.text()); i++) t.press('\t', '\r');
    expect(t.text()).toContain('judged by the European rules for steel, EN 1993-1-1');
    t.press('c');
    down(t, /▸ standard/);
    t.press('\r');
    down(t, /▸ AISC/);
    t.press('\r');
    expect(t.text()).toMatch(/▸ standard +the American rules for steel, AISC 360/);
    t.press('\x1b');
    expect(t.text()).toContain('judged by the American rules for steel, AISC 360');
    expect(t.desk.view.build.answers.standard).toBe('AISC');
    expect(t.desk.view.build.system).toBe('metric');
  });

  test('c: one curved rail more, and a diagonal in a lower bay', () => {
    const t = atPlan();
    const count = (kind: string) => t.desk.view.ramp.members.filter(m => m.kind === kind).length;
    const [rails, diagonals] = [count('curved rail'), count('diagonal')];
    t.press('c');
    down(t, /▸ rails/);
    t.press('\r', '3', '\r');
    expect(t.text()).toMatch(/▸ rails +3/);
    expect(count('curved rail')).toBe(rails + 1);
    t.press('k');
    for (let i = 0; i < 20 && !/▸ diagonals/.test(t.text()); i++) t.press('\x1b[A');
    t.press('\r', ...'150', '\r');
    expect(count('diagonal') / 3).toBeGreaterThan(diagonals / 2);
  });

  test('nothing of it is asked at the beginning', () => {
    const t = deskFor(content);
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.push(beginPlace(t.desk));
    expect(t.text()).toContain('question 1 of 10');
    expect(t.text()).not.toContain('ground,');
  });
});
