import { expect, test } from 'vitest';
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
