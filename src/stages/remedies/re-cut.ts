import type { StepDraft } from '../sheet.ts';
import {
  angle,
  BENCH,
  frozenRows,
  frozenText,
  type Injecting,
  listed,
  type Offering,
  offer,
  railOf,
  stageOfPhase,
  thin,
} from './remedy.ts';
import { type SlitSetting, settingOf } from './slit-limits.ts';
import { beforeSurvey } from './turns.ts';

/** Breaking a tack, setting, tacking; sawing a weld out, setting, welding, cooling; each with a share for reading again (common practice). */
const MINUTES = { tacked: { once: 5, each: 13 }, welded: { once: 20, each: 25 } } as const;

export const recutMinutes = (phase: string, count: number): number => {
  const m = phase === 'cold' ? MINUTES.welded : MINUTES.tacked;
  return m.once + m.each * count;
};

/** A few slits opened or closed again, by as much as brings the rail in. */
export const offerReCut: Offering = c => {
  const { answer, r } = c;
  if (answer === null || answer.recuts.length === 0) return [];
  const slits = answer.recuts.map(t => settingOf(r, t.slit, t.turn_rad));
  return [
    offer(
      c,
      're-cut',
      recutMinutes(r.survey.phase, slits.length),
      answer.recut_mm,
      {
        slits: listed(slits.map(x => x.slit)),
        count: slits.length,
        gap: thin(Math.max(...slits.map(x => x.gap_mm))),
      },
      { slits },
    ),
  ];
};

const slitItems = (key: string, slits: readonly SlitSetting[]): NonNullable<StepDraft['items']> =>
  slits.map(x => ({
    key: `${key}#${x.slit}`,
    name: String(x.slit),
    value: thin(x.gap_mm),
    second: angle(Math.abs(x.turn_rad)),
    note: { words: `says.slit-${x.saw ? 'sawn' : 'spread'}-${x.turn_rad < 0 ? 'open' : 'closed'}` },
  }));

/** Steps that turn slits of a rail: spread and tacked while it is tacked; sawn out, set and welded once it is cold. */
export const slitSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const slits = frozenRows<SlitSetting>(chosen, 'slits', ['slit', 'turn_rad', 'gap_mm']);
  if (on === null || slits.length === 0) return [];
  const phase = frozenText(chosen, 'phase');
  const stage = stageOfPhase(phase);
  const fills = {
    ...BENCH,
    rail: on.rail,
    slits: listed(slits.map(x => x.slit)),
    count: slits.length,
    gap: thin(Math.max(...slits.map(x => x.gap_mm))),
  };
  const base = { stage, fills, uses: [], line: phase === 'tacked' ? 'tack line' : 'finished line' } as const;
  const key = `${stage}/re-cut@${chosen.entry}`;
  const turn = (at: number) => beforeSurvey(s, on.index, phase, at);
  const n = slits.length;
  if (phase !== 'cold')
    return [
      {
        ...base,
        key,
        words: 're-cut',
        turn: turn(0),
        needs: [],
        items: slitItems(key, slits),
        minutes: [n * 8, n * 15],
      },
    ];
  const sawn = `${stage}/re-cut-saw@${chosen.entry}`;
  const weld = `${stage}/re-cut-weld@${chosen.entry}`;
  return [
    {
      ...base,
      key: sawn,
      words: 're-cut-saw',
      turn: turn(0),
      needs: [],
      items: slits.map(x => ({ key: `${sawn}#${x.slit}`, name: String(x.slit) })),
      minutes: [n * 8, n * 14],
    },
    {
      ...base,
      key,
      words: 're-cut',
      turn: turn(1),
      needs: [sawn],
      items: slitItems(key, slits),
      minutes: [n * 6, n * 12],
    },
    {
      ...base,
      key: weld,
      words: 're-cut-weld',
      turn: turn(2),
      needs: [key],
      items: slits.map(x => ({ key: `${weld}#${x.slit}`, name: String(x.slit) })),
      minutes: [n * 8, n * 15],
    },
  ];
};
