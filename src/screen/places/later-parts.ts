import type { View } from '../../coach/view.ts';
import { choice, num, type Part, section } from './design-part.ts';

const d = (view: View) => view.ramp.design;

/** What is not asked at the beginning, where the usual does for most: each to be changed when the design is looked at again. */
export const LATER: readonly Part[] = [
  choice(
    'ground',
    'ground',
    'ground',
    'ground',
    ['concrete', 'gravel', 'sand', 'clay', 'dry lawn', 'wet lawn', 'soft or filled ground'],
    v => d(v).ground,
    { later: true },
  ),
  num('straight', 'straight', 'straight', 'straight', 'length', 'mm', (_s, v) => d(v).straight, {
    later: true,
  }),
  num('spacing', 'uprights', 'spacing', 'spacing', 'length', 'mm', (_s, v) => d(v).spacing, { later: true }),
  num('diagonals', 'diagonals', 'diagonals', 'diagonals', 'length', 'mm', (_s, v) => d(v).diagonals, {
    later: true,
  }),
  ...section('post', 'posts', 'post', v => d(v).post, { later: true }),
  choice('route', 'bending', 'route', 'route', ['slit', 'rolled'], v => d(v).route, { later: true }),
  choice(
    'sequence',
    'order',
    'sequence',
    'sequence',
    ['in step', 'one after the other'],
    v => d(v).sequence,
    { later: true },
  ),
  choice(
    'tolerance',
    'tolerance',
    'tolerance',
    'tolerance',
    ['novice', 'careful shop'],
    v => d(v).tolerance,
    { later: true },
  ),
  num('grinder', 'disc', 'grinder', 'grinder', 'length', 'mm', (_s, v) => d(v).grinder, { later: true }),
  num('clamps', 'clamps', 'clamps', 'clamps', 'count', '', (_s, v) => d(v).clamps, { later: true }),
  choice('standard', 'standard', 'standard', 'standard', ['EN', 'AISC'], v => d(v).standard, { later: true }),
  num('rails', 'rails', 'rails', 'rails', 'count', '', (_s, v) => v.ramp.rails.length, { later: true }),
];
