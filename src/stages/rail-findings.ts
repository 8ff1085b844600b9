import type { Survey } from '../build/fold.ts';
import { cameOut } from './rail-findings/came-out.ts';
import { railsDiffer } from './rail-findings/differ.ts';
import { limitsOf } from './rail-findings/limits.ts';
import { blockedBy, offLine } from './rail-findings/off-line.ts';
import { offKey, type RailReading, railReading } from './rail-findings/reading.ts';
import { sidewaysFinding } from './rail-findings/sideways.ts';
import { wrongEdge } from './rail-findings/wrong-edge.ts';
import type { Finding, HeavyAsk } from './sheet.ts';
import type { Situation } from './situation.ts';

type MeasuringStage = 'tack' | 'weld' | 'brace';

/** The phases whose surveys are a stage's business. */
const PHASES: Readonly<Record<MeasuringStage, readonly Survey['phase'][]>> = {
  tack: ['tacked'],
  weld: ['half-welded', 'cold'],
  brace: ['braced', 'unclamped'],
};
const ALL = Object.values(PHASES).flat();

const stageOf = (r: RailReading): MeasuringStage =>
  (Object.keys(PHASES) as MeasuringStage[]).find(stage => PHASES[stage].includes(r.survey.phase)) ?? 'brace';

/** The later of the two pages on which a pair is measured. */
const stageOfPair = (a: RailReading, b: RailReading): MeasuringStage => {
  const order = Object.keys(PHASES);
  return order.indexOf(stageOf(a)) >= order.indexOf(stageOf(b)) ? stageOf(a) : stageOf(b);
};

/** A rail past its limit that nobody has decided on yet: until then its pair is not judged. */
const isOpen = (s: Situation, r: RailReading): boolean =>
  r.worst_mm > limitsOf(s).smooth && !s.build.chosen.some(c => c.finding === offKey(r));

/**
 * What the surveys of the rails mean on this stage's page, with what can be done: a rail read to another edge, a rail off
 * its line and why, two rails that differ, a rail bowed sideways, and what a remedy came to.
 * `asked` are the heavy questions that stand open; findings stand with raw numbers meanwhile.
 */
export const railFindings = (
  s: Situation,
  stage: MeasuringStage,
): { findings: Finding[]; asked: HeavyAsk[] } => {
  const findings: Finding[] = [];
  const asked: HeavyAsk[] = [];
  const all = s.ramp.rails.flatMap(rail => railReading(s, rail, ALL) ?? []);
  const believed = all.filter(r => r.otherEdge_mm === null);

  for (const r of all) {
    if (r.otherEdge_mm !== null) {
      if (stageOf(r) !== stage) continue;
      const limit_mm = limitsOf(s).smooth;
      findings.push(
        wrongEdge(
          { s, r, answer: null, limit_mm, best_mm: r.fit.worst_mm },
          r.otherEdge_mm,
          stage,
          blockedBy(r),
        ),
      );
      continue;
    }
    if (stageOf(r) !== stage) continue;
    // One other rail can be made to match; with more, a pair is judged rail by rail.
    const others = s.ramp.rails.filter(rail => rail !== r.rail);
    const other =
      others.length === 1 ? (believed.find(o => o.rail === others[0] && samePage(o, r)) ?? null) : null;
    const said = offLine(s, r, other, stage);
    findings.push(...said.findings);
    asked.push(...said.asked);
    const came = cameOut(s, r, stage);
    if (came !== null) findings.push(came);
  }

  for (const [i, a] of believed.entries()) {
    for (const b of believed.slice(i + 1)) {
      if (stageOfPair(a, b) !== stage || isOpen(s, a) || isOpen(s, b)) continue;
      const said = railsDiffer(s, a, b, stage);
      findings.push(...said.findings);
      asked.push(...said.asked);
    }
  }

  for (const rail of s.ramp.rails) {
    const bow = sidewaysFinding(s, rail, PHASES[stage], stage);
    if (bow !== null) findings.push(bow);
  }
  return { findings, asked };
};

const samePage = (a: RailReading, b: RailReading): boolean => stageOf(a) === stageOf(b);
