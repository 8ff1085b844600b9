import type { View } from '../../coach/view.ts';
import type { Quantity } from '../../quantity/quantities.ts';
import { read } from '../../quantity/read.ts';
import type { DesignField, Tube } from '../../ramp/design.ts';

/** What was said so far, by part: a choice, or a number with its unit. */
export type Said = Readonly<Record<string, string>>;

type Common = Readonly<{
  id: string;
  /** Word of the trail. */
  question: string;
  /** Key of its words under `questions`. */
  words: string;
  field: DesignField;
  /** Answers the whole field once this part is said. */
  last: boolean;
  when?: (said: Said, view: View) => boolean;
  /** Not asked at the beginning, where its default does for most: only when the design is looked at again. */
  later?: true;
}>;

export type Part = Common &
  (
    | Readonly<{
        is: 'choice';
        choices: (said: Said, view: View) => readonly string[];
        now: (view: View) => string;
      }>
    | Readonly<{
        is: 'number';
        as: Quantity;
        /** Unit of the inner number, as the reader knows it. */
        inner: string;
        start: (said: Said, view: View) => number;
        possible?: readonly [number, number];
        /** Its name among numbers that may be typed at once: "depth". An empty Enter at the first of them takes them all. */
        called?: string;
      }>
  );

/** What can be meant at all, inner units: said at the number, not two questions later. */
const POSSIBLE: Readonly<Record<string, readonly [number, number]>> = {
  height: [60, 4000],
  'second-exit': [Math.PI / 90, (5 * Math.PI) / 12],
  'second-length': [200, 40_000],
  width: [200, 6000],
  'tube.depth_mm': [10, 150],
  'tube.width_mm': [10, 150],
  'tube.wall_mm': [0.5, 12],
  'post.depth_mm': [10, 150],
  'post.width_mm': [10, 150],
  'post.wall_mm': [0.5, 12],
  'cutter.kerf_mm': [0.2, 6],
  rider: [10, 250],
  'door.width_mm': [300, 20_000],
  'door.height_mm': [300, 20_000],
  'deck.layer_mm': [3, 30],
  'deck.layers': [1, 6],
  'deck.thickness_mm': [12, 80],
  'deck.board_mm': [50, 400],
  straight: [0, 2000],
  spacing: [100, 1500],
  diagonals: [80, 2000],
  rails: [2, 8],
  grinder: [75, 300],
  clamps: [0, 60],
};

/** A question answered by a number of the quantity; `inner` is the unit it is kept in. */
export const num = (
  id: string,
  question: string,
  words: string,
  field: DesignField,
  as: Quantity,
  inner: string,
  start: (said: Said, view: View) => number,
  more: Partial<Common> & Readonly<{ called?: string }> = {},
): Part => ({
  id,
  question,
  words,
  field,
  last: true,
  ...(POSSIBLE[id] === undefined ? {} : { possible: POSSIBLE[id] }),
  is: 'number',
  as,
  inner,
  start,
  ...more,
});

/** A question answered by one of a few. */
export const choice = (
  id: string,
  question: string,
  words: string,
  field: DesignField,
  choices: readonly string[],
  now: (view: View) => string,
  more: Partial<Common> = {},
): Part => ({
  id,
  question,
  words,
  field,
  last: true,
  is: 'choice',
  choices: () => choices,
  now,
  ...more,
});

/** A tube's three sizes. Where another depth was just said, the usual width is a square one's. */
export const section = (
  field: 'tube' | 'post',
  question: string,
  words: string,
  now: (view: View) => Tube,
  more: Partial<Common> = {},
): Part[] => [
  num(`${field}.depth_mm`, question, words, field, 'thickness', 'mm', (_s, v) => now(v).depth_mm, {
    ...more,
    last: false,
    called: 'depth',
  }),
  num(
    `${field}.width_mm`,
    question,
    'tube-width',
    field,
    'thickness',
    'mm',
    (said, v) => {
      const { depth_mm, width_mm } = now(v);
      const depth = read(said[`${field}.depth_mm`] ?? '', 'thickness', v.build.system);
      return depth.ok && Math.abs(depth.value - depth_mm) > 1e-9 ? depth.value : width_mm;
    },
    { ...more, last: false, called: 'width' },
  ),
  num(`${field}.wall_mm`, question, 'tube-wall', field, 'thickness', 'mm', (_s, v) => now(v).wall_mm, {
    ...more,
    called: 'wall',
  }),
];
