import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { walk } from '../../src/coach/walk.ts';
import { railTurn, TURN } from '../../src/stages/order.ts';
import { railFindings } from '../../src/stages/rail-findings.ts';
import { remedySteps, STEPS } from '../../src/stages/remedies/steps.ts';
import type { Stage, StepDraft } from '../../src/stages/sheet.ts';
import { answered, BEGUN, bowed, named, offerOf, type Surveyed, surveyed } from './rail-findings-measured.ts';
import { situationFor } from './situation-for.ts';
import { longWords, WORDS, wordGaps } from './word-gaps.ts';

type Told = readonly (Doing & { id?: string })[];
const ID = '0f0e0d0c-0b0a-4908-8706-050403020100';

type Frozen = Readonly<{ plan: Readonly<{ slits: readonly { slit: number; gap_mm: number }[] }> }>;

const withSurvey = (of: Surveyed, before: Told = BEGUN): Told => [...before, ...surveyed(before, of)];

/** The finding's remedy as a person chooses it. */
const chosen = async (
  doings: Told,
  stage: 'tack' | 'weld' | 'brace',
  finding: string,
  remedy: string,
  id = ID,
): Promise<Told> => {
  const f = named(railFindings(await answered(doings), stage).findings, finding);
  const o = offerOf(f, remedy);
  const doing: Doing = {
    kind: 'remedy-chosen',
    finding: f.key,
    remedy,
    plan: { ...o.plan },
    ...(o.after === undefined ? {} : { predicted_mm: o.after.v }),
    ...(f.worst_mm === undefined ? {} : { worst_mm: f.worst_mm }),
  };
  return [...doings, { id, ...doing }];
};

const stepsOf = (doings: Told): readonly StepDraft[] => {
  const s = situationFor(doings);
  return (['tack', 'weld', 'brace', 'assemble', 'finish'] as const).flatMap(stage => remedySteps(s, stage));
};

const NO_SCENE = { title: '', items: [] };

const BAD: Surveyed = { errors: n => (n === 7 ? 0.024 : 0.0005) };

describe('a chosen remedy gives its steps', () => {
  test('a re-cut while tacked: one step, one item a slit, keyed by the choice, right before the rail is read again', async () => {
    const told = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    const steps = stepsOf(told);
    expect(steps.map(s => s.key)).toEqual([`tack/re-cut@${ID}`]);
    const plan = told.at(-1) as unknown as Frozen;
    expect(steps[0]?.items?.map(i => i.key)).toEqual(plan.plan.slits.map(x => `tack/re-cut@${ID}#${x.slit}`));
    expect(steps[0]?.items?.map(i => i.value?.v)).toEqual(plan.plan.slits.map(x => x.gap_mm));
    const s = situationFor(told);
    expect(steps[0]?.turn).toBeLessThan(railTurn(s.ramp.design, 0, { after: 'survey' }));
    expect(steps[0]?.turn).toBeGreaterThan(railTurn(s.ramp.design, 0, { third: 3, part: 'read' }));
  });

  test('numbers stay as they were chosen, whatever is learned of kerf and pull since', async () => {
    const told = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    const before = stepsOf(told)[0]?.items;
    const learned: Doing = {
      kind: 'reading-logged',
      step: 'weld/test-piece',
      ask: 'turn',
      value: 0.03,
      typed: '1.7',
      basis: {},
    };
    expect(stepsOf([...told, learned])[0]?.items).toEqual(before);
  });

  test('a re-cut of a cold rail is sawn out, set and welded, one after the other', async () => {
    const told = await chosen(
      withSurvey({ phase: 'cold', errors: n => (n === 7 ? -0.02 : 0) }),
      'weld',
      'rail-off@A',
      're-cut',
    );
    const steps = stepsOf(told);
    expect(steps.map(s => s.words)).toEqual(['re-cut-saw', 're-cut', 're-cut-weld']);
    expect(steps.map(s => s.turn)).toEqual([...steps.map(s => s.turn)].sort((a, b) => a - b));
    expect(steps[1]?.needs).toEqual([steps[0]?.key]);
    expect(steps[2]?.needs).toEqual([steps[1]?.key]);
    const s = situationFor(told);
    expect(steps.at(-1)?.turn).toBeLessThan(railTurn(s.ramp.design, 0, { after: 'cold' }));
  });

  test('ticked slit by slit it is done, and stays said once the rail is read again', async () => {
    const told = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    const ticks = (stepsOf(told)[0]?.items ?? []).map(
      (i): Doing => ({ kind: 'step-ticked', step: i.key, basis: {} }),
    );
    const done = [...told, ...ticks];
    const s = situationFor(done);
    const sheet = {
      stage: 'tack' as Stage,
      figures: [],
      steps: remedySteps(s, 'tack'),
      findings: [],
      scene: { title: '', items: [] },
    };
    expect(walk(s.build, [sheet])[0]?.state).toBe('done');
    expect(stepsOf(withSurvey({}, done)).map(x => x.key)).toEqual([`tack/re-cut@${ID}`]);
  });

  test('read again without doing it, the reading counts and nothing is asked of the old remedy', async () => {
    const told = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    expect(stepsOf(withSurvey({}, told))).toEqual([]);
  });

  test('of two choices about one finding the later counts', async () => {
    const first = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-lay');
    const re_cut = (await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut', `${ID.slice(0, -1)}1`)).at(
      -1,
    );
    if (re_cut === undefined) throw new Error('nothing chosen');
    expect(stepsOf([...first, re_cut]).map(s => s.words)).toEqual(['re-cut']);
  });

  test('taken back, it takes its steps with it', async () => {
    const told = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    expect(stepsOf([...told, { kind: 'entry-struck', target: ID }])).toEqual([]);
  });

  test('a rail begun again: blank, marks, slits and tacks of all of them, and what was chosen for the old one is off', async () => {
    const first = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 're-cut');
    const again = (
      await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 'start-again', `${ID.slice(0, -1)}2`)
    ).at(-1);
    if (again === undefined) throw new Error('nothing chosen');
    const other = { ...again, finding: 'rail-off@A#another' } as Doing & { id?: string };
    const steps = stepsOf([...first, other]);
    expect(steps.map(s => s.words)).toEqual(['again-blank', 'again-saw', 'again-close']);
    const plan = situationFor(BEGUN).ramp.plans.get('A');
    expect(steps[1]?.items?.map(i => i.value?.v)).toEqual(plan?.slits.map(x => x.at_mm));
  });

  test('a welded rail begun again is welded again too, after it was read tacked', async () => {
    const told = await chosen(
      withSurvey({ phase: 'cold', errors: () => 0.004 }),
      'weld',
      'rail-off@A',
      'start-again',
    );
    const steps = stepsOf(told);
    expect(steps.map(s => s.words)).toEqual(['again-blank', 'again-saw', 'again-close', 'again-weld']);
    expect(steps[3]?.needs).toEqual(['tack/survey@A']);
    expect(steps[3]?.turn).toBeGreaterThan(railTurn(situationFor(BEGUN).ramp.design, 0, { after: 'survey' }));
  });

  test('making the other rail match gives steps of that other rail', async () => {
    const doings = withSurvey({ rail: 'B', errors: () => 0.003 }, withSurvey({}));
    const told = await chosen(doings, 'tack', 'rail-off@B', 'match-rail');
    const [step] = stepsOf(told);
    expect(step?.fills?.rail).toBe('A');
    expect(
      situationFor(told)
        .build.surveys.filter(v => v.retired)
        .map(v => v.rail),
    ).toEqual(['A']);
  });

  test('forced to its line: clamps flat by flat, then the rail is read as it is held, before the uprights are cut', async () => {
    const told = await chosen(
      withSurvey({ phase: 'cold', errors: () => 0.0018 }),
      'weld',
      'rail-off@A',
      'clamp-and-brace',
    );
    const steps = stepsOf(told);
    expect(steps.map(s => s.words)).toEqual(['clamp-to-line', 'clamped-survey']);
    expect(steps[1]?.survey?.stations_mm).toEqual(situationFor(told).build.surveys[0]?.stations_mm);
    expect(Math.max(...steps.map(s => s.turn))).toBeLessThan(TURN.brace);
    expect(steps[0]?.cautions).toEqual(['clamp-force']);
  });

  test('reading again stands until there is a newer survey, and changes no steel', async () => {
    const told = await chosen(withSurvey({ typed: { 9: -30 } }), 'tack', 'rail-off@A', 'read-again');
    expect(stepsOf(told).map(s => s.words)).toEqual(['read-again-at']);
    expect(stepsOf(told)[0]?.fills?.stations).toBe('9');
    expect(situationFor(told).build.surveys.some(v => v.retired)).toBe(false);
    expect(stepsOf(withSurvey({}, told))).toEqual([]);
  });

  test('its own step opens the reading anew, at the same stations, and stands until that is closed', async () => {
    const told = await chosen(withSurvey({ typed: { 9: -30 } }), 'tack', 'rail-off@A', 'read-again');
    const step = stepsOf(told)[0];
    const first = situationFor(told).build.surveys[0];
    expect(step?.survey).toEqual({
      kind: 'curve',
      rail: 'A',
      phase: 'tacked',
      to: 'tack line',
      stations_mm: first?.stations_mm,
      after: first?.n,
    });
    const state = walk(situationFor(told).build, [
      { stage: 'tack', figures: [], steps: step === undefined ? [] : [step], findings: [], scene: NO_SCENE },
    ])[0]?.state;
    expect(state).toBe('to do');
  });

  test('a gauge across the slits that stations cannot tell apart tells the finding anew, with the slit it found', async () => {
    // Read to 2 mm, a kink of 17 mrad could be at either of two slits.
    const read: Surveyed = { errors: n => (n === 9 ? 0.017 : 0), read_to: 2 };
    const before = named(railFindings(await answered(withSurvey(read)), 'tack').findings, 'rail-off@A');
    const offered = offerOf(before, 'gauge-flats');
    const slits = offered.plan.slits as number[];
    expect(slits).toContain(9);
    const told = await chosen(withSurvey(read), 'tack', 'rail-off@A', 'gauge-flats');
    const [step] = stepsOf(told);
    expect(step?.words).toBe('gauge');
    expect(step?.asks?.map(a => a.ask)).toEqual(
      ['first', 'second', 'third', 'fourth'].slice(0, slits.length),
    );
    const planned = (ask: number): number => {
      const [low, high] = step?.asks?.[ask]?.expected ?? [0, 0];
      return (low + high) / 2;
    };
    const reads: Told = slits.map((slit, k) => ({
      kind: 'reading-logged',
      step: step?.key ?? '',
      ask: step?.asks?.[k]?.ask ?? '',
      value: planned(k) + (slit === 9 ? 0.017 : 0),
      typed: 'gauge',
      basis: {},
    }));
    // One of two says nothing yet.
    const half = named(
      railFindings(await answered([...told, ...reads.slice(1)]), 'tack').findings,
      'rail-off@A',
    );
    expect(half.key).toBe(before.key);
    const after = named(railFindings(await answered([...told, ...reads]), 'tack').findings, 'rail-off@A');
    expect(after.key).toBe(`${before.key}~gauge`);
    expect(after.words).toBe('rail-slit-over');
    expect(after.fills?.slit).toBe(9);
    expect(after.offers.some(o => o.remedy === 'gauge-flats')).toBe(false);
  });

  test('where little braces it, a rail is forced past its line by what springs back; well braced, to its line only', async () => {
    const loose: Told = [...BEGUN, { kind: 'design-set', field: 'diagonals', value: 1000 }];
    const cold: Surveyed = { phase: 'cold', errors: () => 0.0025 };
    const told = await chosen(withSurvey(cold, loose), 'weld', 'rail-off@A', 'over-correct');
    const found = named(railFindings(await answered(withSurvey(cold, loose)), 'weld').findings, 'rail-off@A');
    const to = offerOf(found, 'clamp-and-brace');
    const past = offerOf(found, 'over-correct');
    expect(past.after?.v).toBeLessThan(to.after?.v ?? 0);
    const farthest = (o: typeof to): number =>
      Math.max(...(o.plan.clamps as { forced_mm: number }[]).map(x => Math.abs(x.forced_mm)));
    expect(farthest(past) / farthest(to)).toBeGreaterThan(1.1);
    expect(farthest(past) / farthest(to)).toBeLessThan(1.5);
    const steps = stepsOf(told);
    expect(steps.map(s => s.words)).toEqual(['clamp-past-line', 'clamped-survey']);
    for (const step of steps)
      expect(
        wordGaps({ stage: step.stage, figures: [], steps: [step], findings: [], scene: NO_SCENE }, [
          step.words,
        ]),
      ).toEqual([]);
    const well = named(railFindings(await answered(withSurvey(cold)), 'weld').findings, 'rail-off@A');
    expect(well.offers.some(o => o.remedy === 'over-correct')).toBe(false);
  });

  test('packer heights are written once the side frame stands, station by station', async () => {
    const told = await chosen(
      withSurvey({ phase: 'unclamped', errors: () => 0.002 }),
      'brace',
      'rail-off@A',
      'packers',
    );
    const [step] = stepsOf(told);
    expect(step?.words).toBe('packers');
    expect(Math.min(...(step?.items ?? []).map(i => i.second?.v ?? 0))).toBeGreaterThan(0);
    const tacked = await chosen(withSurvey(BAD), 'tack', 'rail-off@A', 'packers');
    expect(stepsOf(tacked)).toEqual([]);
  });

  test('a side welded first is chalked before the first slit is welded', async () => {
    const doings: Told = [...BEGUN, ...bowed(BEGUN, 'A', u => 24 * u * (1 - u))];
    const told = await chosen(doings, 'tack', 'rail-bow@A', 'bow-other-side');
    const [step] = stepsOf(told);
    expect(step?.key).toBe(`weld/bow-order@${ID}`);
    expect(step?.turn).toBeLessThan(railTurn(situationFor(told).ramp.design, 0, { after: 'weld' }));
  });

  test('nonsense frozen in a plan gives no steps and no fault', () => {
    for (const remedy of [
      're-cut',
      're-lay',
      'add-slit',
      'start-again',
      'clamp-and-brace',
      'packers',
      'over-correct',
      'read-again',
      'gauge-flats',
      'bow-retack',
    ])
      for (const plan of [
        {},
        { rail: 'Z' },
        { rail: 'A' },
        { rail: 7 },
        {
          rail: 'A',
          slits: 7,
          fresh: 'no',
          marks: [null, 3],
          clamps: [{}],
          packers: {},
          stations: ['x'],
          phase: 'cold',
        },
      ])
        expect(() =>
          stepsOf([...BEGUN, { kind: 'remedy-chosen', finding: 'x', remedy, plan }]),
        ).not.toThrow();
  });
});

describe('words of the steps', () => {
  test.each(['tack', 'weld', 'brace'] as const)(
    'every step of %s that a remedy may give has its words, none is too long',
    stage => {
      expect(longWords(stage, STEPS[stage])).toEqual([]);
    },
  );

  test('every step given fills all its words', async () => {
    const cases: readonly [Surveyed, 'tack' | 'weld' | 'brace', string][] = [
      [BAD, 'tack', 're-cut'],
      [BAD, 'tack', 're-lay'],
      [BAD, 'tack', 'start-again'],
      [BAD, 'tack', 'read-again'],
      [{ errors: () => -0.003 }, 'tack', 'add-slit'],
      [{ errors: n => (n === 9 ? 0.017 : 0), read_to: 2 }, 'tack', 'gauge-flats'],
      [{ phase: 'cold', errors: n => (n === 9 ? 0.017 : 0), read_to: 2 }, 'weld', 'gauge-flats'],
      [{ typed: { 9: -30 } }, 'tack', 'read-again'],
      [{ phase: 'cold', errors: n => (n === 7 ? -0.02 : 0) }, 'weld', 're-cut'],
      [{ phase: 'cold', errors: () => -0.003 }, 'weld', 'add-slit'],
      [{ phase: 'cold', errors: () => 0.003 }, 'weld', 'start-again'],
      [{ phase: 'cold', errors: () => 0.0018 }, 'weld', 'clamp-and-brace'],
      [{ phase: 'unclamped', errors: () => 0.002 }, 'brace', 'packers'],
      [{ phase: 'unclamped', errors: () => 0.002 }, 'brace', 're-lay'],
    ];
    const told = new Set<string>();
    for (const [of, stage, remedy] of cases) {
      const steps = stepsOf(await chosen(withSurvey(of), stage, 'rail-off@A', remedy));
      expect(steps.length).toBeGreaterThan(0);
      for (const step of steps) {
        told.add(`${step.stage}.${step.words}`);
        const sheet = {
          stage: step.stage,
          figures: [],
          steps: [step],
          findings: [],
          scene: { title: '', items: [] },
        };
        expect(wordGaps(sheet, [step.words])).toEqual([]);
        expect(step.minutes[0]).toBeLessThanOrEqual(step.minutes[1]);
      }
    }
    expect(told.size).toBeGreaterThan(14);
  });

  test('what is written for a remedy is said of one', () => {
    for (const stage of ['tack', 'weld', 'brace'] as const)
      for (const words of STEPS[stage]) expect(WORDS.steps[stage]?.[words]).toBeDefined();
  });
});
