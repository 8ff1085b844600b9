import type { Entry } from '../build/entries.ts';
import { measuredOf } from '../build/facts.ts';
import { type Build, fold } from '../build/fold.ts';
import type { Fault } from '../quantity/outcome.ts';
import { type Measured, NOTHING_MEASURED } from '../ramp/measured.ts';
import { type Ramp, rampOf } from '../ramp/ramp.ts';
import { deckThickness, settle } from '../ramp/settle.ts';
import { assembleSheet } from '../stages/assemble/sheet.ts';
import { braceSheet } from '../stages/brace/sheet.ts';
import { cutSheet } from '../stages/cut/sheet.ts';
import { finishSheet } from '../stages/finish/sheet.ts';
import { planSheet } from '../stages/plan/sheet.ts';
import { prepSheet } from '../stages/prep/sheet.ts';
import type { Finding, SheetDraft, Stage } from '../stages/sheet.ts';
import type { Answers, Situation, StageSheet } from '../stages/situation.ts';
import { tackSheet } from '../stages/tack/sheet.ts';
import { weldSheet } from '../stages/weld/sheet.ts';
import { journalFindings } from './journal-findings.ts';
import { withPauses } from './pause/with-pauses.ts';
import { isDecided, nextStep, type Step, walk } from './walk.ts';
import { withArcBar } from './with-arc-bar.ts';
import { withRemedies } from './with-remedies.ts';

const SHEETS: readonly StageSheet[] = [
  planSheet,
  cutSheet,
  prepSheet,
  tackSheet,
  weldSheet,
  braceSheet,
  assembleSheet,
  finishSheet,
];

/** Everything a page, a refusal or a script can ask of a build at a moment. */
export type View = Readonly<{
  situation: Situation;
  build: Build;
  ramp: Ramp;
  sheets: readonly SheetDraft[];
  steps: readonly Step[];
  next: Step | null;
  findings: readonly Finding[];
  /** The curve's own fault, when the two sizes given fix no circle; the ramp then stands on the default shape. */
  fault: Fault | null;
}>;

/** The view of a build told by its entries at a moment. Total: a design that fixes no curve still opens. */
export const viewOf = (entries: readonly Entry[], now: number, answers: Answers = new Map()): View => {
  const build = fold(entries);
  const draft = settle(build.name, build.system, build.answers);
  const usable = draft.ok ? build.answers : { ...build.answers, shape: {} };
  const planned = draft.ok ? draft : settle(build.name, build.system, usable);
  if (!planned.ok) throw new Error('the default design has no curve');
  const { measured, ramp } = standing(
    build,
    usable,
    measuredOf(build, {
      tube: planned.value.tube,
      deck_mm: deckThickness(planned.value.deck),
    }),
  );
  const situation: Situation = { build, measured, ramp, answers, now };
  const sheets = withPauses(
    situation,
    withArcBar(
      build,
      withRemedies(
        build,
        SHEETS.map(sheet => sheet(situation)),
      ),
    ),
  );
  const steps = walk(build, sheets);
  return {
    situation,
    build,
    ramp,
    sheets,
    steps,
    next: nextStep(steps),
    findings: sortFindings([...sheets.flatMap(s => s.findings), ...journalFindings(build)]),
    fault: draft.ok ? null : draft.fault,
  };
};

type Standing = Readonly<{ measured: Measured; ramp: Ramp }>;

/** The ramp of the last view and what it was computed from: most entries change neither design nor measure. */
let last: (Standing & { key: string }) | null = null;

const standing = (build: Build, usable: Build['answers'], measured: Measured): Standing => {
  const key = JSON.stringify([build.name, build.system, usable, measured], (_, v) =>
    v instanceof Map ? [...v] : v,
  );
  if (last?.key === key) return last;
  const made = rampOf(build.name, build.system, usable, measured);
  last = { key, measured, ramp: made.ok ? made.value : defaultRamp(build) };
  return last;
};

const defaultRamp = (build: Build): Ramp => {
  const made = rampOf(build.name, build.system, {}, NOTHING_MEASURED);
  if (!made.ok) throw new Error('the default design has no curve');
  return made.value;
};

const WEIGHT = { stop: 0, fix: 1, watch: 2 } as const;
const sortFindings = (list: readonly Finding[]): readonly Finding[] =>
  [...list].sort((a, b) => WEIGHT[a.severity] - WEIGHT[b.severity]);

export const sheetOf = (view: View, stage: Stage): SheetDraft =>
  view.sheets.find(s => s.stage === stage) as SheetDraft;

export const openFindings = (view: View): readonly Finding[] =>
  view.findings.filter(f => !isDecided(view.build, f));
