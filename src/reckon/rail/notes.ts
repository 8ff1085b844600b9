import type { Note, RailSurvey } from './diagnosis.ts';
import { bench, offsetsOn } from './forward.ts';
import { flatMiddles, lineLength } from './rail-plan.ts';
import { oddityColumn, type SurveyModel } from './survey-model.ts';
import type { Weighed } from './weigh.ts';

/** A closing short by this little of the whole planned bend counts as a slit left out, rad. */
const MISSED_WITHIN = 0.003;
/** Kinks this near to a support are laid to it as readily as to the slit, as a share of the pitch. */
const NEAR_SUPPORT = 0.75;
/** Below this many stations no slit can be told from its neighbours. */
const FEW_STATIONS = 8;

/** What the best guess says beyond its cause. */
export function finerNotes(survey: RailSurvey, best: Weighed): Note[] {
  const { plan, supports_mm = [] } = survey;
  const notes: Note[] = [];
  const { edge } = best.hypothesis;
  if (edge !== null) notes.push({ is: 'edge', of: edge.of, offset_mm: best.edge_mm });
  const planned = plan.bend_rad / plan.slits_mm.length;
  const pitch = (plan.radius_mm * plan.bend_rad) / plan.slits_mm.length;
  best.odd.forEach((o, k) => {
    const slit = o.at + 1;
    if (k > 0) notes.push({ is: 'second-slit', slit, turn_rad: o.turn_rad });
    if (Math.abs(o.turn_rad + planned) < Math.max(MISSED_WITHIN, 2 * o.sd_rad))
      notes.push({ is: 'missed-slit', slit });
    const at = plan.slits_mm[o.at]!;
    const support = supports_mm.find(s => Math.abs(s - at) <= NEAR_SUPPORT * pitch);
    if (support !== undefined) notes.push({ is: 'kink-at-support', slit, support_mm: support });
  });
  return notes;
}

/** Neighbouring reading at a station: what its neighbours on the line lead to expect there, mm. */
function neighbours(model: SurveyModel, station: number): number {
  const { stations_mm, offsets_mm } = model.survey;
  const at = model.order.indexOf(station);
  const [before, after] = [model.order[at - 1], model.order[at + 1]];
  if (before === undefined) return offsets_mm[after ?? station]!;
  if (after === undefined) return offsets_mm[before]!;
  const span = stations_mm[after]! - stations_mm[before]!;
  const share = span > 0 ? (stations_mm[station]! - stations_mm[before]!) / span : 0.5;
  return offsets_mm[before]! + share * (offsets_mm[after]! - offsets_mm[before]!);
}

/** Mean error of the slits in each third of the rail, rad. */
function thirds(errors: readonly number[]): [number, number, number] {
  const mean = (part: number) => {
    const some = errors.filter((_, i) => Math.min(2, Math.floor((3 * (i + 0.5)) / errors.length)) === part);
    return some.reduce((sum, e) => sum + e, 0) / Math.max(1, some.length);
  };
  return [mean(0), mean(1), mean(2)];
}

/** Why no cause is named, from the best guess among those that are none. */
export function oddNotes(model: SurveyModel, best: Weighed, errors_rad: readonly number[]): Note[] {
  const { oddity, patterns } = best.hypothesis;
  const { offsets_mm } = model.survey;
  if (oddity?.is === 'reading')
    return [
      {
        is: 'read-again',
        station: oddity.station + 1,
        read_mm: offsets_mm[oddity.station]!,
        neighbours_mm: neighbours(model, oddity.station),
      },
    ];
  if (oddity?.is === 'jump')
    return [{ is: 'jump', station: model.order[oddity.after + 1]! + 1, by_mm: best.oddity_mm }];
  if (oddity?.is === 'swing') {
    const station = model.order[oddity.after + 1]!;
    const step_mm = best.oddity_mm * oddityColumn(model, oddity)[station]!;
    return [{ is: 'swing', station: station + 1, by_mm: best.oddity_mm, step_mm, about: oddity.about }];
  }
  if (oddity?.is === 'bump') return [{ is: 'bump', at_mm: oddity.at_mm, by_mm: best.oddity_mm }];
  if (patterns.length > 0) return [{ is: 'uneven', thirds_rad: thirds(errors_rad) }];
  return [{ is: 'no-simple-cause' }];
}

/** Slits that a person is asked to lay a gauge on at once. */
const MOST_GAUGED = 4;

/**
 * Where a few more readings would tell two guesses apart, and which slits an angle gauge should be laid beside: those of the two, then
 * those of `more`, the likeliest first.
 */
export function decidingNotes(
  model: SurveyModel,
  a: Weighed,
  b: Weighed,
  more: readonly Weighed[] = [],
): Note[] {
  const { stations_mm } = model.survey;
  const notes: Note[] = [];
  if (stations_mm.length < FEW_STATIONS) notes.push({ is: 'too-few-stations' });
  const at_mm = tellingPlaces(model, a, b);
  if (at_mm.length > 0) notes.push({ is: 'measure', at_mm });
  const slits = [...new Set([a, b, ...more].flatMap(w => w.odd.map(o => o.at + 1)))].slice(0, MOST_GAUGED);
  if (slits.length > 0) notes.push({ is: 'which-slit', slits: slits.sort((x, y) => x - y) });
  return notes;
}

/** Up to three places along the line, well apart, where two guesses differ the most, mm. */
function tellingPlaces(model: SurveyModel, a: Weighed, b: Weighed): number[] {
  const { plan } = model.survey;
  const length = lineLength(plan);
  const places = [...new Set([...flatMiddles(plan), length])];
  const on = bench(plan, places);
  const read = (w: Weighed) => offsetsOn(on, w.errors_rad, w.rigid).map(o => o + w.edge_mm);
  const [ofA, ofB] = [read(a), read(b)];
  const apart = places.map((_, k) => Math.abs(ofA[k]! - ofB[k]!));
  const ranked = [...places.keys()].sort((x, y) => apart[y]! - apart[x]!);
  const chosen: number[] = [];
  for (const k of ranked) {
    if (chosen.length === 3) break;
    if (chosen.every(c => Math.abs(places[c]! - places[k]!) > length / 6)) chosen.push(k);
  }
  return chosen.map(k => places[k]!).sort((x, y) => x - y);
}
