import { expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import { openFindings, viewOf } from '../../src/coach/view.ts';
import { entriesOf, NOW } from '../stages/situation-for.ts';

const begun: Doing = { kind: 'build-begun', name: 'Yard kicker', system: 'metric' };
const wide = (value: number): Doing => ({ kind: 'design-set', field: 'width', value });

test('two answers that did not know of each other are said, and one of them can be kept', () => {
  const doings = [begun, wide(1000), wide(900)];
  const view = viewOf(entriesOf(doings), NOW);
  const finding = view.findings.find(f => f.words === 'read-twice');
  expect(finding?.offers).toHaveLength(3);
  expect(view.build.answers.width).toBe(900);
  const chosen = decide(view, { do: 'choose', finding: finding?.key ?? '', remedy: 'keep-earlier' });
  if (!chosen.ok) throw new Error(chosen.refusal.code);
  const after = viewOf(entriesOf([...doings, chosen.value]), NOW);
  expect(after.build.answers.width).toBe(1000);
  expect(after.build.conflicts).toEqual([]);
});

test('entries whose subject was taken back are counted, not lost', () => {
  const view = viewOf(
    entriesOf([
      begun,
      {
        kind: 'survey-opened',
        kind_of: 'curve',
        rail: 'A',
        phase: 'cold',
        edge: 'rail bottom face',
        to: 'finished line',
        stations_mm: [0, 1, 2],
        read_to_mm: 0.5,
      },
      { kind: 'offsets-read', survey: 'entry-2', readings: [{ station: 1, offset_mm: 1, typed: '1' }] },
      { kind: 'entry-struck', target: 'entry-2' },
    ]),
    NOW,
  );
  expect(openFindings(view).find(f => f.words === 'idle-entries')?.fills).toEqual({ count: 1 });
});
