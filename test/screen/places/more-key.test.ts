import { describe, expect, test } from 'vitest';
import { WORDS } from '../../stages/word-gaps.ts';
import { deskFor, openDemo } from '../desk-for.ts';

describe('a page whose sentences go on under w', () => {
  test.each(['orchard-bank-kicker', 'mill-lane-launch'])('names the key in its bottom line: %s', name => {
    const t = deskFor(WORDS, { now: () => new Date('2026-09-24T19:00:00Z') });
    openDemo(t, name);
    let cutShort = 0;
    for (const stage of ['1', '2', '3', '4', '5', '6', '7', '8']) {
      t.press(stage);
      for (let i = 0; i < 60; i++) t.press('p');
      for (let i = 0; i < 60; i++) {
        const page = t.text(80, 24);
        if (page.includes('… w')) {
          cutShort++;
          expect(page.trimEnd().split('\n').at(-1), page).toContain('w more');
        }
        t.press('n');
      }
    }
    expect(cutShort).toBeGreaterThan(3);
    t.desk.leaveBuild();
  });
});
