import { plainText } from '../build/plain-text.ts';
import { settleAnswers } from '../coach/tasks.ts';
import type { View } from '../coach/view.ts';
import { openFindings, sheetOf } from '../coach/view.ts';
import { findingText, stepText } from '../screen/pages/step-words.ts';
import { STAGES, type Stage } from '../stages/sheet.ts';
import type { Voice } from '../words/say.ts';
import type { CommandModule } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';
import { keeperOf } from './find-build.ts';
import { sheetText } from './sheet-text.ts';

export const nextStage = (view: View): Stage => view.next?.stage ?? 'finish';

/** A stage's page as data: numbers in the inner units (mm, rad, kg …). */
export const sheetJson = (view: View, stage: Stage, voice: Voice): object => {
  const sheet = sheetOf(view, stage);
  const open = openFindings(view);
  return {
    schemaVersion: SCHEMA_VERSION,
    build: view.build.name,
    stage,
    next: view.next?.key ?? null,
    figures: sheet.figures.map(f => ({
      id: f.id,
      quantity: f.as,
      line: f.kind === 'dimension' ? f.line : null,
      value: f.value,
      on: f.on ?? null,
    })),
    steps: view.steps
      .filter(s => s.stage === stage)
      .map(s => ({
        key: s.key,
        title: stepText(view, voice, s, 'title'),
        do: stepText(view, voice, s, 'do'),
        measure: stepText(view, voice, s, 'measure'),
        state: s.state,
        waitsFor: s.waitsFor,
        gates: s.shut,
        asks: (s.asks ?? []).map(a => ({
          ask: a.ask,
          quantity: a.as,
          read: view.build.readings.get(`${s.key}#${a.ask}`)?.value ?? null,
        })),
        items: (s.items ?? []).map(i => ({
          key: i.key,
          name: i.name,
          value: i.value ?? null,
          second: i.second ?? null,
          piece: i.piece ?? null,
        })),
        piece: s.piece ?? null,
        survey: s.survey ?? null,
        cautions: s.cautions ?? [],
        changes: s.changes.map(c => ({ figure: c.id, was: c.was, now: c.now ?? null })),
      })),
    findings: sheet.findings.map(f => ({
      key: f.key,
      severity: f.severity,
      title: findingText(voice, f, 'title'),
      open: open.includes(f),
      pending: f.pending === true,
      offers: f.offers.map(o => ({
        remedy: o.remedy,
        after: o.after ?? null,
        minutes: o.minutes,
        plan: o.plan,
      })),
    })),
  };
};

export const run: CommandModule['run'] = async (words, options, world) => {
  const stage = words[0];
  const json = options.json === true;
  const fail = (
    error: { code: string; field: string; message: string; accepted: string },
    code: number,
  ): number => {
    if (json) world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error })}\n`);
    else world.err(`curvewright: ${error.message}. ${error.accepted}\n`);
    return code;
  };
  if (stage !== undefined && !STAGES.includes(stage as Stage)) {
    return fail(
      {
        code: 'missing',
        field: 'STAGE',
        message: `there is no stage "${plainText(stage).slice(0, 30)}"`,
        accepted: `One of ${STAGES.join(', ')}`,
      },
      EXIT.refused,
    );
  }
  const keeper = keeperOf(typeof options.build === 'string' ? options.build : undefined, world);
  if (!keeper.ok) {
    const { code, message } = keeper.fault;
    return fail({ code, field: 'build', message, accepted: 'curvewright builds lists them' }, EXIT.noInput);
  }
  try {
    const view = await settleAnswers(keeper.value);
    const wanted = (stage as Stage | undefined) ?? nextStage(view);
    if (json)
      world.out(
        `${JSON.stringify(sheetJson(view, wanted, { content: world.content(), system: view.build.system }))}\n`,
      );
    else world.out(await sheetText(keeper.value, wanted, world));
    return EXIT.done;
  } finally {
    keeper.value.open.release();
  }
};
