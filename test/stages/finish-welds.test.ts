import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { overrideEntry, readEntry, skipEntry, tickEntry } from '../../src/coach/decide/steps.ts';
import { viewOf } from '../../src/coach/view.ts';
import { isDecided, walk } from '../../src/coach/walk.ts';
import { acrossGroups, sideGroups } from '../../src/stages/finish/joint-groups.ts';
import { slitsToLookAt } from '../../src/stages/finish/looks.ts';
import { finishSheet } from '../../src/stages/finish/sheet.ts';
import type { SheetDraft } from '../../src/stages/sheet.ts';
import { begun, read, set, tick } from './doings.ts';
import { situation } from './frame-doings.ts';
import { entriesOf, NOW } from './situation-for.ts';

const step = (sheet: SheetDraft, key: string) => sheet.steps.find(s => s.key === key);
const gate = (sheet: SheetDraft, key: string, id: string) => step(sheet, key)?.gates?.find(g => g.id === id);
const WAITS = [
  'finish/proof',
  'finish/trial-deck',
  'finish/deck',
  'finish/deck-check',
  'finish/speeds',
  'finish/first-use',
];
const shutEverywhere = (sheet: SheetDraft, id: string) => WAITS.map(key => gate(sheet, key, id)?.shut);

/** Entry ids are entry-1, entry-2 …; the build's beginning is the first. */
const failed = (count: number): Doing[] => [read('finish/inspect-joints@A', 'tops', count)];
const chosen = (remedy: string, entry = 2): Doing => ({
  kind: 'remedy-chosen',
  finding: `finish/inspect-joints@A#tops:entry-${entry}`,
  remedy,
  plan: {},
  worst_mm: 1,
});

describe('walking the joints', () => {
  test('like joints go together, one key each, every joint of the frame in one group', () => {
    const s = situation();
    const { members } = s.ramp;
    const joints = (rail: string | undefined) =>
      members.filter(m => m.rail === rail).reduce((sum, m) => sum + m.joints, 0);
    const slits = s.ramp.plans.get('A')?.slits.length ?? 0;
    const side = sideGroups(s, 'A').reduce((sum, g) => sum + g.welds, 0);
    expect(side).toBe(joints('A') + slits);
    const across = acrossGroups(s).filter(g => ['rails', 'bases', 'rear'].includes(g.ask));
    expect(across.reduce((sum, g) => sum + g.welds, 0)).toBe(joints(undefined));
    const items = step(finishSheet(s), 'finish/inspect-joints@A')?.items ?? [];
    expect(items.length).toBeLessThanOrEqual(6);
    expect(items.map(i => i.ask)).toEqual(sideGroups(s, 'A').map(g => g.ask));
  });

  test('rolled rails have no slits to walk along', () => {
    const s = situation(set('route', 'rolled'));
    expect(sideGroups(s, 'A').map(g => g.ask)).not.toContain('slits');
  });

  test('the slits to dye: five nearest the lip, both beside each upright, any with a nicked back wall', () => {
    const s = situation({ kind: 'slit-noted', rail: 'A', slit: 2, note: 'nicked' });
    const items = step(finishSheet(s), 'finish/inspect')?.items?.map(i => i.name) ?? [];
    expect(items).toContain('A2');
    expect(items).not.toContain('B2');
    expect(items.length).toBe(slitsToLookAt(s, 'A').length + slitsToLookAt(s, 'B').length);
  });

  test('a page whose groups all pass is done without a word on failing', () => {
    const s = situation(
      ...sideGroups(situation(), 'A').map(g => tick(`finish/inspect-joints@A#${g.ask}`)),
      ...['assemble/weld', 'assemble/feet', 'assemble/lugs', 'assemble/entry-plate'].map(k => tick(k)),
    );
    const state = walk(s.build, [finishSheet(s)]).find(w => w.key === 'finish/inspect-joints@A')?.state;
    expect(state).toBe('done');
  });
});

describe('a weld that fails', () => {
  test('asks what it shows, each answer with why, what to do, and looking again; nothing goes on meanwhile', () => {
    const sheet = finishSheet(situation(...failed(1)));
    const finding = sheet.findings.find(f => f.key.startsWith('finish/inspect-joints@A#tops:'));
    expect(finding).toMatchObject({ severity: 'stop', words: 'weld-fails', worst_mm: 1 });
    expect(finding?.blocks).toEqual(
      expect.arrayContaining(['finish/proof', 'finish/deck', 'finish/first-use']),
    );
    expect(finding?.offers.map(o => o.remedy)).toEqual([
      'weld-crack',
      'weld-not-wetted',
      'weld-hole',
      'weld-pores',
      'weld-groove',
      'weld-short',
      'weld-crater',
      'leave-weld',
    ]);
    expect(shutEverywhere(sheet, 'weld-fails')).toEqual(WAITS.map(() => true));
  });

  test('a groove mended and read as sound opens everything', () => {
    const open = finishSheet(situation(...failed(1), chosen('weld-groove')));
    expect(shutEverywhere(open, 'weld-fails')).toEqual(WAITS.map(() => true));
    expect(shutEverywhere(open, 'open-crack')).toEqual(WAITS.map(() => false));
    const mended = finishSheet(situation(...failed(1), chosen('weld-groove'), ...failed(0)));
    expect(shutEverywhere(mended, 'weld-fails')).toEqual(WAITS.map(() => false));
    expect(mended.findings).toEqual([]);
  });

  test('its mend is a step with an arc, which waits for the weather as every other and opens nothing by its tick', () => {
    const doings = [...failed(1), chosen('weld-groove')];
    const s = situation(...doings);
    const mend = finishSheet(s).steps.find(x => x.key.startsWith('finish/mend@'));
    expect(mend).toMatchObject({ words: 'mend', fills: { where: 'upright tops of A', count: 1 } });
    const view = viewOf(entriesOf([begun(), ...doings]), NOW);
    expect(view.steps.find(x => x.key === mend?.key)?.waitsFor).toContain('prep/weather');
    const ticked = finishSheet(situation(...doings, tick(mend?.key ?? '')));
    expect(shutEverywhere(ticked, 'weld-fails')).toEqual(WAITS.map(() => true));
    // Read as sound, a mend that was never ticked is asked no more; one that was stays done.
    const keys = (...more: Doing[]) => finishSheet(situation(...doings, ...more)).steps.map(x => x.key);
    expect(keys(...failed(0))).not.toContain(mend?.key);
    expect(keys(tick(mend?.key ?? ''), ...failed(0))).toContain(mend?.key);
    const left = finishSheet(situation(...failed(1), chosen('leave-weld')));
    expect(left.steps.filter(x => x.key.startsWith('finish/mend@'))).toEqual([]);
  });

  test('one within the figures after all stays as it is', () => {
    const left = finishSheet(situation(...failed(2), chosen('leave-weld')));
    expect(shutEverywhere(left, 'weld-fails')).toEqual(WAITS.map(() => false));
  });

  test('failing again after it was mended is asked anew, the old answer does not stand for it', () => {
    const s = situation(...failed(1), chosen('leave-weld'), ...failed(0), ...failed(1));
    const finding = finishSheet(s).findings[0];
    expect(finding?.key).toBe('finish/inspect-joints@A#tops:entry-5');
    expect(finding !== undefined && isDecided(s.build, finding)).toBe(false);
    expect(gate(finishSheet(s), 'finish/deck', 'weld-fails')?.shut).toBe(true);
  });
});

describe('an open crack', () => {
  const cases: Record<string, Doing[]> = {
    'said at a joint': [...failed(1), chosen('weld-crack')],
    'shown by the dye at a slit': [read('finish/inspect', 'cracked@A', 1)],
    'found after ten jumps': [read('finish/look-again@10', 'cracks', 1)],
  };
  test.each(Object.entries(cases))('%s shuts proof, deck and ride with no way round', (_, doings) => {
    const sheet = finishSheet(situation(...doings));
    expect(shutEverywhere(sheet, 'open-crack')).toEqual(WAITS.map(() => true));
    for (const key of WAITS) expect(gate(sheet, key, 'open-crack')?.never).toBe(true);
    const finding = sheet.findings.find(f => f.key === 'open-crack');
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
    expect(finding?.offers.every(o => !o.remedy.startsWith('leave'))).toBe(true);
  });

  test.each([
    ['finish/inspect', 'cracked@A', 'finish/inspect'],
    ['finish/look-again@10', 'cracks', 'finish/look-again@10'],
  ])('ground out, welded, looked at again at %s and read as none, it opens', (where, ask, measure) => {
    const open = finishSheet(situation(read(where, ask, 1)));
    expect(gate(open, 'finish/deck', 'open-crack')?.measure).toBe(measure);
    const mended = finishSheet(situation(read(where, ask, 1), read(where, ask, 0)));
    expect(gate(mended, 'finish/deck', 'open-crack')?.shut).toBe(false);
    expect(mended.findings).toEqual([]);
  });

  test('saying how it will be mended opens nothing, neither does calling it another thing on another place', () => {
    const s = situation(read('finish/inspect', 'cracked@A', 1), {
      kind: 'remedy-chosen',
      finding: 'open-crack',
      remedy: 'crack-grind-out',
      plan: {},
      worst_mm: 1,
    });
    expect(shutEverywhere(finishSheet(s), 'open-crack')).toEqual(WAITS.map(() => true));
  });

  test('a second one in a rail scraps the rail first; one in each rail does not', () => {
    const two = finishSheet(situation(read('finish/inspect', 'cracked@A', 2)));
    expect(two.findings[0]).toMatchObject({ words: 'open-cracks-rail', fills: { rail: 'A', count: 2 } });
    expect(two.findings[0]?.offers[0]?.remedy).toBe('crack-new-rail');
    const each = finishSheet(
      situation(read('finish/inspect', 'cracked@A', 1), read('finish/inspect', 'cracked@B', 1)),
    );
    expect(each.findings[0]).toMatchObject({ words: 'open-cracks' });
  });

  test('one mended after the proof load asks for the load again', () => {
    const before = situation(read('finish/inspect', 'cracked@A', 1), read('finish/proof', 'set', 0));
    expect(gate(finishSheet(before), 'finish/first-use', 'proof-set')?.shut).toBe(false);
    const mended = [read('finish/proof', 'set', 0), read('finish/look-again@10', 'cracks', 1)];
    const after = finishSheet(situation(...mended, read('finish/look-again@10', 'cracks', 0)));
    expect(gate(after, 'finish/first-use', 'proof-again')?.shut).toBe(true);
    const again = finishSheet(
      situation(...mended, read('finish/look-again@10', 'cracks', 0), read('finish/proof', 'set', 0.2)),
    );
    expect(gate(again, 'finish/first-use', 'proof-set')?.shut).toBe(false);
  });

  test('a crack of the first look keeps the next jumps from being counted', () => {
    const sheet = finishSheet(situation(read('finish/look-again@10', 'cracks', 1)));
    expect(gate(sheet, 'finish/look-again@50', 'open-crack')?.shut).toBe(true);
  });
});

describe('at the bench', () => {
  const before = [begun(), read('finish/inspect', 'cracked@A', 1)];
  const view = (...doings: Doing[]) => viewOf(entriesOf([...before, ...doings]), NOW);

  test('neither a reason, a skip nor a tick takes a deck past a crack', () => {
    const v = view();
    expect(overrideEntry(v, 'finish/deck', 'open-crack', 'it is short')).toMatchObject({
      ok: false,
      refusal: { code: 'gate-never' },
    });
    expect(skipEntry(v, 'finish/deck', 'it is short')).toMatchObject({ ok: false });
    expect(tickEntry(v, 'finish/deck')).toMatchObject({ ok: false });
    const forced = view({
      kind: 'gate-overridden',
      step: 'finish/first-use',
      gate: 'open-crack',
      why: 'it is short',
    });
    expect(forced.steps.find(s => s.key === 'finish/first-use')?.shut).toContain('open-crack');
  });

  test('reading it again as none is let in while the gate is shut', () => {
    const v = view(
      ...['assemble/weld', 'assemble/feet', 'assemble/lugs', 'assemble/entry-plate'].map(k => tick(k)),
    );
    const again = readEntry(v, 'finish/inspect', 'cracked@A', '0');
    // It waits for the joints of the frame only while those were never walked.
    const walked = view(
      ...[...v.steps.filter(s => s.key.startsWith('finish/inspect-'))].flatMap(s =>
        (s.items ?? []).map(i => tick(i.key)),
      ),
      ...['assemble/weld', 'assemble/feet', 'assemble/lugs', 'assemble/entry-plate'].map(k => tick(k)),
    );
    expect(again.ok).toBe(false);
    expect(readEntry(walked, 'finish/inspect', 'cracked@A', '0')).toMatchObject({ ok: true });
  });

  test('welds nobody looked at are counted before the first ride', () => {
    const skip: Doing = { kind: 'step-skipped', step: 'finish/inspect-joints@A#tops', why: 'in the way' };
    const sheet = finishSheet(situation(skip));
    expect(gate(sheet, 'finish/first-use', 'welds-unseen')).toMatchObject({
      shut: true,
      fills: { count: 1 },
    });
    expect(gate(finishSheet(situation()), 'finish/first-use', 'welds-unseen')?.shut).toBe(false);
  });
});
