import { describe, expect, test } from 'vitest';
import { goNow } from '../../../src/screen/places/common.ts';
import { WORDS } from '../../stages/word-gaps.ts';
import { deskFor } from '../desk-for.ts';

const HOUR = 3_600_000;
const DOWN = '\x1b[B';

describe('an evening that begins with an arc', () => {
  test('asks the weather anew before it: one Enter, five answers, and on to the arc', () => {
    let now = Date.parse('2026-11-20T17:00:00Z');
    const t = deskFor(WORDS, { now: () => new Date(now) });
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.act({ do: 'agree' });
    // All before the next arc is behind: only arcs are left, and the weather of this evening is read.
    for (const [ask, value] of Object.entries({ wet: '0', wind: '4', air: '12', steel: '12', damp: '60' }))
      t.desk.act({ do: 'read', step: 'prep/weather', ask, value });
    const rest = () =>
      t.desk.view.steps.find(s => s.key !== 'weld/coupons' && s.turn < 2000 && s.state === 'to do');
    for (let s = rest(); s !== undefined; s = rest())
      t.desk.act({ do: 'skip', step: s.key, why: 'seen to by a friend' });
    goNow(t.desk);
    expect(t.desk.view.next?.key).toBe('weld/coupons');

    now += 24 * HOUR;
    keeper.know(keeper.view().situation.answers);
    goNow(t.desk);
    expect(t.text()).toContain('The weather was read 24 hours ago');
    const entries = t.desk.view.build.all.length;
    t.press('\r');
    // The rag is looked at, not passed with Enter.
    t.press('\r');
    expect(t.desk.view.build.all.length).toBe(entries);
    t.press(DOWN, '\r', '3', '\r', '1', '2', '\r', '1', '2', '\r', '6', '5', '\r');
    expect(t.desk.view.build.all.length).toBe(entries + 5);
    expect(t.desk.view.steps.some(s => s.key === 'prep/dry-steel')).toBe(false);
    expect(t.text()).toContain('Break three test welds');
  });

  test('and dew on the steel of that evening bars the arc, whatever it was the evening before', () => {
    let now = Date.parse('2026-11-20T17:00:00Z');
    const t = deskFor(WORDS, { now: () => new Date(now) });
    const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
    if (typeof keeper === 'string') throw new Error(keeper);
    t.desk.open(keeper);
    t.desk.act({ do: 'agree' });
    const read = (told: Readonly<Record<string, string>>): void => {
      for (const [ask, value] of Object.entries(told))
        t.desk.act({ do: 'read', step: 'prep/weather', ask, value });
    };
    read({ wet: '0', wind: '4', air: '12', steel: '12', damp: '60' });
    expect(t.desk.view.steps.some(s => s.key === 'prep/dry-steel')).toBe(false);
    now += 20 * HOUR;
    read({ wet: '1', wind: '4', air: '12', steel: '9', damp: '95' });
    const gates = t.desk.view.steps.find(s => s.key === 'prep/dry-steel')?.gates?.map(g => g.words);
    expect(gates).toEqual(expect.arrayContaining(['steel-wet', 'steel-damp']));
    expect(gates).not.toContain('weather-old');
  });
});
