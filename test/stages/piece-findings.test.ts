import { describe, expect, test } from 'vitest';
import type { Doing } from '../../src/build/entries.ts';
import type { MemberKind } from '../../src/ramp/members.ts';
import { pieceFindings, pieceName } from '../../src/stages/piece-findings.ts';
import type { Finding } from '../../src/stages/sheet.ts';
import { begun, DEG, set } from './doings.ts';
import { situationFor } from './situation-for.ts';
import { wordGaps } from './word-gaps.ts';

const KINDS: readonly MemberKind[] = [
  'curved rail',
  'base rail',
  'upright',
  'lip upright',
  'diagonal',
  'crossmember',
  'base crossmember',
  'rear diagonal',
  'side plate',
];

const drawn = situationFor([begun()]).ramp;
const member = (need: string) => {
  const m = drawn.members.find(x => x.need === need);
  if (m === undefined) throw new Error(`no ${need}`);
  return m;
};

/** A piece cut for a need, off what is asked by so much. */
const cut = (need: string, off: number, more: { asked?: number; turn?: number } = {}): Doing => {
  const m = member(need);
  return {
    kind: 'piece-cut',
    need,
    section: '30x30x2',
    asked_mm: more.asked ?? m.long_mm,
    length_mm: m.long_mm + off,
    typed: String(m.long_mm + off),
    ends_rad: [m.ends.first_rad, m.ends.second_rad + (more.turn ?? 0)],
  };
};
const findings = (...doings: Doing[]): readonly Finding[] =>
  pieceFindings(situationFor([begun(), ...doings]), KINDS, 'brace');
const offers = (list: readonly Finding[], at = 0): readonly string[] =>
  list[at]?.offers.map(o => o.remedy) ?? [];

/** Every finding a test saw, for its words. */
const seen: Finding[] = [];
const look = (...doings: Doing[]): readonly Finding[] => {
  const list = findings(...doings);
  seen.push(...list);
  return list;
};

describe('a piece against what is needed of it', () => {
  test('cut as asked it is no finding', () => {
    expect(look(cut('upright@A:9', 0))).toEqual([]);
    // A tape and a hand saw bring back half a millimetre; a novice's fit takes one and a half.
    expect(look(cut('upright@A:9', 1.4), cut('base rail@A', -1.5))).toEqual([]);
  });

  test('a careful shop takes one millimetre', () => {
    expect(look(set('tolerance', 'careful shop'), cut('upright@A:9', 1.4))).toHaveLength(1);
  });

  test('too long by 7.5: trim it, stand it nearer the lip, cut new or leave it', () => {
    const [finding] = look(cut('upright@A:7', 7.5));
    expect(finding).toMatchObject({
      key: 'piece@upright@A:7#1',
      severity: 'fix',
      words: 'piece-long',
      stage: 'brace',
    });
    expect(finding?.worst_mm).toBeCloseTo(7.5, 9);
    const trim = finding?.offers.find(o => o.remedy === 'piece-trim');
    expect(trim?.after?.within).toBe(true);
    expect(trim?.plan.to_mm).toBeCloseTo(member('upright@A:7').long_mm, 9);
    // Where the rail is 7.5 mm higher: 7.5 over the sine of its slope along the rail (derived).
    const nearer = finding?.offers.find(o => o.remedy === 'piece-nearer-lip');
    const slope = member('upright@A:7').ends.second_rad;
    expect(nearer?.plan.shift_mm).toBeCloseTo(7.5 / Math.sin(slope), 6);
    expect(finding?.offers.at(-1)).toMatchObject({ remedy: 'leave-piece', after: { within: false } });
  });

  test('an upright is never moved onto a slit', () => {
    const shifts = [5, 10, 20, 30, 40, 50, 60].flatMap(off => {
      const list = look(cut('upright@A:7', off));
      return (
        list[0]?.offers.filter(o => o.remedy === 'piece-nearer-lip').map(o => o.plan.shift_mm as number) ?? []
      );
    });
    const slits = drawn.plans.get('A')?.slits ?? [];
    expect(shifts.length).toBeGreaterThan(0);
    expect(shifts.length).toBeLessThan(7);
    for (const shift of shifts) {
      const at = (member('upright@A:7').along_mm ?? 0) + shift;
      // 15 mm of half an upright and 25 mm clear of the slit.
      expect(Math.min(...slits.map(x => Math.abs(x.at_mm - at)))).toBeGreaterThanOrEqual(40);
    }
  });

  test('too short: gaps that a weld fills, plates, another place, and every way its deviation', () => {
    expect(offers(look(set('tolerance', 'careful shop'), cut('crossmember@A-B:4', -1.3)))).toContain(
      'piece-gap',
    );
    const [finding] = look(cut('crossmember@A-B:4', -5));
    const names = finding?.offers.map(o => o.remedy) ?? [];
    expect(names).toEqual(
      expect.arrayContaining(['piece-plate', 'piece-all-alike', 'piece-new', 'leave-piece']),
    );
    expect(names).not.toContain('piece-gap');
    expect(finding?.offers.every(o => o.after !== undefined)).toBe(true);
    expect(finding?.offers.find(o => o.remedy === 'piece-plate')?.plan.plate_mm).toBe(5);
  });

  test('remedies stand in the limit first, then by least minutes, and leaving it is among them', () => {
    for (const off of [-40, -5, 3, 30]) {
      const [finding] = look(cut('upright@A:9', off));
      const rank = finding?.offers.map(o => [o.after?.within === true ? 0 : 1, o.minutes] as const) ?? [];
      expect(rank.length).toBeGreaterThanOrEqual(3);
      expect([...rank].sort((a, b) => a[0] - b[0] || a[1] - b[1])).toEqual(rank);
      expect(finding?.offers.map(o => o.remedy)).toContain('leave-piece');
    }
  });

  test('a short upright is named the place that it fits, and given there it is judged by that', () => {
    const short = cut('upright@A:9', -40);
    const [finding] = look(short);
    const elsewhere = finding?.offers.find(o => o.remedy === 'piece-elsewhere');
    const place = drawn.members.find(m => m.need === elsewhere?.plan.serves);
    expect(place?.long_mm).toBeLessThanOrEqual(member('upright@A:9').long_mm - 40 + 0.5);
    const chosen: Doing = {
      kind: 'remedy-chosen',
      finding: finding?.key ?? '',
      remedy: 'piece-elsewhere',
      plan: { ...elsewhere?.plan },
    };
    const after = look(short, chosen);
    expect(after.map(f => f.key)).toEqual([`piece@${place?.need}#0`]);
    expect(after[0]?.words).toBe('piece-now-long');
  });

  test('two uprights that came out crosswise change places', () => {
    const nine = member('upright@A:9').long_mm;
    const seven = member('upright@A:7').long_mm;
    const crossed = [cut('upright@A:9', seven - nine), cut('upright@A:7', nine - seven)];
    const [first] = look(...crossed);
    const swap = first?.offers.find(o => o.remedy === 'piece-swap');
    expect(swap?.after?.v).toBeCloseTo(0, 9);
    const chosen: Doing = {
      kind: 'remedy-chosen',
      finding: first?.key ?? '',
      remedy: 'piece-swap',
      plan: { ...swap?.plan },
    };
    // Lengths are right then; the ends were cut to each other's slope and are said instead.
    expect(look(...crossed, chosen).map(f => f.words)).toEqual(['piece-end', 'piece-end']);
  });

  test('a rail blank is cut long to be trimmed: short is felt only when too little is left past the lip mark', () => {
    expect(look(cut('curved rail@A', -30))).toEqual([]);
    expect(look(cut('curved rail@A', 400))).toEqual([]);
    const [finding] = look(cut('curved rail@A', -60));
    expect(offers(finding === undefined ? [] : [finding])).toEqual(
      expect.arrayContaining(['rail-lip-back', 'piece-new', 'leave-piece']),
    );
  });

  test('a base rail’s joint hides a little under its side plates', () => {
    expect(offers(look(cut('base rail@A', -20)))).toContain('piece-joint');
    expect(offers(look(cut('base rail@A', -60)))).not.toContain('piece-joint');
  });

  test('cut right to a curve that has since changed, it says when and what is needed now', () => {
    // A lip 30 mm lower after the upright was cut: the piece is right for what was asked then.
    const list = look(cut('lip upright@A', 0), set('shape', { height: 570, exit: 30 * DEG }));
    const [finding] = list;
    expect(finding?.words).toBe('piece-now-long');
    expect(finding?.fills?.asked).toEqual({ v: member('lip upright@A').long_mm, as: 'length' });
    expect(offers(list)).toContain('piece-trim');
  });

  test('an end cut to another slope leaves a wedge', () => {
    const [finding] = look(cut('upright@A:9', 0, { turn: 3 * DEG }));
    expect(finding?.words).toBe('piece-end');
    // 30 mm of tube at 3°: 30·tan 3° (derived).
    expect(finding?.worst_mm).toBeCloseTo(30 * Math.tan(3 * DEG), 9);
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
    expect(look(cut('upright@A:9', 0, { turn: 0.8 * DEG }))).toEqual([]);
  });

  test('a piece that nothing needs any more keeps its name and gets another use', () => {
    const piece = cut('upright@A:9', 0);
    const list = look(piece, set('shape', { height: 300, exit: 30 * DEG }));
    const stray = list.find(f => f.words === 'piece-unneeded');
    expect(stray?.severity).toBe('watch');
    expect(stray?.offers.map(o => o.remedy)).toEqual(
      expect.arrayContaining(['piece-elsewhere', 'piece-spare', 'piece-design-back', 'leave-unneeded']),
    );
  });

  test('the last piece cut for a need counts; one called spoiled does not', () => {
    const wrong = cut('upright@A:9', 30);
    expect(look(wrong, cut('upright@A:9', 0))).toEqual([]);
    const spoiled: Doing = { kind: 'piece-fated', piece: 'entry-2', fate: 'spoiled' };
    expect(look(wrong, spoiled)).toEqual([]);
  });

  test('steel welded into the frame is judged where it stands, not by the list', () => {
    const wrong = cut('upright@A:9', 30);
    expect(look(wrong, { kind: 'step-ticked', step: 'brace/weld-uprights@A', basis: {} })).toEqual([]);
    expect(look(wrong, { kind: 'piece-fated', piece: 'entry-2', fate: 'fitted' })).toEqual([]);
  });

  test('only the kinds a stage answers for', () => {
    const s = situationFor([begun(), cut('upright@A:9', 30), cut('base rail@A', 30)]);
    expect(pieceFindings(s, ['base rail'], 'cut').map(f => f.key)).toEqual(['piece@base rail@A#1']);
  });

  test('names as written on the steel', () => {
    expect(pieceName('upright@A:9')).toBe('upright 9 A');
    expect(pieceName('crossmember@A-B:4')).toBe('crossmember 4');
    expect(pieceName('lip upright@B')).toBe('lip upright B');
    expect(pieceName('rear diagonal@A-B')).toBe('rear diagonal');
    expect(pieceName('crossmember@B-C:4')).toBe('crossmember 4 B-C');
  });

  test('everything said has words, and every mark in them is filled', () => {
    expect(seen.length).toBeGreaterThan(20);
    expect(
      wordGaps({ stage: 'brace', figures: [], steps: [], findings: seen, scene: { title: '', items: [] } }),
    ).toEqual([]);
  });
});
