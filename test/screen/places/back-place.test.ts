import { describe, expect, test } from 'vitest';
import { WORDS } from '../../stages/word-gaps.ts';
import { deskFor, openDemo, type TestDesk } from '../desk-for.ts';

/** The metric demo was left on the evening of 24 September 2026. */
const openedOn = (day: string): TestDesk => {
  const t = deskFor(WORDS, { now: () => new Date(day) });
  openDemo(t, 'orchard-bank-kicker');
  return t;
};

describe('back at a build that was laid aside', () => {
  test('after a few days: bare steel is named, nothing has to be measured again', () => {
    const t = openedOn('2026-09-28T19:00:00Z');
    const text = t.text();
    expect(text).toContain('days away');
    expect(text).toMatch(/look {5}Bright metal at the slits of rail B/);
    expect(text).not.toContain('read three stations');
    expect(text).toMatch(/Enter go on/);
    t.desk.leaveBuild();
  });

  test('after weeks: measured things first, how long it takes, and what comes then; Enter goes to the first', () => {
    const t = openedOn('2026-10-20T19:00:00Z');
    const text = t.text();
    const order = [...text.matchAll(/(measure|look) +(Rail [AB]|Bright metal|Look the welding set)/g)].map(
      m => m[2],
    );
    expect(order).toEqual(['Rail A', 'Rail B', 'Bright metal', 'Look the welding set']);
    expect(text).toMatch(/4 left · about \d+ to \d+ min/);
    const then = text.split('then ──')[1] ?? '';
    expect(then).toMatch(/· (cut|prep|tack|weld) {2}\S/);
    expect(then).not.toContain('days');
    expect(text).toMatch(/Enter the first of them/);
    t.press('\r');
    expect(t.text()).toMatch(/MEASURE {2}Rail A after 2\d days: read three stations/);
    t.desk.leaveBuild();
  });

  test('every other page can be read meanwhile', () => {
    const t = openedOn('2026-10-20T19:00:00Z');
    t.press('\r', '4');
    expect(t.text()).toContain('4 TACK');
    t.press('f');
    expect(t.text()).toMatch(/findings: \d+ open/);
    t.press('\x1b', '0');
    expect(t.text()).toContain('Rail A after');
    t.desk.leaveBuild();
  });
});
