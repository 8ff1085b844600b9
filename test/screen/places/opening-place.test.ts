import { expect, test } from 'vitest';
import { nameOffered } from '../../../src/screen/places/opening-place.ts';
import { WORDS } from '../../stages/word-gaps.ts';
import { deskFor } from '../desk-for.ts';

const NOVEMBER = new Date('2026-11-20T19:00:00Z');

test('a name is offered, and Enter takes it', () => {
  const t = deskFor(WORDS, { now: () => NOVEMBER, demo: null });
  t.press('\r');
  expect(t.desk.message).toContain('Enter takes "November ramp"');
  t.press('\r');
  expect(t.desk.view.build.name).toBe('November ramp');
});

test('the name offered is one that no other build has', () => {
  expect(nameOffered(NOVEMBER, [])).toBe('November ramp');
  expect(nameOffered(NOVEMBER, [{ name: 'november ramp' }, { name: 'November ramp 2' }])).toBe(
    'November ramp 3',
  );
});

test('a name that is typed is taken as it is typed', () => {
  const t = deskFor(WORDS, { now: () => NOVEMBER, demo: null });
  t.press('\r');
  t.type('Barn kicker');
  expect(t.desk.view.build.name).toBe('Barn kicker');
});

test('one build is one build, and its entries are counted as one or many', () => {
  const t = deskFor(WORDS, { now: () => NOVEMBER, demo: null });
  t.press('\r', '\r');
  t.desk.leaveBuild();
  t.desk.root(t.desk.around.ways.opening());
  expect(t.text()).toContain('1 build\n');
  expect(t.text()).not.toMatch(/\b1 (?:builds|entries)\b/);
});
