import { pauseParts } from '../build/read-again.ts';
import type { StepDraft } from '../stages/sheet.ts';
import { LONG_PAUSE, pausesOf } from './pause/gaps.ts';
import { leftOpen } from './pause/left-open.ts';
import { checkStep } from './pause/steps.ts';
import type { View } from './view.ts';
import type { Step } from './walk.ts';

/** When the build was last worked on, ms; null for one just begun. */
export const lastWorked = (view: View): number | null => {
  const last = view.build.live.filter(e => e.kind !== 'build-begun').at(-1);
  const at = Date.parse(last?.at ?? '');
  return Number.isNaN(at) ? null : at;
};

const DAY = 86_400_000;

export const daysAway = (view: View): number => {
  const last = lastWorked(view);
  return last === null ? 0 : Math.max(0, Math.floor((view.situation.now - last) / DAY));
};

/** One thing to look at after a few days; words under `rechecks.<id>`. */
export type Recheck = Readonly<{ id: string; rail?: string }>;

/**
 * What to have an eye on after a few days, when nothing has to be measured again yet: bare steel films over in one to three
 * (common practice). A longer pause brings steps of its own: see pauseSteps.
 */
export const rechecksOf = (view: View): readonly Recheck[] => {
  const days = daysAway(view);
  if (days < 2 || days >= LONG_PAUSE) return [];
  const { build, ramp } = view;
  const rails = ramp.rails.flatMap((rail): Recheck[] => {
    const marked = build.marks.some(m => m.rail === rail);
    const cold = build.surveys.some(
      s => s.rail === rail && s.closed && !s.retired && s.phase !== 'tacked' && s.phase !== 'half-welded',
    );
    return marked && !cold ? [{ id: 'bright-metal', rail }] : [];
  });
  const held = ramp.rails.some(
    rail => build.ticks.has(`brace/hold-base@${rail}`) && !build.ticks.has(`brace/weld-uprights@${rail}`),
  );
  return [...rails, ...(held ? [{ id: 'clamps' }] : [])];
};

/** The steps that long pauses brought and that are not settled yet, measured ones first. */
export const pauseSteps = (view: View): readonly Step[] =>
  view.steps.filter(
    s => pauseParts(s.key) !== null && (s.state === 'to do' || s.state === 'stop' || s.state === 'waiting'),
  );

/** A step of a pause that is over, as it stood then, from its key (or that of one of its items); null for every other key. */
export const pastStep = (view: View, key: string): StepDraft | null => {
  const parts = pauseParts(key.split('#')[0] ?? key);
  const pause = pausesOf(view.build.all, view.situation.now).find(p => p.after === parts?.entry);
  if (parts === null || pause === undefined) return null;
  const open = leftOpen(pause.left, view.ramp, pause.days).find(
    o => `${o.stage}/pause-${o.name}` === parts.step && o.subject === parts.subject,
  );
  return open === undefined
    ? null
    : checkStep({ ...open, key: key.split('#')[0] ?? key, pause, settled: true }, 0, view.ramp);
};
