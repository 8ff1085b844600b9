import { describe, expect, test } from 'vitest';
import type { View } from '../../src/coach/view.ts';
import type { Step } from '../../src/coach/walk.ts';
import { rowText } from '../../src/drawing/cells.ts';
import type { System } from '../../src/quantity/quantities.ts';
import { stagePlace } from '../../src/screen/places/stage-place.ts';
import { read } from '../demo/builds.ts';
import { Teller } from '../demo/tell.ts';
import { WORDS } from '../stages/word-gaps.ts';
import { nextIntent } from './hand.ts';
import { lookingDesk } from './looking-desk.ts';
import { pageFaults } from './page-faults.ts';

/** Small scatter of a rail that lies on its line, mm. */
const SCATTER = [0.5, 0, -0.5];

const ANSWERS: Readonly<Record<System, readonly (readonly [string, unknown])[]>> = {
  metric: [
    ['use', 'bike'],
    ['shape', { height: '600 mm', exit: '30°' }],
    ['width', '1200 mm'],
    ['tube', { depth_mm: '40', width_mm: '40', wall_mm: '3' }],
    ['cutter', { kind: 'thin disc', kerf_mm: '1.2' }],
    ['rider', '90 kg'],
    ['first', true],
  ],
  us: [
    ['use', 'bike'],
    ['shape', { height: `2'-6"`, run: `8'-0"` }],
    ['width', `4'`],
    ['tube', { depth_mm: '1 1/2 in', width_mm: '1 1/2 in', wall_mm: '0.120 in' }],
    ['cutter', { kind: 'thin disc', kerf_mm: '0.047 in' }],
    ['rider', '185 lb'],
    ['first', true],
  ],
};

/** Builds a whole frame, and looks at every page of each step as it comes up: the step, its why, its field, its findings. */
const lookAtAll = async (system: System): Promise<{ pages: number; faults: readonly string[] }> => {
  const told = new Teller(system === 'us' ? 72 : 71, '2026-09-14T16:30:00Z');
  told.begin({ kind: 'build-begun', name: 'Weir Bank kicker', system, invented: true });
  for (const [field, value] of ANSWERS[system]) await told.act({ do: 'answer', field, value });
  await told.act({ do: 'agree' });
  const { desk, lay } = lookingDesk(WORDS, system);
  const seen = new Set<string>();
  const faults = new Set<string>();
  let pages = 0;
  const look = (where: string): void => {
    pages++;
    desk.say(null);
    for (const fault of pageFaults(
      desk.rows().map(r => rowText(r)),
      system,
    ))
      faults.add(`${where}: ${fault}`);
  };
  const lookAt = (view: View, step: Step): void => {
    desk.root(stagePlace(desk, { stage: step.stage, step: step.key, item: 0 }));
    look(step.key);
    desk.place.act(desk, 'why', '');
    look(`${step.key}, why`);
    desk.pop();
    const asked = (step.asks ?? []).length > 0 || step.survey !== undefined || step.piece !== undefined;
    if (asked || step.items?.some(i => i.piece !== undefined) === true) {
      desk.place.act(desk, 'open', '');
      look(`${step.key}, asked`);
    }
    for (const finding of view.findings) {
      if (seen.has(finding.key)) continue;
      seen.add(finding.key);
      desk.root(desk.around.ways.finding(finding.key));
      look(finding.key);
    }
  };
  for (let i = 0; i < 900; i++) {
    const view = await told.view();
    const step = view.next;
    if (step === null) break;
    lay(view);
    const given = (step.asks ?? []).filter(a => view.build.readings.has(`${step.key}#${a.ask}`)).length;
    const page = `${step.key} ${step.state} ${given}`;
    if (!seen.has(page)) {
      seen.add(page);
      lookAt(view, step);
    }
    const intent = nextIntent(view, {
      read,
      offset: (_v, _s, _mm, at) => SCATTER[at % 3] ?? 0,
      choose: (_v, finding) =>
        finding.offers.find(o => o.remedy === 'leave')?.remedy ?? finding.offers[0]?.remedy ?? 'leave',
    });
    if (intent === null) break;
    await told.act(intent);
  }
  const done = await told.view();
  expect(done.next).toBeNull();
  lay(done);
  const { ways } = desk.around;
  const lit = { stage: 'plan', step: null, item: 0 } as const;
  for (const place of [
    ways.order(lit),
    ways.journal('plan'),
    ways.glossary('plan'),
    ways.hurt(lit),
    ways.findings('plan'),
    ways.design(),
    ways.help('plan', [{ act: 'open' }, { act: 'help' }], []),
  ]) {
    desk.root(place);
    look('at the end');
  }
  return { pages, faults: [...faults] };
};

describe('every page of a whole build at 80 x 24', () => {
  test.each(['metric', 'us'] as const)(
    'uses its rows before it cuts, shows w where it does, and has one system of units: %s',
    async system => {
      const { pages, faults } = await lookAtAll(system);
      expect(pages).toBeGreaterThan(400);
      expect(faults).toEqual([]);
    },
  );
});

describe('what such a page may not have', () => {
  const KEYS = ' Space tick   h keys';
  test.each([
    [
      'cut with 3 rows empty',
      ['', '', '', ' Why  Wind takes … w', '', '', '', '', '', ' Space  w more  h keys'],
    ],
    ['no w in the bottom row', [' Why  Wind takes … w', KEYS]],
    ['cut inside a word', [' ✓ what it b…', KEYS]],
    ['not us', [' Cut 40 mm off', KEYS]],
    ['too fine', [' The frame weighs 156.1 lb.', KEYS]],
    ['unfilled', [' Cut {long} off', KEYS]],
    ['nonsense', [' NaN in', KEYS]],
    ['takes a tick', [' Measure   The door', KEYS]],
    ['plural', [' back at 1 builds', KEYS]],
  ])('%s', (fault, rows) => {
    expect(pageFaults(rows, 'us').join('\n')).toContain(fault);
  });

  test('a good one has no fault', () => {
    expect(pageFaults([' 22 in all, 5 7/8 in apart, 12.1 lb = 5.5 kg', KEYS], 'us')).toEqual([]);
  });
});
