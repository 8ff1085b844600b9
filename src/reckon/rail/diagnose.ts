import { placeless } from './candidates.ts';
import { logAdd } from './chances.ts';
import type { Cause, Diagnosis, Note, OddSlit, RailSurvey, Rival } from './diagnosis.ts';
import { decidingNotes, finerNotes, oddNotes } from './notes.ts';
import { placed } from './placed.ts';
import { scan } from './scan.ts';
import { type SurveyModel, surveyModel } from './survey-model.ts';
import { scatterOf, type Weighed, weigh } from './weigh.ts';

/**
 * A cause is named from this chance on; below it the answer is "unclear", with its rivals and where to read again: a few more
 * readings cost minutes, a wrong cause a slit. The fewer the stations, the more a name rests on how rails usually go wrong;
 * once a gauge was laid on the slits in question there is little more to read.
 */
const NAMED_FROM = 0.6;
const SPARSE_STATIONS = 16;
const SPARSE_NAMED_FROM = 0.7;
const GAUGED_NAMED_FROM = 0.5;
const namedFrom = ({ stations_mm, gauge = [] }: RailSurvey): number => {
  if (gauge.length > 0) return GAUGED_NAMED_FROM;
  return stations_mm.length < SPARSE_STATIONS ? SPARSE_NAMED_FROM : NAMED_FROM;
};
/** An odd slit is named when it, or one as near as this (slits, or a share of all), is this likely to be the one. */
const SLIT_WITHIN = 1;
const SLIT_WITHIN_SHARE = 0.04;
const SLIT_FROM = 0.8;
/** With fewer stations than this no slit is named at all: a jump or a bump would look the same. */
const FEW_STATIONS = 8;
const FEW_TRUST = 0.5;
/** Rivals below this are not worth a line. */
const RIVAL_FROM = 0.02;
const SLIT_RIVAL_FROM = 0.1;

type Guess = Readonly<{ weighed: Weighed; chance: number }>;

/**
 * What happened to a rail, from a handful of offsets.
 *
 * Every cause is weighed against the readings with covariance noise²·I + scatter²·J·Jᵀ and a broad prior on how the rail lies,
 * summed over the noise and the scatter that real benches have; the wrong edge on the raw readings, before any rigid fit
 * could hide it. A gross misreading, a jump, a bump and a smoothly uneven rail are weighed beside the causes: where one of
 * those explains the readings better, or two causes come near each other, the answer is "unclear" and says what to measure.
 * [derived; measured on thousands of made-up rails, see its tests]
 *
 * @param survey three stations or more, offsets in mm, + toward the centre
 */
export function diagnose(survey: RailSurvey): Diagnosis {
  const model = surveyModel(survey);
  const guesses = weighAll(model);
  const slight = slightlyOut(guesses[0]!.weighed);
  if (slight !== null) {
    const told = withoutStation(survey, slight);
    if (told !== null)
      return { ...told, notes: [...told.notes, ...oddNotes(model, guesses[0]!.weighed, [])] };
  }
  const byCause = new Map<Cause, number>();
  for (const { weighed, chance } of guesses) {
    const { cause } = weighed.hypothesis;
    byCause.set(cause, (byCause.get(cause) ?? 0) + chance);
  }
  const [top, chance] = [...byCause].sort((a, b) => b[1] - a[1])[0]!;
  const leading = guesses.find(g => g.weighed.hypothesis.cause === top)!;
  const claims = claimsOf(model, guesses, byCause);
  const claim = claims.find(c => c.cause === top);
  const clear = claim !== undefined && chance >= namedFrom(survey) && claim.told >= SLIT_FROM;
  const best = leading.weighed;
  const scatter = scatterOf(model, best);
  const errors_rad = best.errors_rad.map((e, i) => e + scatter[i]!);
  const { oddity } = best.hypothesis;
  return {
    cause: clear ? top : 'unclear',
    // Where nothing is named, what the likeliest claim leaves is how sure "unclear" is.
    sure: clear ? chance : 1 - claims.reduce((most, c) => Math.max(most, c.sure), 0),
    rivals: rivalsOf(claims, guesses, clear ? leading : null),
    notes: notesOf(model, guesses, leading, clear, errors_rad),
    even_rad: best.even_rad,
    odd_slits: clear ? oddSlits(best) : [],
    rigid: best.rigid,
    edge_mm: best.edge_mm,
    errors_rad,
    doubted_station: oddity?.is === 'reading' ? oddity.station + 1 : null,
    contradictory: oddity?.is === 'reading' || oddity?.is === 'jump' || oddity?.is === 'swing',
    measure_again: oddity !== null,
  };
}

/** A reading out by no more than this, mm, is a slip of the rule, not of a key. */
const SLIGHT_MM = 3;

/** The station, counted from 0, of the one reading that is slightly out; null where the best guess doubts none, or doubts it much. */
const slightlyOut = ({ hypothesis, oddity_mm }: Weighed): number | null =>
  hypothesis.oddity?.is === 'reading' && Math.abs(oddity_mm) <= SLIGHT_MM ? hypothesis.oddity.station : null;

/**
 * What the other stations say, or null where they name nothing either. A reading out by a hair is worth a second look, but hides
 * no cause that all the others show.
 */
function withoutStation(survey: RailSurvey, station: number): Diagnosis | null {
  const rest = (values: readonly number[]) => values.filter((_, j) => j !== station);
  const stations_mm = rest(survey.stations_mm);
  if (stations_mm.length < FEW_STATIONS) return null;
  const told = diagnose({ ...survey, stations_mm, offsets_mm: rest(survey.offsets_mm) });
  // A cause that is named doubts no station and asks for no reading by number.
  return told.cause === 'unclear' || told.notes.some(n => n.is === 'read-again') ? null : told;
}

/** All hypotheses with their chances, the likeliest first. */
function weighAll(model: SurveyModel): Guess[] {
  // A slit left uncut or unclosed lacks just the bend planned for it.
  const missed_rad = -model.survey.plan.bend_rad / model.slits;
  const looked = scan(model, missed_rad);
  const weighed = [...placeless(model), ...placed(model, looked, missed_rad)].flatMap(
    h => weigh(model, h, looked.spreadings) ?? [],
  );
  const gauged = withGauge(model.survey, weighed);
  gauged.sort((a, b) => b.log - a.log);
  const all = gauged.reduce((sum, w) => logAdd(sum, w.log), Number.NEGATIVE_INFINITY);
  return gauged.map(w => ({ weighed: w, chance: Math.exp(w.log - all) }));
}

/** One bend read as two flats by a gauge of 0.1°, sd, rad [derived: √2 × 0.1°]. */
const GAUGE_SD = (Math.SQRT2 * 0.1 * Math.PI) / 180;

/**
 * What a gauge read of single slits, weighed in: it sees one slit at a time, which offsets never do. A guess says what the slit
 * should read, give or take how well it knows its odd slit and how much slits scatter.
 */
function withGauge(survey: RailSurvey, weighed: readonly Weighed[]): Weighed[] {
  const reads = (survey.gauge ?? []).filter(g => g.slit >= 1 && g.slit <= survey.plan.slits_mm.length);
  if (reads.length === 0) return [...weighed];
  return weighed.map(w => {
    const log = reads.reduce((sum, { slit, turn_rad }) => {
      const known = w.odd.find(o => o.at === slit - 1)?.sd_rad ?? 0;
      const sd = Math.hypot(GAUGE_SD, w.spreading.spread.scatter_rad, known);
      return sum - 0.5 * ((turn_rad - w.errors_rad[slit - 1]!) / sd) ** 2 - Math.log(sd);
    }, w.log);
    return { ...w, log };
  });
}

const oddSlits = (w: Weighed): OddSlit[] =>
  w.odd
    .map(o => ({ slit: o.at + 1, turn_rad: o.turn_rad }))
    .sort((a, b) => Math.abs(b.turn_rad) - Math.abs(a.turn_rad));

/** A cause that could be named: `told` is the share of its chance at, or right beside, the slits of its best guess. */
type Claim = Readonly<{ cause: Cause; best: Weighed; told: number; sure: number }>;

function claimsOf(
  model: SurveyModel,
  guesses: readonly Guess[],
  byCause: ReadonlyMap<Cause, number>,
): Claim[] {
  const within = Math.max(SLIT_WITHIN, Math.round(SLIT_WITHIN_SHARE * model.slits));
  const few = model.n < FEW_STATIONS;
  return [...byCause].flatMap(([cause, chance]) => {
    if (cause === 'unclear') return [];
    const same = guesses.filter(g => g.weighed.hypothesis.cause === cause);
    const best = same[0]!.weighed;
    const near = same.filter(g =>
      g.weighed.odd.every((o, k) => Math.abs(o.at - (best.odd[k]?.at ?? o.at)) <= within),
    );
    const share = chance > 0 ? near.reduce((sum, g) => sum + g.chance, 0) / chance : 0;
    const told = few && best.odd.length > 0 ? share * FEW_TRUST : share;
    return [{ cause, best, told, sure: chance * told }];
  });
}

/** Other causes, and other slits of the same cause, the likeliest first. */
function rivalsOf(claims: readonly Claim[], guesses: readonly Guess[], leading: Guess | null): Rival[] {
  const named = leading?.weighed.hypothesis.cause;
  const rivals: Rival[] = claims
    .filter(c => c.sure >= RIVAL_FROM && c.cause !== named)
    .map(c => ({ cause: c.cause, odd_slits: oddSlits(c.best), sure: c.sure }));
  if (leading !== null && leading.weighed.odd.length > 0) rivals.push(...otherSlits(guesses, leading));
  return rivals.sort((a, b) => b.sure - a.sure);
}

/** The same cause at other slits. */
function otherSlits(guesses: readonly Guess[], leading: Guess): Rival[] {
  const { cause } = leading.weighed.hypothesis;
  const key = (w: Weighed) => w.odd.map(o => o.at).join(' ');
  const sums = new Map<string, { best: Weighed; sure: number }>();
  for (const { weighed, chance } of guesses) {
    if (weighed.hypothesis.cause !== cause) continue;
    const sum = sums.get(key(weighed)) ?? { best: weighed, sure: 0 };
    sum.sure += chance;
    sums.set(key(weighed), sum);
  }
  sums.delete(key(leading.weighed));
  return [...sums.values()]
    .filter(s => s.sure >= SLIT_RIVAL_FROM)
    .map(s => ({ cause, odd_slits: oddSlits(s.best), sure: s.sure }));
}

function notesOf(
  model: SurveyModel,
  guesses: readonly Guess[],
  leading: Guess,
  clear: boolean,
  errors_rad: readonly number[],
): Note[] {
  const { weighed } = leading;
  const { cause } = weighed.hypothesis;
  if (cause === 'unclear') return oddNotes(model, weighed, errors_rad);
  const slits = (w: Weighed) => w.odd.map(o => o.at).join(' ');
  const other = guesses.find(g =>
    clear
      ? g.weighed.hypothesis.cause === cause &&
        slits(g.weighed) !== slits(weighed) &&
        g.chance >= SLIT_RIVAL_FROM
      : g.weighed.hypothesis.cause !== cause || slits(g.weighed) !== slits(weighed),
  );
  const finer = clear ? finerNotes(model.survey, weighed) : [];
  if (other === undefined) return finer;
  const more = guesses.filter(g => g.chance >= RIVAL_FROM).map(g => g.weighed);
  return [...finer, ...decidingNotes(model, weighed, other.weighed, more)];
}
