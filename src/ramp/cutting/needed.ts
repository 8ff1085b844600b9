import { asShown } from '../../quantity/as-shown.ts';
import type { RailName } from '../design.ts';
import type { EndCuts, Member, MemberKind } from '../member.ts';
import type { Ramp } from '../ramp.ts';
import { type StockSection, sectionOf } from './stock-section.ts';

/**
 * When a piece is cut: with the rails; when the rails have come out (its length does not hang on their curve); to the rail as
 * it came out (its steel is held back); or never, because it is a spare.
 */
export type CutWhen = 'now' | 'after the rails' | 'to the rail' | 'spare';

/** One piece of a cutting plan, with all that is needed to saw it. */
export type Needed = Readonly<{
  /** Name of the need in the design; `spare rail`, `spare`, `board@:3`, `deck strip@:2.1` for what is no member. */
  need: string;
  kind: MemberKind | 'spare rail' | 'spare' | 'board' | 'deck strip';
  rail?: RailName;
  /** Long point to long point, and short, mm. */
  long_mm: number;
  short_mm: number;
  ends: EndCuts;
  /** Side of the tube that a mitre runs across, mm. */
  across_mm: number;
  when: CutWhen;
  /** Its length is final: a piece cut to a rail has none until the rail was read. */
  known: boolean;
  /** What it may come out longer than drawn while its length is not known, mm. */
  over_mm: number;
  /** Length the plan keeps for it, mm: never less than the long point. */
  plan_mm: number;
}>;

/** A piece that was sawn, by the need it was cut for. A spoiled one has used its steel all the same. */
export type Sawn = Readonly<{
  need: string;
  section: string;
  length_mm: number;
  spoiled: boolean;
  /** All that was left of a bar, gone to another build. */
  isEnd?: true;
}>;

/**
 * An upright cut later may come out longer than drawn by this, mm: scatter of the kerf moves the lip by 8 mm either way
 * (common practice), and a saw takes its share [practice].
 */
export const HELD_OVER = 10;
/** The tenth that is bought over (common practice: one rail and 10 %). */
const SPARE_SHARE = 0.1;
/** Test pieces come out of the rail tube's spare: three of 300 mm, or a foot (common practice). */
const TEST_PIECES = { metric: 3 * 300, us: 3 * 304.8 } as const;

/** A little under the usual bar of 6 m or 20 ft, mm: a wide ramp's tenth is more than one bar, and comes in equal parts. */
const LONGEST_SPARE = 5800;
/** A part as it goes home is a little longer than its piece, mm; and no bar is parted finer than this, mm. */
const CARRY_ROOM = 60;
const LEAST_CARRY = 600;

const SQUARE: EndCuts = { first_rad: 0, second_rad: 0 };

const WITH_RAILS: ReadonlySet<MemberKind> = new Set(['curved rail', 'base rail', 'side plate', 'foot plate']);
/** Their length hangs on the width alone; the entry is set when the rails have come out. */
const BETWEEN: ReadonlySet<MemberKind> = new Set([
  'crossmember',
  'base crossmember',
  'bearer',
  'entry plate',
]);

export const cutWhen = (kind: MemberKind): CutWhen =>
  WITH_RAILS.has(kind) ? 'now' : BETWEEN.has(kind) ? 'after the rails' : 'to the rail';

/** Whether the curve that a piece is cut to has been read off the welded rail. */
const curveIsRead = (ramp: Ramp, m: Member): boolean =>
  (m.rail === undefined ? ramp.rails : [m.rail]).every(
    rail => (ramp.shapes.get(rail)?.survey ?? null) !== null,
  );

/** What a blade set to an angle takes along the bar beyond its kerf, mm (kerf/cos − kerf; derived). */
const slantedKerf = (kerf_mm: number, ends: EndCuts): number =>
  kerf_mm / Math.cos(Math.max(Math.abs(ends.first_rad), Math.abs(ends.second_rad))) - kerf_mm;

const neededOf = (ramp: Ramp, m: Member, kerf_mm: number): Needed => {
  const when = cutWhen(m.kind);
  const known = when !== 'to the rail' || curveIsRead(ramp, m);
  const over_mm = known ? 0 : asShown(HELD_OVER, 'length', ramp.design.system);
  // As a tape reads it: nobody marks finer, and the sums of a bar close.
  const long_mm = asShown(m.long_mm, 'length', ramp.design.system);
  return {
    need: m.need,
    kind: m.kind,
    ...(m.rail === undefined ? {} : { rail: m.rail }),
    long_mm,
    short_mm: asShown(m.short_mm, 'length', ramp.design.system),
    ends: m.ends,
    across_mm: m.tube.depth_mm,
    when,
    known,
    over_mm,
    plan_mm: long_mm + over_mm + slantedKerf(kerf_mm, m.ends),
  };
};

/** A stretch that is bought and stays whole. */
const spare = (need: string, kind: 'spare rail' | 'spare', long_mm: number): Needed => ({
  need,
  kind,
  long_mm,
  short_mm: long_mm,
  ends: SQUARE,
  across_mm: 0,
  when: 'spare',
  known: true,
  over_mm: 0,
  plan_mm: long_mm,
});

export type Wanted = Readonly<{
  section: StockSection;
  pieces: readonly Needed[];
  /** Every need of the section, sawn or not. */
  needs: ReadonlySet<string>;
}>;

/**
 * Steel still to be cut, by section: what is not sawn yet, and the spare, which comes before the waste is made small.
 * A rail spoiled has used the spare rail; a rail whose curve has been read needs none any more.
 * @param sawn pieces that are cut, spoiled ones too
 * @param kerf_mm of the saw that cuts the bars
 * @param members the frame as it stands, or as drawn
 * @param carry_mm the longest that goes home: a spare stretch is in parts no longer
 */
export const steelWanted = (
  ramp: Ramp,
  sawn: readonly Sawn[],
  kerf_mm: number,
  members: readonly Member[] = ramp.members,
  carry_mm: number = LONGEST_SPARE,
): readonly Wanted[] => {
  const done = new Set(sawn.filter(s => !s.spoiled).map(s => s.need));
  const bySection = new Map<string, { section: StockSection; all: Member[] }>();
  for (const m of [...members, ...ramp.entry.pieces]) {
    const section = sectionOf(ramp.design, m);
    const there = bySection.get(section.name) ?? { section, all: [] };
    there.all.push(m);
    bySection.set(section.name, there);
  }
  return [...bySection.values()].map(({ section, all }) => {
    const open = all.filter(m => !done.has(m.need));
    const pieces = open.map(m => neededOf(ramp, m, kerf_mm));
    if (section.kind === 'tube' && open.length > 0) pieces.push(...sparesOf(ramp, all, open, sawn, carry_mm));
    return { section, pieces, needs: new Set(all.map(m => m.need)) };
  });
};

const sparesOf = (
  ramp: Ramp,
  all: readonly Member[],
  open: readonly Member[],
  sawn: readonly Sawn[],
  carry_mm: number,
): readonly Needed[] => {
  const rails = all.filter(m => m.kind === 'curved rail');
  const list: Needed[] = [];
  const spoiled = sawn.filter(s => s.spoiled && s.need.startsWith('curved rail@')).length;
  const shown = (v: number): number => asShown(v, 'length', ramp.design.system);
  const longest = shown(Math.max(0, ...rails.map(m => m.long_mm)));
  const slit = ramp.design.route === 'slit';
  const stillToSlit = rails.some(m => (ramp.shapes.get(m.rail ?? '')?.survey ?? null) === null);
  if (rails.length > 0 && slit && stillToSlit && spoiled === 0)
    list.push(spare('spare rail', 'spare rail', longest));
  const total = open.reduce((sum, m) => sum + m.long_mm, 0);
  const tests = rails.length > 0 && slit && stillToSlit ? TEST_PIECES[ramp.design.system] : 0;
  const over = Math.max(total * SPARE_SHARE, tests);
  const parts = Math.ceil(over / Math.min(LONGEST_SPARE, Math.max(LEAST_CARRY, carry_mm - CARRY_ROOM)));
  for (let i = 1; i <= parts; i++)
    list.push(spare(i === 1 ? 'spare' : `spare@:${i}`, 'spare', shown(over / parts)));
  return list;
};

/** A straight piece with square ends, cut now: a board, a strip. */
export const squarePiece = (need: string, kind: 'board' | 'deck strip', long_mm: number): Needed => ({
  need,
  kind,
  long_mm,
  short_mm: long_mm,
  ends: SQUARE,
  across_mm: 0,
  when: 'now',
  known: true,
  over_mm: 0,
  plan_mm: long_mm,
});
