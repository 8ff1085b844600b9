import type { DesignAnswers } from '../../ramp/design.ts';
import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import type { Problem } from '../../ramp/problems.ts';
import type { Fill, Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { hasProblem, variant } from './variant.ts';

/** Minutes to change an answer while nothing is cut. */
const CHANGE_MINUTES = 3;
/** Lip heights tried when a higher one is looked for, mm. */
const LIP_STEP = 10;
const DEGREE = Math.PI / 180;
/** Radii tried when longer flats are looked for, mm. */
const RADIUS_STEP = 100;

type Shape = DesignAnswers['shape'];

const length = (v: number): Fill => ({ v, as: 'length' });
const thickness = (v: number): Fill => ({ v, as: 'thickness' });
const angle = (v: number): Fill => ({ v, as: 'angle' });

const leave = (remedy: string): Offer => ({ remedy, minutes: 0, plan: {} });

/** Rolled rails have no flats; asking a fabricator and fetching them is one's own time. */
const rolled = (remedy: string): Offer => ({
  remedy,
  minutes: 90,
  plan: { field: 'route', value: 'rolled' },
});

const change = (remedy: string, field: string, value: unknown, fills: Fills): Offer => ({
  remedy,
  fills,
  minutes: CHANGE_MINUTES,
  plan: { field, value },
});

/** The lowest lip at the exit angle in hand for which `good` holds, up to twice the height. */
const lipWhere = (s: Situation, good: (shape: Shape) => boolean): Shape | null => {
  const { height_mm, exit_rad } = s.ramp.design.arc;
  const from = Math.ceil(height_mm / LIP_STEP) * LIP_STEP;
  for (let height = from; height <= 2 * height_mm; height += LIP_STEP) {
    const shape: Shape = { height, exit: exit_rad };
    if (good(shape)) return shape;
  }
  return null;
};

const steep = (s: Situation): readonly Offer[] => {
  const { arc } = s.ramp.design;
  const kept: Shape = { height: arc.height_mm, exit: 45 * DEGREE };
  const lower: Shape = { radius: arc.radius_mm, exit: 45 * DEGREE };
  const same = variant(s, { shape: kept });
  const down = variant(s, { shape: lower });
  return [
    ...(same === null
      ? []
      : [
          change('steep-longer', 'shape', kept, {
            run: length(same.design.arc.run_mm),
            radius: length(same.design.arc.radius_mm),
            exit: angle(45 * DEGREE),
          }),
        ]),
    ...(down === null
      ? []
      : [
          change('steep-lower', 'shape', lower, {
            height: length(down.design.arc.height_mm),
            exit: angle(45 * DEGREE),
          }),
        ]),
    leave('leave-steep'),
  ];
};

const entryLong = (s: Situation): readonly Offer[] => {
  const d = s.ramp.design;
  const offers: Offer[] = [];
  // The share hangs on the lip's height against deck and tube, hardly on the angle: only a higher lip brings it down.
  const shape = lipWhere(s, sh => {
    const v = variant(s, { shape: sh });
    return v !== null && !hasProblem(v, 'entry-long');
  });
  if (shape !== null) {
    const v = variant(s, { shape });
    offers.push(
      change('entry-higher', 'shape', shape, {
        height: length(shape.height ?? 0),
        run: length(v?.design.arc.run_mm ?? 0),
        share: { v: (v?.entryShare ?? 0) * 100, as: 'percent' },
      }),
    );
  }
  const by = s.build.system === 'us' ? 12.7 : 10;
  const tube = { ...d.tube, depth_mm: d.tube.depth_mm - by };
  const flat = variant(s, { tube });
  if (flat !== null && flat.entryShare < s.ramp.entry.share) {
    offers.push(
      change('entry-shallow-tube', 'tube', tube, {
        depth: length(tube.depth_mm),
        share: { v: flat.entryShare * 100, as: 'percent' },
      }),
    );
  }
  return [
    ...offers,
    { remedy: 'entry-ribs', minutes: 0, plan: { method: 'plate on ribs' } },
    leave('leave-entry'),
  ];
};

const flatsTight = (s: Situation): readonly Offer[] => {
  const d = s.ramp.design;
  const pitch = s.ramp.plans.get(s.ramp.rails[0] ?? '')?.pitch_mm ?? 0;
  const offers: Offer[] = [];
  const most = pitch - 2 * CLEAR_OF_SLIT;
  const sizes = s.build.system === 'us' ? [31.75, 25.4, 19.05] : [35, 30, 25, 20];
  const side = sizes.find(size => size <= most && size < d.post.depth_mm);
  if (side !== undefined) {
    const post = { ...d.post, depth_mm: side, width_mm: side };
    if (variant(s, { post }) !== null)
      offers.push(change('tight-post', 'post', post, { side: length(side) }));
  }
  for (let k = d.cutter.kerf_mm + 0.1; k <= d.cutter.kerf_mm + 1; k += 0.1) {
    const cutter = { ...d.cutter, kerf_mm: Math.round(k * 100) / 100 };
    const v = variant(s, { cutter });
    if (v === null || hasProblem(v, 'flats-tight')) continue;
    offers.push(
      change('tight-kerf', 'cutter', cutter, {
        kerf: thickness(cutter.kerf_mm),
        count: v.plan.slits.length,
        pitch: { v: v.plan.pitch_mm, as: 'slit' },
      }),
    );
    break;
  }
  for (let r = d.arc.radius_mm + RADIUS_STEP; r <= 2 * d.arc.radius_mm; r += RADIUS_STEP) {
    const radius = Math.round(r / RADIUS_STEP) * RADIUS_STEP;
    const shape: Shape = { exit: d.arc.exit_rad, radius };
    const v = variant(s, { shape });
    if (v === null || hasProblem(v, 'flats-tight')) continue;
    offers.push(
      change('tight-radius', 'shape', shape, {
        radius: length(radius),
        height: length(v.design.arc.height_mm),
        pitch: { v: v.plan.pitch_mm, as: 'slit' },
      }),
    );
    break;
  }
  return [...offers, rolled('tight-rolled'), leave('leave-tight')];
};

const kinkFelt = (s: Situation): readonly Offer[] => {
  const d = s.ramp.design;
  const offers: Offer[] = [];
  for (let k = d.cutter.kerf_mm - 0.05; k >= 0.8 - 1e-9; k -= 0.05) {
    const cutter = { ...d.cutter, kerf_mm: Math.round(k * 100) / 100 };
    const v = variant(s, { cutter });
    if (v === null || hasProblem(v, 'kink-felt')) continue;
    offers.push(
      change('kink-kerf', 'cutter', cutter, {
        kerf: thickness(cutter.kerf_mm),
        count: v.plan.slits.length,
        close: angle(v.plan.slits[0]?.close_rad ?? 0),
      }),
    );
    break;
  }
  const by = s.build.system === 'us' ? 12.7 : 10;
  const tube = { ...d.tube, depth_mm: d.tube.depth_mm + by, width_mm: d.tube.width_mm + by };
  const v = variant(s, { tube });
  if (v !== null && !hasProblem(v, 'kink-felt')) {
    offers.push(
      change('kink-tube', 'tube', tube, { depth: length(tube.depth_mm), count: v.plan.slits.length }),
    );
  }
  return [
    ...offers,
    { remedy: 'kink-packer', minutes: 40, plan: { packer: true } },
    rolled('kink-rolled'),
    leave('leave-kink'),
  ];
};

const OFFERS: Readonly<Record<string, (s: Situation) => readonly Offer[]>> = {
  steep,
  'entry-long': entryLong,
  'flats-tight': flatsTight,
  'kink-felt': kinkFelt,
};

const finding = (s: Situation, p: Problem): Finding | null => {
  const own = OFFERS[p.code]?.(s);
  // Where no single change mends it, the design page is still open.
  const byHand: Offer = { remedy: 'design-by-hand', minutes: 10, plan: { field: p.fields[0] ?? 'shape' } };
  const offers = own === undefined || own.length >= 3 ? own : [byHand, ...own];
  return offers === undefined
    ? null
    : {
        key: `plan-${p.code}`,
        stage: 'plan',
        severity: 'watch',
        words: `plan-${p.code}`,
        fills: p.fills,
        offers: sortOffers(offers),
      };
};

/** What the design can be built with, and what the catch is: each warning with the answers that would mend it. */
export const warningFindings = (s: Situation): readonly Finding[] =>
  s.ramp.problems
    .filter(p => p.severity === 'warn')
    .map(p => finding(s, p))
    .filter(f => f !== null);
