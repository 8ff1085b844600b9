import type { View } from '../../src/coach/view.ts';
import type { Step } from '../../src/coach/walk.ts';
import { offsetsAt } from '../../src/reckon/rail/forward.ts';
import { evenSlits } from '../../src/reckon/rail/rail-plan.ts';
import type { Ask } from '../../src/stages/sheet.ts';
import { type Hand, nextIntent } from '../walk/hand.ts';
import { Teller } from './tell.ts';

const half = (v: number): number => Math.round(v * 2) / 2;

/** Small honest scatter of a tape read to half a millimetre; the same in every making. */
const jitter = (i: number): number => [0.4, -0.3, 0.1, -0.5, 0.2, 0.5, -0.2][i % 7] ?? 0;

/** What the person of the metric demo reads. Invented. */
export const read = (view: View, step: Step, ask: Ask): number | null => {
  const key = `${step.key}#${ask.ask}`;
  const rail = /@([A-Z])/.exec(step.key)?.[1];
  const plan = view.ramp.plans.get(rail ?? 'A');
  if (step.key.startsWith('cut/measure-tube')) return { depth: 40, width: 40, wall: 3 }[ask.ask] ?? null;
  // Five slits closed: 1.2 mm over a lever of 38.5 mm each. Three welded: 4.2 mrad more each.
  if (key === 'cut/test-piece#turn') return (5 * 1.2) / 38.5;
  if (key === 'weld/test-piece#turn') return (5 * 1.2) / 38.5 + 3 * 0.0042;
  if (step.key.startsWith('cut/deburr-third')) return 1.2;
  if (step.key.startsWith('tack/read-third') && plan !== undefined) {
    const third = Number(step.key.split(':')[1]);
    return plan.slits.filter(s => s.third <= third).reduce((n, s) => n + s.close_rad, 0);
  }
  if (step.key.startsWith('weld/read-bend') && plan !== undefined) return plan.turn_rad;
  if (ask.as === 'temperature') return ask.ask === 'steel' ? 15 : 16;
  if (ask.as === 'percent') return 60;
  if (ask.ask === 'landing-down') return 0.1;
  if (ask.ask === 'lead') return 6;
  if (ask.ask === 'helpers') return 5;
  return null;
};

/** Rail B: slit 5 closed 14 mrad too far and the rest a little, as laid on its tack line. */
export const offset = (view: View, step: Step, station: number, index: number): number => {
  const survey = step.survey;
  if (survey === undefined) return 0;
  if (survey.kind === 'sideways') return half(0.5 + jitter(index));
  const plan = view.ramp.plans.get(survey.rail);
  if (plan === undefined) return 0;
  if (survey.rail !== 'B') return half(jitter(index));
  const line = survey.to === 'tack line' ? plan.tack : plan.finished;
  const count = plan.slits.length;
  const errors = Array.from({ length: count }, (_, i) => (i === 4 ? 0.0148 : 0.0008));
  const offsets = offsetsAt(
    {
      radius_mm: line.radius_mm,
      bend_rad: line.turn_rad,
      slits_mm: evenSlits(line.radius_mm, line.turn_rad, count),
    },
    errors,
    { y_mm: 0.5, turn_rad: 0.0005 },
    [station],
  );
  return half((offsets[0] ?? 0) + 0.3 * jitter(index));
};

/** The metric demo: rail A welded and read true, rail B tacked and off its line. */
export const metricDemo = async (): Promise<Teller> => {
  const t = new Teller(41, '2026-09-14T16:30:00Z');
  t.begin({ kind: 'build-begun', name: 'Orchard Bank kicker', system: 'metric', invented: true });
  const answers: [string, unknown][] = [
    ['use', 'bike'],
    ['shape', { height: '600 mm', exit: '30°' }],
    ['width', '1200 mm'],
    ['tube', { depth_mm: '40', width_mm: '40', wall_mm: '3' }],
    ['cutter', { kind: 'thin disc', kerf_mm: '1.2' }],
    ['rider', '90 kg'],
    ['door', { width_mm: '2100', height_mm: '2000' }],
    ['deck', { kind: 'sheet', layer_mm: '9', layers: 2 }],
    ['first', true],
    ['sequence', 'one after the other'],
  ];
  for (const [field, value] of answers) await t.act({ do: 'answer', field, value });
  await t.act({ do: 'agree' });
  const hand: Hand = { read, offset };
  for (let i = 0; i < 600; i++) {
    const view = await t.view();
    const tacked = view.build.surveys.some(
      s => s.rail === 'B' && s.kind === 'curve' && s.phase === 'tacked' && s.closed,
    );
    if (tacked) {
      await t.act({ do: 'stop', ...(view.next === null ? {} : { step: view.next.key }) });
      return t;
    }
    const intent = nextIntent(view, hand);
    if (intent === null) break;
    await t.act(intent);
  }
  throw new Error('rail B was never tacked and read');
};

/** The US demo: still in plan. */
export const usDemo = async (): Promise<Teller> => {
  const t = new Teller(42, '2026-10-24T14:00:00Z');
  t.begin({ kind: 'build-begun', name: 'Mill Lane launch', system: 'us', invented: true });
  const answers: [string, unknown][] = [
    ['use', 'bike'],
    ['shape', { height: `2'-6"`, run: `8'-0"` }],
    ['width', `4'`],
    ['tube', { depth_mm: '1 1/2 in', width_mm: '1 1/2 in', wall_mm: '0.120 in' }],
    ['cutter', { kind: 'thin disc', kerf_mm: '0.047 in' }],
    ['rider', '185 lb'],
    ['door', { width_mm: `7'-6"`, height_mm: `6'-8"` }],
    ['deck', { kind: 'sheet', layer_mm: '3/8 in', layers: 2 }],
    ['first', true],
  ];
  for (const [field, value] of answers) await t.act({ do: 'answer', field, value });
  await t.act({ do: 'agree' });
  for (let i = 0; i < 6; i++) {
    const view = await t.view();
    if (view.next === null || view.next.stage !== 'plan') break;
    const intent = nextIntent(view, { read });
    if (intent !== null) await t.act(intent);
  }
  await t.act({ do: 'stop' });
  return t;
};
