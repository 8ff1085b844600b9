import type { RailName } from '../../ramp/design.ts';
import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import { FACES, firstEnd, jointTacks, skipAround } from '../joint-order.ts';
import { jointScene } from '../joint-scene.ts';
import type { Item, StepDraft } from '../sheet.ts';
import { sideView } from '../side-view.ts';
import type { Situation } from '../situation.ts';
import { FIT_GAP } from './limits.ts';
import { LEAST_LEG } from './opening.ts';
import { nextToCut, pieceItem, subjectOf } from './pieces.ts';
import { KEYS, standName, uprightsOf } from './side.ts';
import { springTableIds } from './spring-back.ts';

/** Vent of a closed piece, mm (common practice: 5 to 6). */
const VENT = 5;

/** An upright's lean from square, mm over mm (common practice: a small square shows it). */
const SQUARE = 1;
const SQUARE_OVER = 300;
/** No heat felt on the back of a hand held so far off: cold enough to go on, mm (common practice). */
const HAND_NEAR = 20;

/** Minutes for one upright: marked and cut, fitted and tacked, two faces at both ends, the other two (common practice, first frame). */
const MINUTES = { cut: [9, 15], fit: [8, 14], weld: [6, 11], turned: [5, 9] } as const;

const times = (n: number, [low, high]: readonly [number, number]): readonly [number, number] => [
  Math.max(5, n * low),
  Math.max(10, n * high),
];

/** Tacks of the uprights' joints, rail and base alike. */
const tacksOf = (s: Situation) => {
  const { tube, post } = s.ramp.design;
  return jointTacks(post.wall_mm, tube.wall_mm, post.depth_mm);
};

/** Uprights in the order their joints are welded, each begun at the other end than the last. */
const weldOrder = (s: Situation, rail: RailName) =>
  skipAround(uprightsOf(s, rail)).map((m, k) => ({ m, end: firstEnd(k, 'rail', 'foot') }));

/** The first pair of faces of every upright, one page for all of them: which joint, which end first. */
const weldJoints = (s: Situation, rail: RailName, turn: number, fills: StepDraft['fills']): StepDraft => {
  const key = KEYS.joints(rail);
  const order = weldOrder(s, rail);
  const items = order.map(
    ({ m, end }): Item => ({
      key: `${key}#${standName(m)}`,
      name: standName(m),
      note: { words: `says.brace-${end}-first` },
    }),
  );
  const at = Math.max(
    0,
    items.findIndex(i => !s.build.ticks.has(i.key) && !s.build.skips.has(i.key)),
  );
  const lit = order[at];
  const scene = lit === undefined ? null : jointScene(s, lit.m, lit.end);
  return {
    key,
    stage: 'brace',
    words: 'weld-joints',
    fills: { ...fills, one: FACES.upright[0], two: FACES.upright[1] },
    turn,
    needs: [KEYS.fit(rail), 'prep/vents'],
    uses: [`upright-opens@${rail}`],
    items,
    minutes: times(items.length, MINUTES.weld),
    ...(scene === null ? {} : { scene }),
  };
};

/** Uprights that were ticked as welded all round, in one, by a build older than this order. */
const weldedBefore = (s: Situation, rail: RailName): boolean =>
  s.build.ticks.has(KEYS.weld(rail)) &&
  !uprightsOf(s, rail).some(m => s.build.ticks.has(`${KEYS.joints(rail)}#${standName(m)}`));

/** Cutting the uprights to the rail that exists, fitting them, welding them. */
export const uprightSteps = (s: Situation, rail: RailName, turn: number): readonly StepDraft[] => {
  const uprights = uprightsOf(s, rail);
  const next = nextToCut(s, uprights);
  const curve = s.measured.curves.get(rail);
  const subject = next === undefined ? '' : subjectOf(next);
  const tacks = tacksOf(s);
  const toFit = uprights.find(m => !s.build.ticks.has(`${KEYS.fit(rail)}#${standName(m)}`)) ?? uprights[0];
  const fitted = toFit === undefined ? null : jointScene(s, toFit, 'rail');
  const fills = {
    rail,
    count: uprights.length,
    tack: { v: tacks.long_mm, as: 'length' },
    name: next === undefined ? '' : standName(next),
    gap: { v: FIT_GAP, as: 'length' },
    vent: { v: VENT, as: 'length' },
    clear: { v: CLEAR_OF_SLIT, as: 'length' },
    leg: { v: LEAST_LEG, as: 'length' },
    square: { v: SQUARE, as: 'length' },
    over: { v: SQUARE_OVER, as: 'length' },
    near: { v: HAND_NEAR, as: 'length' },
    phase: curve?.phase ?? 'as drawn',
  } as const;
  const n = uprights.length;
  return [
    {
      key: KEYS.uprights(rail),
      stage: 'brace',
      words: curve === undefined ? 'uprights-drawn' : 'uprights',
      fills,
      turn,
      needs: [`weld/cold-survey@${rail}`, KEYS.hold(rail)],
      uses: [`upright-long@${subject}`, `upright-short@${subject}`, `upright-rail-cut@${subject}`],
      line: { face: 'rail bottom face', rail },
      items: uprights.map(m => pieceItem(KEYS.uprights(rail), m)),
      minutes: times(n, MINUTES.cut),
      scene: sideView(s, next === undefined ? {} : { lit: next.need }),
    },
    {
      key: KEYS.fit(rail),
      stage: 'brace',
      words: 'fit-uprights',
      fills,
      turn: turn + 20,
      needs: [KEYS.uprights(rail), KEYS.join(rail), 'prep/vents', 'prep/clean-back', 'prep/fit'],
      uses: [],
      line: { face: 'hinge line', rail },
      items: uprights.map(m => ({
        key: `${KEYS.fit(rail)}#${standName(m)}`,
        name: standName(m),
        ...(m.along_mm === undefined ? {} : { value: { v: m.along_mm, as: 'length' } as const }),
      })),
      minutes: times(n, MINUTES.fit),
      ...(fitted === null ? {} : { scene: fitted }),
    },
    ...(weldedBefore(s, rail) ? [] : [weldJoints(s, rail, turn + 25, fills)]),
    {
      key: KEYS.weld(rail),
      stage: 'brace',
      words: 'weld-uprights',
      fills: {
        ...fills,
        order: weldOrder(s, rail)
          .map(o => standName(o.m))
          .join(', '),
      },
      turn: turn + 30,
      needs: [KEYS.joints(rail), 'prep/vents'],
      uses: [`rise-opens@${rail}`, `springs-back@${rail}`, ...springTableIds(rail)],
      tall: [`springs-back@${rail}`],
      minutes: times(n, MINUTES.turned),
    },
  ];
};
