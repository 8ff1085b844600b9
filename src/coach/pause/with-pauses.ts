import { repeatedBy } from '../../build/read-again.ts';
import type { Finding, SheetDraft, StepDraft } from '../../stages/sheet.ts';
import type { Situation } from '../../stages/situation.ts';
import { type Check, pauseChecks } from './checks.ts';
import { movedFinding } from './moved.ts';
import { checkStep, waitsFor } from './steps.ts';

const decided = (s: Situation, f: Finding): boolean => s.build.chosen.some(c => c.finding === f.key);

/** Pauses over which something is still to be looked at or decided. */
const unsettled = (s: Situation, checks: readonly Check[], found: ReadonlyMap<Check, Finding>) =>
  new Set(
    checks
      .filter(c => {
        const f = found.get(c);
        return !c.settled || (f !== undefined && !decided(s, f));
      })
      .map(c => c.pause.after),
  );

/** A check settled where the number was read before, or by a choice, has no step of its own to show. */
const hasStep = (s: Situation, c: Check): boolean =>
  !c.settled ||
  s.build.ticks.has(c.key) ||
  s.build.skips.has(c.key) ||
  c.items.length > 0 ||
  c.asks.every(a => s.build.readings.has(`${c.key}#${a.ask}`));

/** Steps that wait for checks not settled yet; one that is ticked waits for nothing. */
const held = (s: Situation, step: StepDraft, open: readonly Check[]): StepDraft => {
  if (s.build.ticks.has(step.key)) return step;
  const waits = open.filter(c => repeatedBy(c.key) !== step.key && waitsFor(step, c)).map(c => c.key);
  return waits.length === 0 ? step : { ...step, needs: [...waits, ...step.needs] };
};

/**
 * The sheets with what long pauses bring: steps that look again at what was left open, first in the walk; the steps that wait
 * for them; and what moved. A build that nobody laid aside keeps its sheets as they are.
 */
export const withPauses = (s: Situation, sheets: readonly SheetDraft[]): readonly SheetDraft[] => {
  const all = pauseChecks(s);
  if (all.length === 0) return sheets;
  const found = new Map(
    all.flatMap(c => {
      const f = movedFinding(s, c);
      return f === null ? [] : [[c, f] as const];
    }),
  );
  const pauses = unsettled(s, all, found);
  const checks = all.filter(c => pauses.has(c.pause.after));
  if (checks.length === 0) return sheets;
  const open = checks.filter(c => !c.settled);
  const order = [...checks].sort((a, b) => Number(b.asks.length > 0) - Number(a.asks.length > 0));
  return sheets.map(sheet => {
    const steps = sheet.steps.map(step => held(s, step, open));
    const mine = order.filter(c => c.stage === sheet.stage && hasStep(s, c));
    const findings = checks.flatMap((c): readonly Finding[] => {
      const f = found.get(c);
      if (f === undefined || f.stage !== sheet.stage) return [];
      if (f.severity === 'watch') return [f];
      const blocks = sheets.flatMap(x => x.steps.filter(step => waitsFor(step, c)).map(step => step.key));
      return [{ ...f, blocks }];
    });
    return {
      ...sheet,
      steps: [...mine.map(c => checkStep(c, order.indexOf(c), s.ramp)), ...steps],
      findings: [...findings, ...sheet.findings],
    };
  });
};
