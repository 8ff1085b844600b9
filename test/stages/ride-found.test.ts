import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import { decide } from '../../src/coach/decide/decide.ts';
import { openFindings, sheetOf, type View } from '../../src/coach/view.ts';
import { GRAVITY_m_s2 } from '../../src/quantity/gravity.ts';
import { flight } from '../../src/reckon/ride/flight.ts';
import { anchorNeed } from '../../src/stages/finish/anchors.ts';
import { fastestCovered, proofForce } from '../../src/stages/finish/proof.ts';
import { bandOf, groundOf, launchOf, saidLanding } from '../../src/stages/flight-band.ts';
import { rideOf } from '../../src/stages/plan/ride-facts.ts';
import { planSheet } from '../../src/stages/plan/sheet.ts';
import { DANGERS } from '../../src/stages/plan/taken-on.ts';
import { standingStill } from '../../src/stages/standing-still.ts';
import { kept } from '../quantity/expect-outcome.ts';
import { read, set } from './doings.ts';
import { anchored, KIND_LANDING, keysOf, landing, ridden, rideFindingsOf, Told } from './ride-told.ts';
import { situationFor } from './situation-for.ts';
import { WORDS, wordGaps } from './word-gaps.ts';

const DEG = Math.PI / 180;
const begun = { kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric' } as const;
const situation = (...doings: Doing[]) => situationFor([begun, ...doings]);
const plan = (view: View) => sheetOf(view, 'plan');
const stops = (view: View) =>
  rideFindingsOf(view)
    .filter(f => f.severity === 'stop')
    .map(f => f.key);
const refusalOf = async (told: Told, intent: Parameters<typeof decide>[1]) => {
  const decided = decide(await told.view(), intent);
  return decided.ok ? null : decided.refusal.code;
};

describe('too fast for its radius', () => {
  const bad = () =>
    new Told(
      'metric',
      set('shape', { radius: 2500, exit: 30 * DEG }),
      ridden(7.3),
      ...KIND_LANDING,
      ...anchored(4, 2),
    );

  test('it is said before anything else of the plan, in times the weight', async () => {
    const view = await bad().view();
    const found = rideFindingsOf(view).find(f => f.key === 'ride-load-novice');
    // n₀ = 1 + v²/(gR), textbook.
    expect(found?.fills?.value).toMatchObject({ v: 1 + 7.3 ** 2 / (GRAVITY_m_s2 * 2.5), as: 'ratio' });
    expect(openFindings(view)[0]).toMatchObject({ key: 'ride-load-novice', severity: 'stop' });
    expect(rideFindingsOf(view).find(f => f.words === 'strength-joint')?.fills).toMatchObject({
      part: 'lip',
      name: 'upright',
    });
    expect(plan(view).findings.findIndex(f => f.key.startsWith('ride-'))).toBe(0);
    expect(wordGaps(plan(view))).toEqual([]);
  });

  test('slower, as it is offered, turns all of it green', async () => {
    const told = bad();
    await told.mend('ride-load-novice', 'ride-slower');
    expect(keysOf(await told.view())).toEqual([]);
  });

  test('a wider circle takes the load as well', async () => {
    const told = bad();
    await told.mend('ride-load-novice', 'ride-wider-lip');
    const view = await told.view();
    expect(keysOf(view).some(key => key.startsWith('ride-load'))).toBe(false);
    expect(view.ramp.lip.y_mm).toBeCloseTo(2500 * (1 - Math.cos(30 * DEG)), 6);
  });
});

test('the climb is told as it presses: at the foot, at the lip with its losses, and how suddenly it takes hold', () => {
  const s = situation(set('shape', { radius: 3000, exit: 40 * DEG }), set('use', 'skate'), ridden(6));
  const figure = (id: string) => {
    const value = planSheet(s).figures.find(f => f.id === id)?.value;
    return value?.is === 'exact' ? value.v : Number.NaN;
  };
  // n = 1 + v²/(gR), and all of it within one wheelbase of 0.36 m; at the lip cosφ + v²/(gR) of what speed is left [textbook].
  const step = 36 / (GRAVITY_m_s2 * 3);
  expect(figure('load-factor')).toBeCloseTo(1 + step, 9);
  expect(figure('load-onset')).toBeCloseTo((step * 6) / 0.36, 9);
  const bare = Math.cos(40 * DEG) + step - 2 * (1 - Math.cos(40 * DEG));
  expect(figure('load-at-lip')).toBeLessThan(bare);
  expect(figure('load-at-lip')).toBeGreaterThan(0.95 * bare);
});

describe('no anchors', () => {
  const bad = () => new Told('metric', ridden(5), ...KIND_LANDING, ...anchored(0, 0));

  test('no anchors, no riding: it is the first thing said, and there is no way round', async () => {
    const told = bad();
    const first = openFindings(await told.view())[0];
    expect(first).toMatchObject({ key: 'ride-anchors-few', severity: 'stop' });
    expect(first?.offers.some(o => o.remedy.startsWith('accept-'))).toBe(false);
    // Leaving it unridden is a choice, but what waits for it goes on waiting.
    await told.act({ do: 'choose', finding: 'ride-anchors-few', remedy: 'leave-unridden' });
    expect(stops(await told.view())).toEqual(['ride-anchors-few:1']);
    expect(await refusalOf(told, { do: 'tick', step: 'plan/buy#spare rail' })).not.toBeNull();
  });

  test('four of them, two at the entry, turn it green', async () => {
    const told = bad();
    await told.mend('ride-anchors-few', 'anchors-plan');
    expect(keysOf(await told.view())).toEqual([]);
  });

  test('four at the rear alone are not enough', async () => {
    const told = new Told('metric', ridden(5), ...KIND_LANDING, ...anchored(4, 0));
    expect(stops(await told.view())).toEqual(['ride-anchors-entry']);
    await told.mend('ride-anchors-entry', 'anchors-plan');
    expect(keysOf(await told.view())).toEqual([]);
  });

  test('on lawn that may be wet a stake holds half: four are not enough, eight or firmer ground are', async () => {
    const wet = () =>
      new Told('metric', set('ground', 'wet lawn'), ridden(5), ...KIND_LANDING, ...anchored(4, 2));
    expect(keysOf(await wet().view())).toEqual(['ride-anchors-short']);
    // The step that asks names the eight before they are missed.
    expect(plan(await wet().view()).steps.find(d => d.key === 'plan/ground')?.fills).toMatchObject({
      least: 8,
      entry: 4,
    });
    const more = wet();
    const offer = await more.mend('ride-anchors-short', 'anchors-plan');
    expect(offer.fills).toMatchObject({ count: 8, entry: 4 });
    expect(keysOf(await more.view())).toEqual([]);
    const firmer = wet();
    await firmer.mend('ride-anchors-short', 'ground-firmer');
    expect((await firmer.view()).ramp.design.ground).toBe('dry lawn');
    expect(keysOf(await firmer.view())).toEqual([]);
    expect(wordGaps(plan(await wet().view()))).toEqual([]);
  });

  test('what plan foresees for an anchor is what finish has it pulled to', () => {
    for (const more of [[], [set('rider', 110)], [set('ground', 'wet lawn')], [ridden(9.5)]]) {
      const s = situation(...more);
      const foreseen = standingStill(s)?.anchors;
      expect(anchorNeed(s)?.pull_N).toBeCloseTo(Math.max(500, foreseen?.entryTest_N ?? 0), 6);
    }
  });

  test('a slippery ground asks for more of them', () => {
    const slide = (ground: string) =>
      standingStill(situation(set('ground', ground)))?.standing.held.slide_N ?? 0;
    expect(slide('wet lawn')).toBeGreaterThan(slide('dry lawn'));
    expect(slide('dry lawn')).toBeGreaterThan(slide('concrete'));
  });
});

const takenOn = {
  do: 'choose',
  finding: 'ride-flat-from-high',
  remedy: 'accept-flat-from-high',
  typed: 'I know that I may Break Bones on the lawn',
} as const;

describe('a flat landing from high', () => {
  const at = (speed: number) =>
    new Told(
      'metric',
      set('shape', { height: 900, exit: 30 * DEG }),
      ridden(speed),
      ...landing({ drop_mm: 900, slope_deg: 0 }),
      ...anchored(4, 2),
    );

  test('the fall is as high as the highest point of the flight, and that is said first', async () => {
    const view = await at(5.5).view();
    const first = openFindings(view)[0];
    expect(first).toMatchObject({ key: 'ride-flat-from-high', severity: 'stop' });
    // Equivalent fall height on the flat is the height of the crest above it [identity].
    const { flight: flown } = rideOf(view.situation);
    expect(flown?.fall_height_m).toBeCloseTo(0.9 + (flown?.rise_m ?? 0), 9);
    expect(first?.fills?.value).toMatchObject({ v: 0.9 + (flown?.rise_m ?? 0) });
    expect(wordGaps(plan(view))).toEqual([]);
  });

  test('a drop that was kept in mm, as builds of before have it, is the same drop', async () => {
    const before = read('plan/landing', 'landing-drop', 900);
    const doings = [set('shape', { height: 900, exit: 30 * DEG }), ridden(5.5), ...anchored(4, 2)];
    const told = new Told('metric', ...doings, before, read('plan/landing', 'landing-slope', 0));
    const view = await told.view();
    expect(openFindings(view)[0]?.fills?.value).toEqual(openFindings(await at(5.5).view())[0]?.fills?.value);
    expect(
      plan(view)
        .steps.find(d => d.key === 'plan/landing')
        ?.asks?.map(a => a.ask),
    ).toContain('landing-drop');
  });

  test('a landing filled level and then falling away turns it green', async () => {
    const told = at(5.5);
    await told.mend('ride-flat-from-high', 'ride-slope-level');
    expect(keysOf(await told.view())).toEqual([]);
  });

  test('a raised landing, as it is offered, keeps the limit', async () => {
    const told = at(5.5);
    await told.mend('ride-flat-from-high', 'ride-raise-landing');
    expect(stops(await told.view())).toEqual([]);
  });

  test('each change that is offered keeps this limit, and none has the rider roll back from the lip', async () => {
    const offers =
      openFindings(await at(5.5).view())[0]?.offers.filter(
        o => o.plan.field !== undefined || o.plan.readings !== undefined,
      ) ?? [];
    expect(offers.length).toBeGreaterThanOrEqual(2);
    for (const { remedy } of offers) {
      const told = at(5.5);
      await told.mend('ride-flat-from-high', remedy);
      expect(stops(await told.view()), remedy).toEqual([]);
    }
  });

  test('a change that was only chosen and not made leaves it standing', async () => {
    const told = at(5.5);
    await told.act({ do: 'choose', finding: 'ride-flat-from-high', remedy: 'ride-slower' });
    expect(stops(await told.view())).toEqual(['ride-flat-from-high:1']);
  });

  test('a danger is taken on only by its name, typed: a tick or a yes is refused', async () => {
    const told = at(5.5);
    for (const typed of [undefined, 'yes', 'I accept', 'I may be hurt'])
      expect(await refusalOf(told, { ...takenOn, typed } as never), typed).toBe('needs-danger');
    await told.act(takenOn);
    expect((await told.view()).build.chosen.at(-1)?.plan.typed).toBe(takenOn.typed);
  });

  test('it can be taken on by name: recorded, said on every later page, and asked for in words before the first ride', async () => {
    const told = at(5.5);
    const step = async () => (await told.view()).steps.find(s => s.key === 'plan/buy');
    expect((await step())?.state).not.toBe('to do');
    await told.act(takenOn);
    expect(keysOf(await told.view())).toEqual(['accepted-flat-from-high:0']);
    expect((await told.view()).build.chosen.at(-1)).toMatchObject({ remedy: 'accept-flat-from-high' });
    // Leaving it does not silence it.
    await told.act({ do: 'choose', finding: 'accepted-flat-from-high:0', remedy: 'leave-accepted' });
    expect(keysOf(await told.view())).toEqual(['accepted-flat-from-high:1']);
    const first = (await told.view()).steps.find(s => s.key === 'finish/first-use');
    expect(first?.shut).toContain('ride-accepted');
    await told.act({
      do: 'override',
      step: 'finish/first-use',
      gate: 'ride-accepted',
      why: 'a fall of a metre onto flat ground, taken on by the builder',
    });
    const after = (await told.view()).steps.find(s => s.key === 'finish/first-use');
    expect(after?.shut).not.toContain('ride-accepted');
    expect(wordGaps(plan(await told.view()))).toEqual([]);
  });

  test('a danger that grows after it was accepted is accepted no more', async () => {
    const told = at(5.5);
    await told.act(takenOn);
    await told.act({ do: 'read', step: 'plan/ride', ask: 'entry-speed', value: '6.2 m/s' });
    expect(stops(await told.view())).toContain('ride-flat-from-high');
  });
});

describe('other limits', () => {
  test('an open gap on a first ramp, and one that is missed at that speed, are filled', async () => {
    const told = new Told(
      'metric',
      ridden(4.5),
      ...landing({ gap: 2.5, drop_mm: 0, slope_deg: 25, length_m: 6 }),
      ...anchored(4, 2),
    );
    expect(stops(await told.view())).toEqual(expect.arrayContaining(['ride-gap-first', 'ride-short']));
    await told.mend('ride-gap-first', 'ride-fill-gap');
    expect(stops(await told.view())).toEqual([]);
  });

  test('too slow to come over the lip: the least speed is named, and enough turns it green', async () => {
    const told = new Told('metric', ridden(3), ...KIND_LANDING, ...anchored(4, 2));
    const first = openFindings(await told.view())[0];
    expect(first?.key).toBe('ride-stalls');
    // No losses: v² = 2gH; with them a little more.
    const least = first?.fills?.least;
    expect(typeof least === 'object' ? least.v : 0).toBeGreaterThan(Math.sqrt(2 * GRAVITY_m_s2 * 0.6));
    await told.mend('ride-stalls', 'ride-faster');
    expect(keysOf(await told.view())).toEqual([]);
  });

  test('a landing too short to be hit is lengthened to a window of three kilometres an hour', async () => {
    const told = new Told(
      'metric',
      ridden(5),
      ...landing({ table: 1, drop_mm: 0, slope_deg: 25, length_m: 1.5 }),
      ...anchored(4, 2),
    );
    expect(stops(await told.view())).toEqual(['ride-window-narrow']);
    await told.mend('ride-window-narrow', 'ride-longer-landing');
    const view = await told.view();
    expect(stops(view)).toEqual([]);
    expect(rideOf(view.situation).window?.width_m_s ?? 0).toBeGreaterThanOrEqual(3 / 3.6);
  });

  test('a novice’s lip past 35° is made gentler', async () => {
    const told = new Told(
      'metric',
      set('shape', { height: 700, exit: 40 * DEG }),
      ridden(5),
      ...KIND_LANDING,
      ...anchored(4, 2),
    );
    expect(stops(await told.view())).toContain('ride-steep-novice');
    await told.mend('ride-steep-novice', 'ride-gentler-long');
    expect(stops(await told.view())).toEqual([]);
  });

  test('what was not said is not judged, and is no approval: numbers wait for their step', async () => {
    const view = await new Told('metric').view();
    expect(keysOf(view)).toEqual([]);
    expect(plan(view).figures.find(f => f.id === 'lands')?.value).toEqual({
      is: 'unknown',
      needs: 'plan/ride',
    });
  });

  test('each danger that can be accepted is named in the deed, and said afterwards', () => {
    for (const remedy of Object.keys(WORDS.remedies).filter(key => key.startsWith('accept-'))) {
      expect(WORDS.remedies[remedy]?.deed, remedy).toMatch(/ may | not known/);
      // What has to be typed stands in the deed that is read.
      const danger = DANGERS[remedy.replace('accept-', '')];
      expect(danger, remedy).toBeDefined();
      expect(WORDS.remedies[remedy]?.deed?.toLowerCase(), remedy).toContain(danger);
      const after = WORDS.findings[remedy.replace('accept-', 'accepted-')];
      expect(after?.title, remedy).toMatch(/^Accepted: /);
      expect(after?.text.join(' '), remedy).toContain('the danger of');
    }
  });

  test('guidance, never approval: past the limits stop and ask an engineer', () => {
    expect(WORDS.cautions['ride-guidance']?.title).toBe('Guidance, never approval');
    expect(WORDS.cautions['ride-guidance']?.text).toContain('stop and ask an engineer');
    for (const [key, finding] of Object.entries(WORDS.findings).filter(([k]) => k.startsWith('strength-')))
      if (key !== 'strength-plate' && key !== 'strength-sag')
        expect(finding.sure, key).toMatch(/guidance, never approval/i);
  });
});

describe('where it lands, as a band that measuring narrows', () => {
  const told = (...more: Doing[]) => situation(ridden(5.2), ...KIND_LANDING, ...more);
  const bandWith = (...more: Doing[]) => {
    const s = told(...more);
    const said = saidLanding(s);
    if (said === null) throw new Error('no landing');
    const launch = launchOf(s, groundOf(said));
    if (launch === null) throw new Error('no launch');
    const band = bandOf(s, launch, groundOf(said));
    if (band === null) throw new Error('no band');
    return { launch, band, wide: band.all.far_m - band.all.near_m };
  };
  const speeds = (...list: number[]) => list.map((v, k) => read('finish/speeds', `speed${k + 1}`, v));
  const marks = (...list: number[]) => list.map((v, k) => read('finish/landings', `mark${k + 1}`, v));

  test('it is never one point', () => {
    const { band, wide } = bandWith();
    expect(wide).toBeGreaterThan(1);
    expect(band.plain_m).toBeGreaterThan(band.all.near_m);
    expect(band.plain_m).toBeLessThan(band.all.far_m);
  });

  test('speeds read at the finished ramp take the place of the one said, and narrow it', () => {
    const read5 = bandWith(...speeds(5.1, 5.2, 5.2, 5.3, 5.2));
    expect(read5.launch.foot_m_s).toBeCloseTo(5.2, 9);
    expect(read5.wide).toBeLessThan(bandWith().wide);
    expect(read5.wide).toBeLessThan(bandWith(...speeds(4.7, 5.7, 5.2, 5.2, 5.2)).wide);
  });

  test('marks of a rider who leaves at 26° are read back as 26°, and the band is theirs', () => {
    const fast = speeds(5.2, 5.2, 5.2, 5.2, 5.2);
    const { launch } = bandWith(...fast);
    const said = saidLanding(told());
    if (said === null) throw new Error('no landing');
    const mark = (exit: number) =>
      kept(flight({ ...groundOf(said), speed_m_s: launch.lip_m_s, exit_rad: exit * DEG })).distance_m;
    const at = marks(mark(25), mark(26), mark(27));
    const after = bandWith(...fast, ...at);
    expect((after.launch.told_rad?.likely ?? 0) / DEG).toBeCloseTo(26, 3);
    expect((after.launch.told_rad?.spread ?? 0) / DEG).toBeCloseTo(1, 3);
    expect(after.wide).toBeLessThan(0.5 * bandWith(...fast).wide);
    for (const v of [mark(25), mark(26), mark(27)]) {
      expect(v).toBeGreaterThan(after.band.all.near_m);
      expect(v).toBeLessThan(after.band.all.far_m);
    }
  });

  test('marks far apart leave it wide', () => {
    const near = bandWith(...marks(1.7, 1.75, 1.8));
    const far = bandWith(...marks(1.3, 1.7, 2.1));
    expect(far.wide).toBeGreaterThan(near.wide);
  });

  test('one mark tells nothing yet', () => {
    expect(bandWith(...marks(1.7)).launch.told_rad).toBeNull();
  });
});

describe('the proof and the first rides stand on the same loads', () => {
  test('a faster ride than three times the weight is proven with more', () => {
    const usual = situation();
    const fast = situation(ridden(9.5));
    expect(proofForce(usual)).toBeCloseTo(1.25 * 3 * 90 * GRAVITY_m_s2, 6);
    expect(proofForce(fast)).toBeGreaterThan(proofForce(usual));
    // Covered is then the speed that was said, not less.
    expect(fastestCovered(fast)).toBeCloseTo(9.5, 9);
    expect(fastestCovered(situation(ridden(4)))).toBeCloseTo(fastestCovered(usual), 9);
  });

  test('speeds are read with the gates of the first ride, landings marked after it', async () => {
    const view = await new Told('metric', ridden(5), ...KIND_LANDING, ...anchored(4, 2)).view();
    const steps = new Map(sheetOf(view, 'finish').steps.map(s => [s.key, s]));
    expect(steps.get('finish/speeds')?.gates?.map(g => g.id)).toContain('anchors');
    expect(steps.get('finish/landings')?.needs).toContain('finish/first-use');
  });
});
