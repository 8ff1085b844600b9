import { REFUSED_USES } from '../../coach/decide/answer.ts';
import type { View } from '../../coach/view.ts';
import type { ShapeName } from '../../ramp/design.ts';
import { choice, num, type Part, type Said, section } from './design-part.ts';
import { LATER } from './later-parts.ts';

const second = (said: Said, view: View): ShapeName => {
  const given = Object.keys(view.build.answers.shape ?? {}).find(k => k !== 'height');
  return (said.second ?? given ?? 'exit') as ShapeName;
};

const d = (view: View) => view.ramp.design;
const isSheet = (said: Said): boolean => said['deck.kind'] !== 'boards';

/** The questions in their order; several parts make one answer. */
export const PARTS: readonly Part[] = [
  choice(
    'use',
    'purpose',
    'use',
    'use',
    ['bike', 'scooter', 'skate', 'inline skates', 'other'],
    v => d(v).use,
  ),
  choice('use-other', 'purpose', 'use', 'use', REFUSED_USES, () => '', {
    last: false,
    when: said => said.use === 'other',
  }),
  num('height', 'lip', 'height', 'shape', 'length', 'mm', (_s, v) => d(v).arc.height_mm),
  choice(
    'second',
    'shape',
    'second',
    'shape',
    ['exit', 'run', 'radius', 'arc'],
    v => Object.keys(v.build.answers.shape ?? {}).find(k => k !== 'height') ?? 'exit',
    { last: false },
  ),
  num('second-exit', 'shape', 'second-value', 'shape', 'angle', 'rad', (_s, v) => d(v).arc.exit_rad, {
    when: (s, v) => second(s, v) === 'exit',
  }),
  num(
    'second-length',
    'shape',
    'second-value',
    'shape',
    'length',
    'mm',
    (s, v) => d(v).arc[`${second(s, v)}_mm` as 'run_mm'] ?? d(v).arc.run_mm,
    { when: (s, v) => second(s, v) !== 'exit' },
  ),
  num('width', 'width', 'width', 'width', 'length', 'mm', (_s, v) => d(v).width),
  ...section('tube', 'tube', 'tube', v => d(v).tube),
  choice(
    'cutter.kind',
    'slits',
    'cutter',
    'cutter',
    ['thin disc', 'band saw', 'hacksaw', 'chop saw'],
    v => d(v).cutter.kind,
    { last: false },
  ),
  num('cutter.kerf_mm', 'slits', 'kerf', 'cutter', 'thickness', 'mm', (_s, v) => d(v).cutter.kerf_mm),
  num('rider', 'rider', 'rider', 'rider', 'mass', 'kg', (_s, v) => d(v).rider),
  num('door.width_mm', 'door', 'door', 'door', 'length', 'mm', (_s, v) => d(v).door.width_mm, {
    last: false,
    called: 'width',
  }),
  num('door.height_mm', 'door', 'door-height', 'door', 'length', 'mm', (_s, v) => d(v).door.height_mm, {
    called: 'height',
  }),
  choice('deck.kind', 'deck', 'deck', 'deck', ['sheet', 'boards'], v => d(v).deck.kind, { last: false }),
  num(
    'deck.layer_mm',
    'deck',
    'deck-layer',
    'deck',
    'thickness',
    'mm',
    (_s, v) => (d(v).system === 'us' ? 9.525 : 9),
    { last: false, when: isSheet },
  ),
  num('deck.layers', 'deck', 'deck-layers', 'deck', 'count', '', () => 2, { when: isSheet }),
  num(
    'deck.thickness_mm',
    'deck',
    'deck-board',
    'deck',
    'thickness',
    'mm',
    (_s, v) => (d(v).system === 'us' ? 38.1 : 38),
    { last: false, when: s => !isSheet(s) },
  ),
  num(
    'deck.board_mm',
    'deck',
    'deck-board-width',
    'deck',
    'length',
    'mm',
    (_s, v) => (d(v).system === 'us' ? 139.7 : 140),
    { when: s => !isSheet(s) },
  ),
  choice('first', 'first', 'first', 'first', ['true', 'false'], v => String(d(v).first)),
  ...LATER,
];

/** The numbers that may be typed at once with this one, itself first; none where it is asked by itself. */
export const togetherWith = (part: Part): readonly (Part & { is: 'number' })[] => {
  if (part.is !== 'number' || part.called === undefined) return [];
  const all = PARTS.filter(
    (p): p is Part & { is: 'number' } =>
      p.is === 'number' && p.field === part.field && p.called !== undefined,
  );
  return all[0]?.id === part.id ? all : [];
};

/** Parts of a record field that were said, without the field's name in front. */
const parts = (said: Said, field: string): Record<string, string> =>
  Object.fromEntries(
    Object.entries(said)
      .filter(([k]) => k.startsWith(`${field}.`))
      .map(([k, v]) => [k.slice(field.length + 1), v]),
  );

/** Whether a part needs no asking any more: its field is answered; a curve only by two sizes, the lip alone is one. */
export const isAnswered = (part: Part, answers: View['build']['answers']): boolean =>
  part.field === 'shape' && part.id !== 'height'
    ? Object.keys(answers.shape ?? {}).length > 1
    : answers[part.field] !== undefined;

/** The answer that is complete once a part is said; null while its field wants another part. */
export const answerFor = (part: Part, said: Said, view: View): { field: string; value: unknown } | null => {
  if (!part.last) return null;
  switch (part.field) {
    case 'use':
      return said.use === 'other' ? null : { field: 'use', value: said.use };
    case 'shape': {
      const height =
        said.height ?? `${view.build.answers.shape?.height ?? view.ramp.design.arc.height_mm} mm`;
      if (part.id === 'height') {
        // The second size stays what it was when the lip alone is changed.
        const [other] = Object.entries(view.build.answers.shape ?? {}).filter(([k]) => k !== 'height');
        const kept =
          other === undefined ? {} : { [other[0]]: `${other[1]} ${other[0] === 'exit' ? 'rad' : 'mm'}` };
        return { field: 'shape', value: { height, ...kept } };
      }
      return { field: 'shape', value: { height, [second(said, view)]: said[part.id] } };
    }
    case 'first':
      return { field: 'first', value: said.first === 'true' };
    case 'deck': {
      const given = parts(said, 'deck');
      const { kind, layers, ...rest } = given;
      return {
        field: 'deck',
        value: {
          kind: kind ?? 'sheet',
          ...rest,
          ...(layers === undefined ? {} : { layers: Number.parseInt(layers, 10) }),
        },
      };
    }
    case 'tube':
    case 'post':
    case 'door':
    case 'cutter':
      return { field: part.field, value: parts(said, part.field) };
    default:
      return { field: part.field, value: said[part.id] };
  }
};
