import type { Doing, EntryOf } from '../../src/build/entries.ts';
import { compute } from '../../src/coach/compute.ts';
import { fitRigid, rigidColumns } from '../../src/reckon/rail/rigid.ts';
import { railFindings } from '../../src/stages/rail-findings.ts';
import type { Fills, Finding } from '../../src/stages/sheet.ts';
import { askKey, type Situation } from '../../src/stages/situation.ts';
import { flatStations } from '../../src/stages/slit-errors.ts';
import { type MadeRail, trueOffsets } from '../reckon/rail/simulated-rail.ts';
import { situationFor } from './situation-for.ts';

/** An invented build: metric, lip 900 mm at 45°, 40×40×3, agreed. */
export const BEGUN: readonly Doing[] = [
  { kind: 'build-begun', name: 'Quarry Lane kicker', system: 'metric', invented: true },
  { kind: 'design-set', field: 'shape', value: { radius: 3000, exit: Math.PI / 4 } },
];

export type Surveyed = Readonly<{
  rail?: string;
  phase?: EntryOf<'survey-opened'>['phase'];
  to?: EntryOf<'survey-opened'>['to'];
  edge?: EntryOf<'survey-opened'>['edge'];
  /** Closing error of a slit by its number, rad. */
  errors?: (slit: number) => number;
  /** How the rail lies: across at the entry, mm; turned about it, rad. */
  laid?: Readonly<{ y: number; turn: number }>;
  /** Added to every reading, mm. */
  constant?: number;
  /** Readings changed by hand, by station. */
  typed?: Readonly<Record<number, number>>;
  read_to?: number;
  id?: string;
}>;

const LINE = {
  tacked: 'tack line',
  'half-welded': 'tack line',
  cold: 'finished line',
  braced: 'finished line',
  unclamped: 'finished line',
} as const;

/** What would be read of a rail: true offsets of a made rail walked like a turtle, rounded as a rule is read. */
export const readings = (s: Situation, of: Surveyed): { stations_mm: number[]; offsets_mm: number[] } => {
  const plan = s.ramp.plans.get(of.rail ?? 'A');
  if (plan === undefined) throw new Error('no such rail');
  const phase = of.phase ?? 'tacked';
  const line = of.to ?? LINE[phase];
  const { radius_mm, turn_rad } = line === 'tack line' ? plan.tack : plan.finished;
  const stations_mm = [...flatStations(plan, line)];
  const rail: MadeRail = {
    radius: radius_mm,
    bend: turn_rad,
    count: plan.slits.length,
    errors: plan.slits.map(x => of.errors?.(x.number) ?? 0),
    laid: { x: 0, y: of.laid?.y ?? 0, turn: of.laid?.turn ?? 0 },
  };
  const step = of.read_to ?? 0.5;
  const offsets_mm = trueOffsets(rail, stations_mm).map((o, k) => {
    const typed = of.typed?.[k + 1];
    return typed ?? Math.round((o + (of.constant ?? 0)) / step) * step;
  });
  return { stations_mm, offsets_mm };
};

/** How a rail has to lie to come nearest to its line, as a careful hand lays it. */
export const laidWell = (s: Situation, of: Surveyed): NonNullable<Surveyed['laid']> => {
  const plan = s.ramp.plans.get(of.rail ?? 'A');
  if (plan === undefined) throw new Error('no such rail');
  const { radius_mm, turn_rad } = LINE[of.phase ?? 'tacked'] === 'tack line' ? plan.tack : plan.finished;
  const { stations_mm, offsets_mm } = readings(s, { ...of, read_to: 1e-6 });
  const { rigid } = fitRigid(
    rigidColumns({ radius_mm, bend_rad: turn_rad, slits_mm: [] }, stations_mm),
    offsets_mm,
  );
  return { y: -rigid.y_mm, turn: -rigid.turn_rad };
};

/** The entries of a survey opened, read and closed. */
export const surveyed = (before: readonly Doing[], of: Surveyed): readonly (Doing & { id?: string })[] => {
  const { stations_mm, offsets_mm } = readings(situationFor(before), of);
  const id = of.id ?? `survey-${before.length}`;
  return [
    {
      id,
      kind: 'survey-opened',
      kind_of: 'curve',
      rail: of.rail ?? 'A',
      phase: of.phase ?? 'tacked',
      edge: of.edge ?? 'rail bottom face',
      to: of.to ?? LINE[of.phase ?? 'tacked'],
      stations_mm,
      read_to_mm: of.read_to ?? 0.5,
    },
    {
      kind: 'offsets-read',
      survey: id,
      readings: offsets_mm.map((offset_mm, k) => ({ station: k + 1, offset_mm, typed: String(offset_mm) })),
    },
    { kind: 'survey-closed', survey: id },
  ];
};

/** A survey of the side of a rail by its string: bow at each station, mm. */
export const bowed = (
  before: readonly Doing[],
  rail: string,
  bow: (share: number) => number,
  phase: EntryOf<'survey-opened'>['phase'] = 'tacked',
): readonly (Doing & { id?: string })[] => {
  const plan = situationFor(before).ramp.plans.get(rail);
  const id = `string-${before.length}`;
  const stations_mm = Array.from({ length: 7 }, (_, k) => ((plan?.toLip_mm ?? 0) * k) / 6);
  return [
    {
      id,
      kind: 'survey-opened',
      kind_of: 'sideways',
      rail,
      phase,
      edge: 'rail bottom face',
      to: LINE[phase],
      stations_mm,
      read_to_mm: 0.5,
    },
    {
      kind: 'offsets-read',
      survey: id,
      readings: stations_mm.map((_, k) => {
        const offset_mm = Math.round((20 + bow(k / 6)) * 2) / 2;
        return { station: k + 1, offset_mm, typed: String(offset_mm) };
      }),
    },
    { kind: 'survey-closed', survey: id },
  ];
};

/** The situation with every heavy question of the rails' pages answered. */
export const answered = async (doings: readonly Doing[]): Promise<Situation> => {
  let answers: Situation['answers'] = new Map();
  for (let round = 0; round < 4; round++) {
    const s = situationFor(doings, answers);
    const asks = (['tack', 'weld', 'brace'] as const).flatMap(stage => railFindings(s, stage).asked);
    const open = asks.filter(a => !answers.has(askKey(a)));
    if (open.length === 0) return s;
    for (const ask of open) answers = new Map([...answers, [askKey(ask), await compute(ask)]]);
  }
  return situationFor(doings, answers);
};

export const fill = (fills: Fills | undefined, name: string): number => {
  const f = fills?.[name];
  return typeof f === 'object' ? f.v : Number(f);
};

export const named = (findings: readonly Finding[], start: string): Finding => {
  const found = findings.find(f => f.key.startsWith(start));
  if (found === undefined)
    throw new Error(`no finding ${start} in ${findings.map(f => f.key).join(', ') || 'none'}`);
  return found;
};

export const offerOf = (f: Finding, remedy: string) => {
  const found = f.offers.find(o => o.remedy === remedy);
  if (found === undefined) throw new Error(`no ${remedy} in ${f.offers.map(o => o.remedy).join(', ')}`);
  return found;
};
