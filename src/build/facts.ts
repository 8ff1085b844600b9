import type { RailName, Tube } from '../ramp/design.ts';
import type { MarkedThird, Measured, MeasuredCurve } from '../ramp/measured.ts';
import { type Build, readingKey, type Survey } from './fold.ts';
import { READINGS } from './reading-names.ts';
import { countingSurvey } from './surveys.ts';

const value = (b: Build, step: string, ask: string): number | null =>
  b.readings.get(readingKey(step, ask))?.value ?? null;

const some = <K extends string>(key: K, v: number | null): Partial<Record<K, number>> =>
  v === null ? {} : ({ [key]: v } as Record<K, number>);

/** Offsets of a survey's stations that were read; a station read twice counts as the mean of its readings. */
export const readStations = (s: Survey): { stations_mm: number[]; offsets_mm: number[] } => {
  const stations_mm: number[] = [];
  const offsets_mm: number[] = [];
  s.readings.forEach((r, i) => {
    const at = s.stations_mm[i];
    if (r === null || at === undefined) return;
    const all = [...(r.again ?? []), r.offset_mm];
    stations_mm.push(at);
    offsets_mm.push(all.reduce((a, v) => a + v, 0) / all.length);
  });
  return { stations_mm, offsets_mm };
};

/** What the person chose to take a survey's readings for: mm to take off each, when they were read to another edge. */
export const edgeCorrection = (b: Build, survey: string): number => {
  const chosen = b.chosen.filter(c => c.remedy === 'other-edge' && c.plan.survey === survey).at(-1);
  return typeof chosen?.plan.subtract_mm === 'number' ? chosen.plan.subtract_mm : 0;
};

/**
 * Whether raw offsets look read to another edge: all about one value that is the tube's depth, or the deck's thickness.
 * Tested before any fitting, since a constant hides in a rigid fit.
 */
export const looksLikeOtherEdge = (
  offsets: readonly number[],
  depth_mm: number,
  deck_mm: number,
): number | null => {
  if (offsets.length < 3) return null;
  const mean = offsets.reduce((a, v) => a + v, 0) / offsets.length;
  const spread = Math.max(...offsets) - Math.min(...offsets);
  for (const edge of [depth_mm, depth_mm + deck_mm, deck_mm]) {
    for (const sign of [1, -1]) {
      if (Math.abs(mean - sign * edge) < 0.15 * edge && spread < Math.max(8, 0.4 * edge)) return sign * edge;
    }
  }
  return null;
};

const curveFrom = (b: Build, rail: RailName, depth_mm: number, deck_mm: number): MeasuredCurve | null => {
  const s = countingSurvey(b, rail);
  if (s === null) return null;
  const { stations_mm, offsets_mm } = readStations(s);
  if (stations_mm.length < 3) return null;
  const off = (s.edge === 'rail top face' ? depth_mm : 0) + edgeCorrection(b, s.id);
  const corrected = offsets_mm.map(o => o - off);
  // A survey that looks read to another edge moves nothing until the person has said what it is.
  if (looksLikeOtherEdge(corrected, depth_mm, deck_mm) !== null) return null;
  return {
    survey: s.id,
    phase: s.phase,
    line: s.to,
    stations_mm,
    offsets_mm: corrected,
    read_to_mm: s.read_to_mm,
  };
};

const thirdsOf = (b: Build): Map<RailName, MarkedThird[]> => {
  const marks = new Map<RailName, MarkedThird[]>();
  for (const e of b.marks) {
    const third: MarkedThird = {
      entry: e.id,
      third: e.third,
      first: e.first,
      marks_mm: e.marks_mm,
      close_rad: e.close_rad,
      kerf_mm: e.kerf_mm,
      gap_mm: e.gap_mm,
      bent_rad: value(b, READINGS.bent(e.rail, e.third), 'bent'),
      feeler_mm: value(b, READINGS.feeler(e.rail, e.third), 'kerf'),
    };
    marks.set(
      e.rail,
      [...(marks.get(e.rail) ?? []), third].sort((x, y) => x.third - y.third),
    );
  }
  return marks;
};

/** Everything measured that the ramp is computed from, read out of the build's facts. */
export const measuredOf = (b: Build, planned: { tube: Tube; deck_mm: number }): Measured => {
  const tubes = new Map<RailName, Partial<Tube>>();
  const curves = new Map<RailName, MeasuredCurve>();
  const names = new Set([...b.surveys.map(s => s.rail), ...b.marks.map(m => m.rail), ...'ABCDEFGHIJKL']);
  for (const rail of names) {
    const step = READINGS.tube(rail);
    const depth = value(b, step, 'depth');
    const width = value(b, step, 'width');
    const wall = value(b, step, 'wall');
    if (depth !== null || width !== null || wall !== null)
      tubes.set(rail, { ...some('depth_mm', depth), ...some('width_mm', width), ...some('wall_mm', wall) });
    const curve = curveFrom(b, rail, depth ?? planned.tube.depth_mm, planned.deck_mm);
    if (curve !== null) curves.set(rail, curve);
  }
  const depths = [...tubes.values()].map(t => t.depth_mm).filter(v => v !== undefined);
  const walls = [...tubes.values()].map(t => t.wall_mm).filter(v => v !== undefined);
  const lever = (depths[0] ?? planned.tube.depth_mm) - (walls[0] ?? planned.tube.wall_mm) / 2;
  const turn = value(b, READINGS.testKerf.step, READINGS.testKerf.ask);
  const pulled = value(b, READINGS.testPull.step, READINGS.testPull.ask);
  return {
    tubes,
    curves,
    // A closed slit turns by kerf over lever (exact); five of them on one gauge reading.
    kerf_mm: turn === null ? null : (turn / READINGS.testKerf.slits) * lever,
    testPull_rad:
      pulled === null || turn === null ? null : Math.max(0, (pulled - turn) / READINGS.testPull.slits),
    marks: thirdsOf(b),
    weldedPull: weldedPulls(b, curves),
  };
};

/** Pull told by a welded rail: what it came in beyond the bend it was tacked to, from its last tacked and its cold survey. */
const weldedPulls = (b: Build, curves: ReadonlyMap<RailName, MeasuredCurve>): Map<RailName, number> => {
  const pulls = new Map<RailName, number>();
  for (const [rail, curve] of curves) {
    if (curve.phase === 'tacked' || curve.phase === 'half-welded') continue;
    const slits = b.marks.filter(m => m.rail === rail);
    const count = slits.reduce((n, m) => n + m.marks_mm.length, 0);
    const told = value(b, `weld/read-bend@${rail}`, 'bent');
    const tacked = value(b, READINGS.bent(rail, 3), 'bent');
    if (count > 0 && told !== null && tacked !== null) pulls.set(rail, Math.max(0, (told - tacked) / count));
  }
  return pulls;
};
