import type { StepKey } from '../build/fold.ts';
import type { Quantity } from '../quantity/quantities.ts';
import type { LineRef, RailName } from '../ramp/design.ts';
import type { Scene } from '../scene/scene.ts';

export const STAGES = ['plan', 'cut', 'prep', 'tack', 'weld', 'brace', 'assemble', 'finish'] as const;
export type Stage = (typeof STAGES)[number];

export type FigureId = string;
export type SurveyPhase = 'tacked' | 'half-welded' | 'cold' | 'braced' | 'unclamped';

/** A value inside words: a name or text, a whole count, or a number with what it is (written in the person's units). */
export type Fill = string | number | Readonly<{ v: number; as: Quantity; sign?: true; step?: number }>;
export type Fills = Readonly<Record<string, Fill>>;
/** Words by their path in content, and what fills their marks. */
export type Phrase = Readonly<{ words: string; fills?: Fills }>;

export type Value =
  | Readonly<{ is: 'exact'; v: number }>
  | Readonly<{ is: 'band'; low: number; likely: number; high: number }>
  | Readonly<{ is: 'pending'; meanwhile?: number }>
  | Readonly<{ is: 'unknown'; needs: StepKey }>;

/**
 * A number of a page. Its label, its why and its source stand in content under `figures.<id before @>`.
 * A dimension cannot be built without its line; a size has none.
 */
export type Figure = Readonly<
  {
    id: FigureId;
    value: Value;
    /** Change that matters at the bench: a tick done with another value turns stale beyond it. Inner units. */
    matters: number;
    /** The survey or reading it stands on, when measured. */
    on?: string;
    /** It is no measure but an answer by its number from 1: the list of answers, by its path in content. */
    answers?: string;
    /** Where it comes from this time, by its name among the sources, where that is not what stands with its words. */
    source?: string;
  } & (
    | { kind: 'dimension'; as: 'length' | 'slit'; line: LineRef | LineName }
    | { kind: 'size'; as: Quantity }
  )
>;
/** Lines laid out on the jig that are no face of the frame. */
export type LineName = 'tack line' | 'finished line';

/** A number the step wants read at the bench. Its label stands in content under the step's `asks.<ask>`. */
export type Ask = Readonly<{
  ask: string;
  as: Quantity;
  /** Outside it the field asks once more. Inner units. */
  expected?: readonly [number, number];
  /** Outside it the reading is refused. Inner units. */
  possible?: readonly [number, number];
  /** The sign is part of the reading (+ toward the centre). */
  signed?: true;
  line?: LineRef | LineName;
  /** Read only where there is something to say: the step is done without it. */
  optional?: true;
  /** Of a list of answers none is lit beforehand, not even the one kept before: a wrong one, passed with Enter by a tired hand, is dangerous. */
  unlit?: true;
}>;

/** One of many like things on one page, one key each: slits, marks, boards, joints. */
export type Item = Readonly<{
  key: StepKey;
  /** What is written on the steel: "7", "flat 4". */
  name: string;
  value?: Readonly<{ v: number; as: Quantity }>;
  /** A second number of the same thing, shown after it (a height beside a distance along). */
  second?: Readonly<{ v: number; as: Quantity }>;
  note?: Phrase;
  /** The piece this item is: ticking it says "cut as asked", Enter logs another real length. */
  piece?: PieceAsk;
  /** What it comes with: Enter ticks all of one group, as all that one shop sold. */
  group?: string;
  /** The optional ask that Enter opens at this item: ticking it says "as it should be", Enter says what is not. */
  ask?: string;
}>;

export type PieceAsk = Readonly<{
  need: string;
  section: string;
  long_mm: number;
  ends_rad: readonly [number, number];
}>;

/** A condition that must hold before the step may be ticked. Words under `gates.<words, or id>`: stop, why, opens (a list). */
export type Gate = Readonly<{
  id: string;
  /** Key of its words where the id names more: a reason given for one evening's reading then opens no other evening's. */
  words?: string;
  shut: boolean;
  fills?: Fills;
  /** No reason opens it (an open crack, no anchors). */
  never?: true;
  /** The step whose reading would open it. */
  measure?: StepKey;
  /** All that step asks is read anew, and it takes minutes: the walk leads to it in its turn, as to an open step. */
  soon?: true;
}>;

export type SurveyAsk = Readonly<{
  kind: 'curve' | 'sideways';
  rail: RailName;
  phase: SurveyPhase;
  to: LineName;
  stations_mm: readonly number[];
  /** Only a survey begun after this entry's number counts: a rail that is to be read once more. */
  after?: number;
}>;

/** One step as a stage gives it; its state is found by the walk. Words under `steps.<stage>.<words>`. */
export type StepDraft = Readonly<{
  key: StepKey;
  stage: Stage;
  /** Key of its words within the stage. */
  words: string;
  fills?: Fills;
  /** Place in the walk over the whole build: the next step is the open one with the least turn. */
  turn: number;
  /** Steps that must be settled first. */
  needs: readonly StepKey[];
  /** Figures whose values the tick remembers, and which its words may name by the part of the id before @. */
  uses: readonly FigureId[];
  /** Up to three of them shown tall. */
  tall?: readonly FigureId[];
  line?: LineRef | LineName;
  asks?: readonly Ask[];
  items?: readonly Item[];
  survey?: SurveyAsk;
  /** The piece to cut: Enter logs its real length. */
  piece?: PieceAsk;
  /** Ticking this step freezes the marks of a third. */
  marks?: Readonly<{ rail: RailName; third: number }>;
  gates?: readonly Gate[];
  minutes: readonly [number, number];
  /** Acknowledged once a build before the first tick (stop-class cautions). Words under `cautions.<id>`. */
  cautions?: readonly string[];
  /** The drawing beside it, when it has one of its own. */
  scene?: Scene;
  /** It comes of a remedy that was chosen for a rail: next before other open work. */
  led?: true;
}>;

/** What can be done about a finding. Words under `remedies.<remedy>` (deed, steps, later). */
export type Offer = Readonly<{
  remedy: string;
  fills?: Fills;
  /** Worst deviation predicted after it, and whether that is within the limit; absent where nothing is measured again. */
  after?: Readonly<{ v: number; as: Quantity; within: boolean }>;
  minutes: number;
  /** Frozen into the entry when chosen. */
  plan: Readonly<Record<string, unknown>>;
  /** A danger that is taken on by it: whoever chooses it types a sentence with these words in it. */
  typed?: string;
  /** Steps the person will be given, as words paths under `remedies.<remedy>.steps`. */
}>;

export type Severity = 'stop' | 'fix' | 'watch';

/** What was measured, what it means, and what can be done. Words under `findings.<words>` (title, text, sure, not). */
export type Finding = Readonly<{
  key: string;
  stage: Stage;
  severity: Severity;
  words: string;
  fills?: Fills;
  /** The number in tall digits. */
  tall?: Readonly<{ v: number; as: Quantity; sign?: true }>;
  /** Size of it, for telling whether it grew since it was decided on, mm. */
  worst_mm?: number;
  limit?: Readonly<{ v: number; as: Quantity }>;
  offers: readonly Offer[];
  /** Steps that wait until it is decided. */
  blocks?: readonly StepKey[];
  /** Steps whose answers bring a stop about: none of them is done while it stands. */
  raisedBy?: readonly StepKey[];
  /** A heavy answer is still being computed. */
  pending?: true;
  scene?: Scene;
}>;

export type SheetDraft = Readonly<{
  stage: Stage;
  figures: readonly Figure[];
  steps: readonly StepDraft[];
  findings: readonly Finding[];
  /** The drawing of the stage. */
  scene: Scene;
  /** The drawing of its steps that are of one rail and have none of their own. */
  railScene?: (rail: RailName) => Scene;
  /** Heavy questions this page has, whose answers it does without for now. */
  asked?: readonly HeavyAsk[];
}>;

/** A heavy question: a kernel's name and its input, plain data. */
export type HeavyAsk = Readonly<{ topic: 'rail' | 'spring-back' | 'stock' | 'strength'; input: unknown }>;
