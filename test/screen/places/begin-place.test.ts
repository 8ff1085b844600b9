import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { beginPlace } from '../../../src/screen/places/begin-place.ts';
import type { Content } from '../../../src/words/schema.ts';
import { deskFor } from '../desk-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;

test('left between the two sizes of the curve, the second is asked when the build is opened again', () => {
  const t = deskFor(content);
  const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
  if (typeof keeper === 'string') throw new Error(keeper);
  t.desk.open(keeper);
  t.desk.root(beginPlace(t.desk));
  t.press('\r', ...'450', '\r');
  expect(t.text()).toContain('Which second size do you know?');

  // Opened again: nothing but what is on disk is known.
  t.desk.root(beginPlace(t.desk));
  expect(t.text()).toContain('Which second size do you know?');
  t.press('\r', ...'25', '\r');
  expect(t.desk.view.build.answers.shape?.height).toBeCloseTo(450, 6);
  expect(t.desk.view.build.answers.shape?.exit).toBeCloseTo((25 * Math.PI) / 180, 6);
  t.desk.root(beginPlace(t.desk));
  expect(t.text()).toContain('question 4 of 10');
});

describe('the three sizes of the tube', () => {
  const atTheTube = () => {
    const t = deskFor(content);
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.root(beginPlace(t.desk));
    // Purpose, lip, which second size, its value, width: as they stand.
    t.press('\r', '\r', '\r', '\r', '\r');
    expect(t.text()).toContain('question 5 of 10');
    return t;
  };
  const tube = (t: ReturnType<typeof atTheTube>) => t.desk.view.build.answers.tube;

  test('are taken together where they are typed together', () => {
    const t = atTheTube();
    t.press(...'50x30x2.9', '\r');
    expect(tube(t)).toEqual({ depth_mm: 50, width_mm: 30, wall_mm: 2.9 });
    expect(t.text()).toContain('question 6 of 10');
  });

  test('are the usual ones where Enter is pressed on nothing', () => {
    const t = atTheTube();
    t.press('\r');
    expect(tube(t)).toEqual({ depth_mm: 40, width_mm: 40, wall_mm: 3 });
    expect(t.text()).toContain('question 6 of 10');
  });

  test('are asked one by one where one is typed, a square tube being the usual', () => {
    const t = atTheTube();
    t.press(...'50', '\r');
    expect(t.text()).toContain('width of the tube');
    t.press('\r', ...'3', '\r');
    expect(tube(t)).toEqual({ depth_mm: 50, width_mm: 50, wall_mm: 3 });
  });

  test('that make no tube are refused whole, and asked again from the first', () => {
    const t = atTheTube();
    t.press(...'5x5x4', '\r');
    expect(tube(t)).toBeUndefined();
    expect(t.text()).toContain('question 5 of 10');
  });
});

describe('a number that is asked at the beginning', () => {
  const atTheLip = () => {
    const t = deskFor(content);
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.root(beginPlace(t.desk));
    t.press('\r');
    expect(t.text()).toContain('How high is the lip?');
    return t;
  };

  test('goes one question back with Esc while nothing is typed, and its bottom row says so', () => {
    const t = atTheLip();
    expect(t.text()).toContain('Esc one back');
    t.press('\u001B');
    expect(t.text()).toContain('What takes off from it');
  });

  test('is closed by Esc over half a number, and Enter opens it with what was typed', () => {
    const t = atTheLip();
    t.press(...'45');
    expect(t.text()).toContain('Esc close');
    t.press('\u001B');
    expect(t.text()).toContain('closed, not kept. Enter opens it again');
    t.press('\r', ...'0', '\r');
    expect(t.desk.view.build.answers.shape?.height).toBe(450);
  });

  test('says once that half a number is not kept, before q leaves it', () => {
    const t = atTheLip();
    t.press(...'45', 'q');
    expect(t.quitWith()).toBeNull();
    expect(t.text()).not.toBe('');
    expect(t.desk.message).toContain('what is typed is not kept');
    t.press('q');
    expect(t.quitWith()).toBe(0);
  });
});

test('before it is agreed to, the hours and what it weighs are said, as the plan then says them', () => {
  const t = deskFor(content);
  t.press('\r', '\r');
  for (let i = 0; i < 30 && !t.text().includes('Enter agrees'); i++) t.press('\r');
  const page = t.text();
  const hours = /About (\d+ to \d+ h) at the bench in all/.exec(page)?.[1] ?? 'no hours';
  const { steel_kg, all_kg } = t.desk.view.ramp.masses;
  expect(page).toContain(`Bare frame ${steel_kg.toFixed(1)} kg;`);
  expect(page).toContain(`with entry plate and deck, ${all_kg.toFixed(1)} kg`);
  t.press('\r');
  expect(t.text()).toContain(`${hours} in all`);
});
