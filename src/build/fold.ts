import { type Answered, DESIGN_FIELDS, type DesignField, type RailName } from '../ramp/design.ts';
import { DESIGN_VALUES, type Entry, type EntryOf } from './entries.ts';
import { goneIds, inOrder } from './order.ts';
import { repeatedBy } from './read-again.ts';

export type StepKey = string;

export type Tick = Readonly<{ entry: string; at: string; basis: Readonly<Record<string, number>> }>;
export type Skip = Readonly<{ entry: string; at: string; why: string }>;
export type Reading = Readonly<{
  entry: string;
  at: string;
  value: number;
  typed: string;
  basis: Readonly<Record<string, number>>;
}>;
export type Piece = Readonly<{
  id: string;
  at: string;
  need: string;
  section: string;
  asked_mm: number;
  length_mm: number;
  ends_rad: readonly [number, number];
  fate: 'cut' | 'fitted' | 'welded' | 'spoiled';
  /** The need it serves now: its own, or the one it was given to. */
  serves: string;
}>;
export type StationReading = Readonly<{ offset_mm: number; typed: string; again?: readonly number[] }>;
export type Survey = Readonly<{
  id: string;
  n: number;
  at: string;
  kind: EntryOf<'survey-opened'>['kind_of'];
  rail: RailName;
  phase: EntryOf<'survey-opened'>['phase'];
  edge: EntryOf<'survey-opened'>['edge'];
  to: EntryOf<'survey-opened'>['to'];
  stations_mm: readonly number[];
  read_to_mm: number;
  /** By station, 0-based; null where not read. */
  readings: readonly (StationReading | null)[];
  closed: boolean;
  /** A later re-cut or re-lay of the rail retired it. */
  retired: boolean;
}>;
export type Chosen = Readonly<{
  entry: string;
  n: number;
  at: string;
  finding: string;
  remedy: string;
  plan: Readonly<Record<string, unknown>>;
  predicted_mm?: number;
  worst_mm?: number;
}>;
export type Conflict = Readonly<{ about: string; kept: string; other: string }>;

/** A build as its journal tells it. Total: whatever the entries say, there is a build. */
export type Build = Readonly<{
  name: string;
  system: 'metric' | 'us';
  invented: boolean;
  answers: Answered;
  /** The design was agreed: beginning is over. */
  agreed: boolean;
  /** When each design field was last set: entry count n. */
  setAt: ReadonlyMap<DesignField, number>;
  ticks: ReadonlyMap<StepKey, Tick>;
  skips: ReadonlyMap<StepKey, Skip>;
  overrides: ReadonlyMap<string, Skip>;
  readings: ReadonlyMap<string, Reading>;
  marks: readonly EntryOf<'slits-marked'>[];
  slitNotes: readonly EntryOf<'slit-noted'>[];
  pieces: readonly Piece[];
  surveys: readonly Survey[];
  chosen: readonly Chosen[];
  cautions: ReadonlySet<string>;
  remarks: readonly EntryOf<'remarked'>[];
  shop: Readonly<Record<string, number>>;
  conflicts: readonly Conflict[];
  /** Live entries whose subject was taken back. */
  idle: readonly Entry[];
  /** All live entries in order, and the ids of those struck. */
  live: readonly Entry[];
  struck: ReadonlySet<string>;
  all: readonly Entry[];
}>;

export const readingKey = (step: StepKey, ask: string): string => `${step}#${ask}`;

/** Remedies after which a rail is no longer the rail that was measured. */
const RESHAPES = new Set([
  're-cut',
  're-lay',
  'close-slit',
  'add-slit',
  'start-again',
  'match-rail',
  'slits-new-rail',
  'nick-new-rail',
]);

/** The build that a set of entries tells, in any order they come. Never throws, never refuses. */
export const fold = (entries: readonly Entry[]): Build => {
  const all = inOrder(entries);
  const gone = goneIds(all);
  const live = all.filter(e => !gone.has(e.id) && e.kind !== 'entry-struck');
  const alive = new Set(live.map(e => e.id));

  let name = 'unnamed build';
  let system: Build['system'] = 'metric';
  let invented = false;
  let agreed = false;
  const answers: Record<string, unknown> = {};
  const setAt = new Map<DesignField, number>();
  const setBy = new Map<string, string>();
  const ticks = new Map<string, Tick>();
  const skips = new Map<string, Skip>();
  const overrides = new Map<string, Skip>();
  const readings = new Map<string, Reading>();
  const marks = new Map<string, EntryOf<'slits-marked'>>();
  const slitNotes: EntryOf<'slit-noted'>[] = [];
  const pieces = new Map<string, Piece>();
  const surveys = new Map<string, Survey>();
  const chosen: Chosen[] = [];
  const cautions = new Set<string>();
  const remarks: EntryOf<'remarked'>[] = [];
  const shop: Record<string, number> = {};
  const conflicts: Conflict[] = [];
  const idle: Entry[] = [];

  /** Two live entries for one thing that do not know of each other: the later counts, and it is said. */
  const register = (about: string, e: Entry): void => {
    const before = setBy.get(about);
    if (before !== undefined) conflicts.push({ about, kept: e.id, other: before });
    setBy.set(about, e.id);
  };

  for (const e of live) {
    switch (e.kind) {
      case 'build-begun':
        name = e.name;
        system = e.system;
        invented = e.invented === true;
        break;
      case 'design-set':
        register(`design ${e.field}`, e);
        answers[e.field] = e.value;
        setAt.set(e.field, e.n);
        break;
      case 'design-agreed':
        agreed = true;
        break;
      case 'step-ticked':
        ticks.set(e.step, { entry: e.id, at: e.at, basis: e.basis });
        skips.delete(e.step);
        break;
      case 'step-skipped':
        skips.set(e.step, { entry: e.id, at: e.at, why: e.why });
        ticks.delete(e.step);
        break;
      case 'gate-overridden':
        overrides.set(`${e.step} ${e.gate}`, { entry: e.id, at: e.at, why: e.why });
        break;
      case 'reading-logged': {
        const k = readingKey(e.step, e.ask);
        register(`reading ${k}`, e);
        const reading = { entry: e.id, at: e.at, value: e.value, typed: e.typed, basis: e.basis };
        readings.set(k, reading);
        skips.delete(e.step);
        // Read again after a long pause: the newer number counts wherever the older one did.
        const repeated = repeatedBy(e.step);
        if (repeated !== null) {
          const older = readingKey(repeated, e.ask);
          readings.set(older, { ...reading, basis: readings.get(older)?.basis ?? e.basis });
        }
        break;
      }
      case 'slits-marked':
        marks.set(`${e.rail} ${e.third}`, e);
        break;
      case 'slit-noted':
        slitNotes.push(e);
        break;
      case 'piece-cut':
        pieces.set(e.id, {
          id: e.id,
          at: e.at,
          need: e.need,
          section: e.section,
          asked_mm: e.asked_mm,
          length_mm: e.length_mm,
          ends_rad: e.ends_rad,
          fate: 'cut',
          serves: e.need,
        });
        break;
      case 'piece-fated': {
        const piece = pieces.get(e.piece);
        if (piece === undefined) idle.push(e);
        else pieces.set(e.piece, { ...piece, fate: e.fate, serves: e.need ?? piece.serves });
        break;
      }
      case 'survey-opened':
        surveys.set(e.id, {
          id: e.id,
          n: e.n,
          at: e.at,
          kind: e.kind_of,
          rail: e.rail,
          phase: e.phase,
          edge: e.edge,
          to: e.to,
          stations_mm: e.stations_mm,
          read_to_mm: e.read_to_mm,
          readings: e.stations_mm.map(() => null),
          closed: false,
          retired: false,
        });
        break;
      case 'offsets-read': {
        const survey = surveys.get(e.survey);
        if (survey === undefined) {
          idle.push(e);
          break;
        }
        const next = [...survey.readings];
        for (const r of e.readings) {
          const at = r.station - 1;
          if (at < 0 || at >= next.length) continue;
          const before = next[at] ?? null;
          if (before === null) register(`station ${e.survey} ${r.station}`, e);
          const again = before === null ? undefined : [...(before.again ?? []), before.offset_mm];
          next[at] = { offset_mm: r.offset_mm, typed: r.typed, ...(again === undefined ? {} : { again }) };
        }
        surveys.set(e.survey, { ...survey, readings: next });
        break;
      }
      case 'survey-closed': {
        const survey = surveys.get(e.survey);
        if (survey === undefined) idle.push(e);
        else surveys.set(e.survey, { ...survey, closed: true });
        break;
      }
      case 'remedy-chosen': {
        chosen.push({
          entry: e.id,
          n: e.n,
          at: e.at,
          finding: e.finding,
          remedy: e.remedy,
          plan: e.plan,
          ...(e.predicted_mm === undefined ? {} : { predicted_mm: e.predicted_mm }),
          ...(e.worst_mm === undefined ? {} : { worst_mm: e.worst_mm }),
        });
        // A remedy may give a piece to another need, or send it to the scrap: the need it leaves is open again.
        for (const [id, to] of [
          [e.plan.piece, e.plan.serves],
          [e.plan.other, e.plan.otherServes],
        ]) {
          const piece = typeof id === 'string' ? pieces.get(id) : undefined;
          if (piece !== undefined && typeof to === 'string') pieces.set(piece.id, { ...piece, serves: to });
        }
        const spoilt = typeof e.plan.spoils === 'string' ? pieces.get(e.plan.spoils) : undefined;
        if (spoilt !== undefined) pieces.set(spoilt.id, { ...spoilt, fate: 'spoiled' });
        // A remedy of the plan is a change of the design: the same field, checked like an answer.
        const field = DESIGN_FIELDS.find(f => f === e.plan.field);
        if (field !== undefined && DESIGN_VALUES[field].safeParse(e.plan.value).success) {
          answers[field] = e.plan.value;
          setAt.set(field, e.n);
        }
        const rail = e.plan.rail;
        if (RESHAPES.has(e.remedy) && typeof rail === 'string') {
          for (const [id, s] of surveys) if (s.rail === rail) surveys.set(id, { ...s, retired: true });
        }
        break;
      }
      case 'caution-known':
        cautions.add(e.caution);
        break;
      case 'remarked':
        remarks.push(e);
        break;
      case 'shop-copied':
        Object.assign(shop, e.values);
        break;
      case 'stopped':
      case 'entry-struck':
        break;
    }
  }

  // A tick that hangs on something taken back (a re-cut, a marked third, a survey) is idle, kept and said.
  for (const step of [...ticks.keys(), ...skips.keys()]) {
    const subject = /@([0-9a-f]{8}-[0-9a-f-]{27})/.exec(step)?.[1];
    if (subject === undefined || alive.has(subject)) continue;
    const tick = ticks.get(step) ?? skips.get(step);
    const entry = live.find(e => e.id === tick?.entry);
    if (entry !== undefined) idle.push(entry);
  }

  return {
    name,
    system,
    invented,
    answers: answers as Answered,
    agreed,
    setAt,
    ticks,
    skips,
    overrides,
    readings,
    marks: [...marks.values()].sort((a, b) => a.first - b.first),
    slitNotes,
    pieces: [...pieces.values()],
    surveys: [...surveys.values()],
    chosen,
    cautions,
    remarks,
    shop,
    conflicts,
    idle,
    live,
    struck: gone,
    all,
  };
};
