import { sawSaid } from '../../build/bar-saw.ts';
import type { BarSaw } from '../../ramp/cutting/bar-saw.ts';
import { strikesArc } from '../arc-steps.ts';
import { TURN } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Least time from the last arc to leaving, and to the later look, s: an hour and up to three (NFPA 51B-2019 as a fire consultant's note has it [found]; OSHA asks half an hour [found]). */
export const WATCH_s = 3600;
export const LATE_s = 3 * 3600;
/** After so long nobody is asked any more whether they looked, s (our own judgement). */
const PAST_s = 12 * 3600;

/** The grinder at slits, joints, edges and rust: sparks without an arc. */
const GRINDS =
  /^(prep\/(open-faces|edges|clean-back)|cut\/(saw-third|deburr-third|test-piece|clean-rail)|(tack|weld)\/(re-cut|add-slit|again)-saw|finish\/(edges|clean)(?=[#@:]|$))/;
/** Pieces cut to length: sparks too, unless by a saw that throws none. */
const SAWS =
  /^(cut\/(rail|base-rail|plates|crossmembers|entry)|brace\/(uprights|diagonals)|assemble\/trim-rails)(?=[#@:]|$)/;
const SPARKLESS: ReadonlySet<string> = new Set(['band saw', 'hacksaw'] satisfies BarSaw[]);

/** The last spark that was logged: its entry and when, ms; null when there was none. */
export const lastSpark = (s: Situation): { entry: string; at: number } | null => {
  const { live } = s.build;
  const sawSparks = !SPARKLESS.has(sawSaid(s.build) ?? '');
  for (let i = live.length - 1; i >= 0; i--) {
    const e = live[i];
    if (e === undefined || (e.kind !== 'step-ticked' && e.kind !== 'reading-logged')) continue;
    if (strikesArc(e.step) || GRINDS.test(e.step) || (sawSparks && SAWS.test(e.step)))
      return { entry: e.id, at: Date.parse(e.at) };
  }
  return null;
};

/** The hour after the last spark, and the later look: each may be ticked once its time is over. */
export const fireWatch = (s: Situation): readonly StepDraft[] => {
  const last = lastSpark(s);
  if (last === null) return [];
  const passed_s = (s.now - last.at) / 1000;
  if (!(passed_s < PAST_s)) return [];
  const key = (name: string): string => `prep/${name}@${last.entry}`;
  const time = (v: number) => ({ v: Math.max(0, v), as: 'time' }) as const;
  const fills: Fills = {
    watch: time(WATCH_s),
    late: time(LATE_s),
    passed: time(passed_s),
    left: time(WATCH_s - passed_s),
    'late-left': time(LATE_s - passed_s),
  };
  return [
    {
      key: key('watch'),
      stage: 'prep',
      words: 'watch',
      fills,
      turn: TURN.place + 40,
      needs: [],
      uses: [],
      gates: [{ id: `watch-on@${last.entry}`, words: 'watch-on', shut: passed_s < WATCH_s, fills }],
      minutes: [5, 10],
    },
    {
      key: key('watch-late'),
      stage: 'prep',
      words: 'watch-late',
      fills,
      turn: TURN.place + 41,
      needs: [key('watch')],
      uses: [],
      gates: [{ id: `watch-late@${last.entry}`, words: 'watch-late', shut: passed_s < LATE_s, fills }],
      minutes: [5, 10],
    },
  ];
};
