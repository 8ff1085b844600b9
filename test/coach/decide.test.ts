import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide, preview } from '../../src/coach/decide/decide.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { viewOf } from '../../src/coach/view.ts';
import { entriesOf, NOW } from '../stages/situation-for.ts';

const BEGUN: readonly Doing[] = [
  { kind: 'build-begun', name: 'Yard kicker', system: 'metric' },
  { kind: 'design-agreed' },
];

/** given(entries).when(intent) gives what decide says. */
const given = (...doings: readonly Doing[]) => {
  const view = viewOf(entriesOf([...BEGUN, ...doings]), NOW);
  return {
    view,
    when: (intent: Intent) => {
      const decided = decide(view, intent);
      return {
        thenEntry: (doing: object) => {
          expect(decided).toMatchObject({ ok: true, value: doing });
        },
        thenRefused: (code: string) => {
          expect(decided.ok ? 'not refused' : (decided.refusal.problem ?? decided.refusal.code)).toBe(code);
        },
      };
    },
  };
};

describe('a caution', () => {
  test('is read once, and only if some step shows it', () => {
    given().when({ do: 'caution', caution: 'nonsense' }).thenRefused('no-such-caution');
    const { view } = given();
    const [shown] = view.steps.flatMap(s => s.cautions ?? []);
    if (shown === undefined) throw new Error('no step has a caution');
    given().when({ do: 'caution', caution: shown }).thenEntry({ kind: 'caution-known', caution: shown });
    given({ kind: 'caution-known', caution: shown })
      .when({ do: 'caution', caution: shown })
      .thenRefused('already-done');
  });
});

describe('answers', () => {
  test('are read in the units of the build and kept in mm', () => {
    given()
      .when({ do: 'answer', field: 'width', value: '4 ft' })
      .thenEntry({ kind: 'design-set', field: 'width', value: 1219.2 });
    given()
      .when({ do: 'answer', field: 'width', value: 900 })
      .thenEntry({ kind: 'design-set', field: 'width', value: 900 });
  });

  test('replace the answer before them', () => {
    given({ kind: 'design-set', field: 'width', value: 1000 })
      .when({ do: 'answer', field: 'width', value: '900' })
      .thenEntry({ value: 900, replaces: ['entry-3'] });
  });

  test.each([
    ['width', 'six', 'not-read'],
    ['width', '1,200', 'not-read'],
    ['width', '10', 'impossible'],
    ['shape', { height: 600, run: 2000, exit: 30 }, 'two-sizes'],
    ['shape', { height: 3000, radius: 1000 }, 'not-read'],
    ['tube', { depth_mm: 40, width_mm: 40, wall_mm: 1.5 }, 'wall-thin'],
    ['cutter', { kind: 'chop saw', kerf_mm: 2.8 }, 'kerf-wide'],
    ['deck', { kind: 'sheet', layer_mm: 18, layers: 1 }, 'sheet-too-stiff'],
    ['deck', { kind: 'turf' }, 'no-such-choice'],
    ['use', 'wheelchair', 'use-wheelchair'],
    ['colour', 'red', 'no-such-field'],
  ])('%s %j is refused as %s', (field, value, code) => {
    given().when({ do: 'answer', field, value }).thenRefused(code);
  });

  test('which standard judges strength can be changed until the first steel is cut', () => {
    const toAisc: Intent = { do: 'answer', field: 'standard', value: 'AISC' };
    given().when(toAisc).thenEntry({ kind: 'design-set', field: 'standard', value: 'AISC' });
    const cut: Doing = {
      kind: 'piece-cut',
      need: 'base/A',
      section: 'tube 40x40x3',
      asked_mm: 1200,
      length_mm: 1200,
      typed: '1200',
      ends_rad: [0, 0],
    };
    given(cut).when(toAisc).thenRefused('standard-fixed');
  });

  test('a change is previewed on the real thing, and nothing is written', () => {
    const { view } = given();
    const seen = preview(view, { do: 'answer', field: 'shape', value: { height: 800, exit: '30°' } });
    expect(seen.ok && seen.value.ramp.design.arc.height_mm).toBe(800);
    expect(view.ramp.design.arc.height_mm).toBe(600);
    expect(view.build.all.length).toBe(2);
  });
});

describe('ticks', () => {
  test('remember the figures the step was done with', () => {
    const { view, when } = given({ kind: 'step-ticked', step: 'plan/dangers', basis: {} });
    const step = view.steps.find(s => s.key === 'plan/curve');
    const decided = when({ do: 'tick', step: 'plan/curve' });
    decided.thenEntry({ kind: 'step-ticked', step: 'plan/curve' });
    expect(step?.uses.length).toBeGreaterThan(0);
  });

  test('of a step that waits say what it waits for', () => {
    given().when({ do: 'tick', step: 'cut/saw-third@A:1' }).thenRefused('waits');
  });

  test('of a measuring step ask for the number', () => {
    given({ kind: 'step-skipped', step: 'plan/dangers', why: 'known' })
      .when({ do: 'tick', step: 'plan/helpers' })
      .thenRefused('needs-reading');
  });

  test('of a piece that stands alone say that it came out as long as asked', () => {
    const { view } = given();
    const step = view.steps.find(x => x.piece !== undefined);
    if (step?.piece === undefined) throw new Error('no step has a piece of its own');
    const open = { ...step, state: 'to do' as const, shut: [], cautions: [] };
    const decided = decide(
      { ...view, findings: [], steps: view.steps.map(x => (x === step ? open : x)) },
      { do: 'tick', step: step.key },
    );
    const { need, long_mm } = step.piece;
    expect(decided).toMatchObject({
      value: { kind: 'piece-cut', need, length_mm: long_mm, typed: 'as asked' },
    });
  });

  test('of nothing known are refused', () => {
    given().when({ do: 'tick', step: 'plan/nothing' }).thenRefused('no-such-step');
    given({ kind: 'step-ticked', step: 'plan/curve', basis: {} })
      .when({ do: 'tick', step: 'plan/curve' })
      .thenRefused('already-done');
  });

  test('turn stale when a figure they remember changed by more than matters, and say from what to what', () => {
    const { view } = given(
      { kind: 'step-ticked', step: 'plan/curve', basis: { radius: 4478.460969 } },
      { kind: 'design-set', field: 'shape', value: { height: 700, exit: Math.PI / 6 } },
    );
    const step = view.steps.find(s => s.key === 'plan/curve');
    expect(step?.state).toBe('stale');
    expect(step?.changes[0]).toMatchObject({ id: 'radius', was: 4478.460969 });
    expect(step?.changes[0]?.now).toBeCloseTo(5224.87, 1);
  });
});

describe('marks', () => {
  test('of a third freeze where its slits stand and how far each closes', () => {
    const skip = (step: string): Doing => ({ kind: 'step-skipped', step, why: 'test' });
    const { view, when } = given(
      ...['plan/dangers', 'cut/test-piece', 'weld/test-piece', 'cut/clean-rail@A', 'cut/mark-blank@A'].map(
        skip,
      ),
    );
    const waits = view.steps.find(s => s.key === 'cut/mark-third@A:1')?.waitsFor ?? [];
    expect(waits.every(k => !k.startsWith('tack/'))).toBe(true);
    if (waits.length === 0) {
      when({ do: 'tick', step: 'cut/mark-third@A:1' }).thenEntry({
        kind: 'slits-marked',
        rail: 'A',
        third: 1,
        first: 1,
      });
    } else when({ do: 'tick', step: 'cut/mark-third@A:1' }).thenRefused('waits');
  });
});

describe('surveys', () => {
  const opened: Doing = {
    kind: 'survey-opened',
    kind_of: 'curve',
    rail: 'A',
    phase: 'cold',
    edge: 'rail bottom face',
    to: 'finished line',
    stations_mm: [0, 400, 800, 1200],
    read_to_mm: 0.5,
  };
  test('take several offsets as one act, and no more than there are stations', () => {
    given(opened)
      .when({ do: 'offsets', values: ['0', '-1.5', '2 mm', '1/8 in'] })
      .thenEntry({
        kind: 'offsets-read',
        readings: [
          { station: 1, offset_mm: 0 },
          { station: 2, offset_mm: -1.5 },
          { station: 3, offset_mm: 2 },
          { station: 4, offset_mm: 3.175 },
        ],
      });
    given(opened)
      .when({ do: 'offsets', from: 3, values: [1, 2, 3] })
      .thenRefused('too-many-stations');
    given(opened)
      .when({ do: 'offsets', values: ['abc'] })
      .thenRefused('not-read');
    given()
      .when({ do: 'offsets', values: [1] })
      .thenRefused('no-open-survey');
  });
  test('close with three stations read at the least, and only once', () => {
    given(opened).when({ do: 'close-survey' }).thenRefused('too-few-stations');
    given(opened, {
      kind: 'offsets-read',
      survey: 'entry-3',
      readings: [1, 2, 3].map(station => ({ station, offset_mm: 0, typed: '0' })),
    })
      .when({ do: 'close-survey' })
      .thenEntry({ kind: 'survey-closed', survey: 'entry-3' });
  });
  test('one at a time', () => {
    given(opened).when({ do: 'open-survey', rail: 'B', phase: 'cold' }).thenRefused('survey-open');
    given().when({ do: 'open-survey', rail: 'Z', phase: 'cold' }).thenRefused('no-such-rail');
  });
});

describe('taking back', () => {
  test('strikes the newest entry, never the beginning, and can itself be taken back', () => {
    given({ kind: 'remarked', text: 'x' })
      .when({ do: 'strike' })
      .thenEntry({ kind: 'entry-struck', target: 'entry-3' });
    given().when({ do: 'strike', entry: 'entry-1' }).thenRefused('beginning-stays');
    given().when({ do: 'strike', entry: 'entry-99' }).thenRefused('no-such-entry');
    given({ kind: 'remarked', text: 'x' }, { kind: 'entry-struck', target: 'entry-3' })
      .when({ do: 'put-back', entry: 'entry-3' })
      .thenEntry({ kind: 'entry-struck', target: 'entry-4' });
    given({ kind: 'remarked', text: 'x' })
      .when({ do: 'put-back', entry: 'entry-3' })
      .thenRefused('not-struck');
  });
});

describe('notes', () => {
  test('lose their control characters, and empty ones are refused', () => {
    given()
      .when({ do: 'remark', text: 'wobbly \u001b[31mhorse\u0007' })
      .thenEntry({ kind: 'remarked', text: expect.not.stringContaining('\u001b') });
    given().when({ do: 'remark', text: '\u0007' }).thenRefused('empty-note');
  });
});
