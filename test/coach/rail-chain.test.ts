import { describe, expect, test } from 'vitest';
import { underWay } from '../../src/coach/under-way.ts';
import { openFindings, type View } from '../../src/coach/view.ts';
import type { Finding } from '../../src/stages/sheet.ts';
import { Teller } from '../demo/tell.ts';
import { laidWell, readings, type Surveyed } from '../stages/rail-findings-measured.ts';
import { nextIntent } from '../walk/hand.ts';

const PHASE = { tack: 'tacked', weld: 'cold', brace: 'braced' } as const;

/** A build told by its acts, from the first answer; surveys of made-up rails. */
class Chain extends Teller {
  static async begun(): Promise<Chain> {
    const chain = new Chain(7, '2026-11-02T18:00:00Z');
    chain.begin({ kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric', invented: true });
    await chain.act({ do: 'answer', field: 'shape', value: { radius: '4500 mm', exit: '35 deg' } });
    return chain;
  }

  async survey(of: Surveyed): Promise<void> {
    const { situation } = await this.view();
    const { stations_mm, offsets_mm } = readings(situation, of);
    await this.act({
      do: 'open-survey',
      rail: of.rail ?? 'A',
      phase: of.phase ?? 'tacked',
      stations: stations_mm.map(s => `${s} mm`),
    });
    await this.act({ do: 'offsets', values: offsets_mm.map(o => `${o} mm`) });
    await this.act({ do: 'close-survey' });
  }

  /** Does one step to its end, as a steady person would. */
  async settle(key: string): Promise<void> {
    for (let acts = 0; acts < 20; acts++) {
      const view = await this.view();
      const step = view.steps.find(s => s.key === key);
      if (step === undefined || step.state === 'done') return;
      const intent = nextIntent({ ...view, next: step }, {});
      if (intent === null) return;
      await this.act(intent);
    }
  }

  async finding(start: string): Promise<Finding> {
    const { findings } = await this.view();
    const found = findings.find(f => f.key.startsWith(start));
    if (found === undefined) throw new Error(`no ${start} in ${findings.map(f => f.key).join(', ')}`);
    return found;
  }

  async choose(start: string, remedy: string): Promise<string> {
    const finding = await this.finding(start);
    await this.act({ do: 'choose', finding: finding.key, remedy });
    return this.entries.at(-1)?.id ?? '';
  }
}

const lengths = (view: View): readonly number[] =>
  view.ramp.members.filter(m => m.rail === 'A' && /upright/.test(m.kind)).map(m => m.long_mm);
const asDrawn = (view: View): readonly number[] =>
  view.ramp.nominal.filter(m => m.rail === 'A' && /upright/.test(m.kind)).map(m => m.long_mm);
const farthest = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((v, k) => Math.abs(v - (b[k] ?? 0))));
const stepOf = (view: View, key: string) => view.steps.find(s => s.key === key);
const openRail = (view: View): readonly string[] =>
  openFindings(view)
    .filter(f => /^rail/.test(f.key))
    .map(f => f.key.split('#')[0] ?? '');

describe('from a survey to the uprights', () => {
  test('tacked: measured, explained, one slit set again, measured, and the uprights follow the rail that is there', async () => {
    const chain = await Chain.begun();
    const drawn = lengths(await chain.view());
    const errors = (n: number): number => (n === 6 ? 0.024 : 0.0004);
    await chain.survey({ errors });
    const measured = await chain.view();
    expect(farthest(lengths(measured), drawn)).toBeGreaterThan(3);
    const finding = await chain.finding('rail-off@A');
    expect(finding.words).toMatch(/^rail-slit-over/);
    expect(finding.blocks).toEqual(['weld/sides-first@A']);
    expect(stepOf(measured, 'tack/survey@A')?.state).toBe('done');

    const id = await chain.choose('rail-off@A', 're-cut');
    const chosen = await chain.view();
    // The rail is not the one that was measured: its survey retires, its uprights are as drawn, the reading is asked again.
    expect(chosen.build.surveys.every(s => s.retired)).toBe(true);
    expect(stepOf(chosen, 'tack/survey@A')?.state).not.toBe('done');
    const step = stepOf(chosen, `tack/re-cut@${id}`);
    expect(step?.items?.length).toBeGreaterThan(0);
    expect(step?.turn).toBeLessThan(stepOf(chosen, 'tack/survey@A')?.turn ?? 0);
    // It is not measured before it is cut, and once it is cut that is what comes next.
    expect(stepOf(chosen, 'tack/survey@A')?.state).toBe('waiting');
    expect(stepOf(chosen, 'tack/sideways@A')?.waitsFor).toContain(`tack/re-cut@${id}`);
    expect(stepOf(chosen, 'tack/twist@A')?.waitsFor).toContain(`tack/re-cut@${id}`);
    expect(stepOf(chosen, 'tack/twist@B')?.waitsFor).not.toContain(`tack/re-cut@${id}`);
    // Nothing is left to decide, and nothing is mended yet.
    expect(openRail(chosen)).toEqual([]);
    expect(underWay(chosen)).toMatchObject([
      { chosen: { entry: id }, next: { key: `tack/re-cut@${id}` }, open: 1 },
    ]);
    // Its tacks are arcs: they wait for the weather.
    await chain.settle('prep/weather');
    expect((await chain.view()).next?.key).toBe(`tack/re-cut@${id}`);
    for (const item of step?.items ?? []) await chain.act({ do: 'tick', step: item.key });
    const toRead = stepOf(await chain.view(), 'tack/survey@A');
    expect(toRead?.led).toBe(true);
    expect(toRead?.waitsFor).not.toContain(`tack/re-cut@${id}`);
    expect(stepOf(await chain.view(), `tack/re-cut@${id}`)?.state).toBe('done');
    expect(underWay(await chain.view())).toMatchObject([{ next: { key: 'tack/survey@A' }, open: 0 }]);

    const plan = chosen.build.chosen[0]?.plan.slits as readonly { slit: number; turn_rad: number }[];
    const turned = new Map(plan.map(x => [x.slit, x.turn_rad]));
    const lies = (n: number): number => errors(n) + (turned.get(n) ?? 0);
    await chain.survey({ errors: lies, laid: laidWell(chosen.situation, { errors: lies }) });
    const predicted = chosen.build.chosen[0]?.predicted_mm ?? 99;
    const again = await chain.view();
    const came = again.findings.find(f => f.key.startsWith('rail-came-out@A'));
    expect(came?.words).toBe('rail-came-out');
    expect(Math.abs((came?.worst_mm ?? 99) - predicted)).toBeLessThan(0.8);
    expect(openRail(again)).toEqual(['rail-came-out@A']);
    await chain.choose('rail-came-out@A', 'leave');
    expect(openRail(await chain.view())).toEqual([]);
    expect(farthest(lengths(again), drawn)).toBeGreaterThan(0);
    expect(farthest(lengths(again), drawn)).toBeLessThan(farthest(lengths(measured), drawn) / 2);
  });

  test('wrong edge: until it is said, uprights stay as drawn; counted less the tube, they follow the rail', async () => {
    const chain = await Chain.begun();
    await chain.survey({ phase: 'cold', constant: 40, errors: n => 0.0002 * n * 0.05 });
    const before = await chain.view();
    expect(openRail(before)).toEqual(['rail-edge@A']);
    expect(before.situation.measured.curves.has('A')).toBe(false);
    expect(farthest(lengths(before), asDrawn(before))).toBe(0);
    expect((await chain.finding('rail-edge@A')).blocks).toEqual(['brace/uprights@A']);
    await chain.choose('rail-edge@A', 'other-edge');
    const after = await chain.view();
    expect(openRail(after)).toEqual([]);
    expect(after.situation.measured.curves.has('A')).toBe(true);
    expect(farthest(lengths(after), asDrawn(after))).toBeGreaterThan(0);
    expect(farthest(lengths(after), asDrawn(after))).toBeLessThan(4);
  });

  test('cold: clamped to its line, read as it is held, and the uprights are cut to that', async () => {
    const chain = await Chain.begun();
    await chain.survey({ phase: 'cold', errors: () => 0.0024 });
    const off = await chain.view();
    const away = farthest(lengths(off), asDrawn(off));
    expect(away).toBeGreaterThan(10);
    const id = await chain.choose('rail-off@A', 'clamp-and-brace');
    const view = await chain.view();
    const clamp = stepOf(view, `brace/clamp-to-line@${id}`);
    expect(clamp?.items?.length).toBeGreaterThanOrEqual(3);
    expect(stepOf(view, `brace/clamped-survey@${id}`)?.survey).toMatchObject({ phase: 'braced', rail: 'A' });
    expect(clamp?.turn).toBeLessThan(stepOf(view, 'brace/uprights@A')?.turn ?? 0);
    await chain.survey({ phase: 'braced' });
    const held = await chain.view();
    expect(stepOf(held, `brace/clamped-survey@${id}`)?.state).toBe('done');
    expect(farthest(lengths(held), asDrawn(held))).toBeLessThan(1.5);
  });

  test('a remedy taken back takes its steps with it, and the survey counts again', async () => {
    const chain = await Chain.begun();
    await chain.survey({ errors: n => (n === 6 ? 0.03 : 0) });
    const before = await chain.view();
    const id = await chain.choose('rail-off@A', 're-cut');
    expect(stepOf(await chain.view(), `tack/re-cut@${id}`)).toBeDefined();
    await chain.act({ do: 'strike', entry: id });
    const after = await chain.view();
    expect(stepOf(after, `tack/re-cut@${id}`)).toBeUndefined();
    expect(openRail(after)).toEqual(['rail-off@A']);
    expect(lengths(after)).toEqual(lengths(before));
  });

  test('each page asks only of its own phase', async () => {
    const chain = await Chain.begun();
    await chain.survey({ phase: 'cold', errors: () => 0.003 });
    const { sheets } = await chain.view();
    for (const [stage, phase] of Object.entries(PHASE)) {
      const mine =
        sheets.find(s => s.stage === stage)?.findings.some(f => f.key.startsWith('rail-off@A')) ?? false;
      expect(mine).toBe(phase === 'cold');
    }
  });
});
