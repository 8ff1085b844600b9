import type { Piece } from '../build/fold.ts';
import type { RailName } from '../ramp/design.ts';
import type { Member, MemberKind } from '../ramp/members.ts';
import { pieceName } from './piece-name.ts';
import {
  after,
  type Case,
  elsewhere,
  LEAST_TO_TRIM,
  LIMIT,
  NO_TURN,
  offer,
  ownPlan,
  pieceOffers,
  TAPE,
} from './piece-remedies.ts';
import type { Fill, Fills, Finding, Stage } from './sheet.ts';
import type { Situation } from './situation.ts';

export { pieceName } from './piece-name.ts';

/** An end cut off by more leaves a wedge of a gap, rad: 1° for a novice, 0.5° in a careful shop (common practice). */
const END_LIMIT = { novice: Math.PI / 180, 'careful shop': Math.PI / 360 } as const;

const length = (v: number): Fill => ({ v, as: 'length' });

/** Pieces with the need they serve, after remedies that gave one to another need or set one aside. */
const served = (s: Situation): readonly Piece[] =>
  s.build.pieces.map(piece => {
    let now = piece;
    for (const c of s.build.chosen) {
      if (c.plan.piece === piece.id && typeof c.plan.serves === 'string')
        now = { ...now, serves: c.plan.serves };
      if (c.plan.other === piece.id && typeof c.plan.otherServes === 'string')
        now = { ...now, serves: c.plan.otherServes };
      if (c.plan.spoils === piece.id) now = { ...now, fate: 'spoiled' };
    }
    return now;
  });

/** The last piece cut for each need, and how many were cut for it. */
const byNeed = (pieces: readonly Piece[]): ReadonlyMap<string, { piece: Piece; count: number }> => {
  const map = new Map<string, { piece: Piece; count: number }>();
  for (const piece of pieces) {
    if (piece.fate === 'spoiled') continue;
    map.set(piece.serves, { piece, count: pieces.filter(p => p.need === piece.serves).length });
  }
  return map;
};

/** Steel already welded into the frame is judged where it stands, not by the list. */
const isBuiltIn = (s: Situation, m: Member, piece: Piece): boolean => {
  if (piece.fate === 'fitted' || piece.fate === 'welded') return true;
  const settled = (key: string): boolean => s.build.ticks.has(key);
  switch (m.kind) {
    case 'upright':
    case 'lip upright':
      return settled(`brace/weld-uprights@${m.rail}`);
    case 'diagonal':
      return settled(`brace/weld-diagonals@${m.rail}`);
    case 'curved rail':
      return settled('assemble/trim-rails') || s.ramp.shapes.get(m.rail ?? '')?.survey !== null;
    default:
      return settled('assemble/weld');
  }
};

/** How far a piece's length may be from what is asked before it is a finding, mm: under it, over it. */
const allowed = (s: Situation, m: Member): { short: number; long: number } => {
  const limit = LIMIT[s.ramp.design.tolerance];
  switch (m.kind) {
    case 'curved rail':
      // Cut long to be trimmed: a shorter blank is felt only when too little is left past the lip mark.
      return { short: Math.max(0, m.long_mm - railToLip(s, m.rail) - LEAST_TO_TRIM), long: Number.MAX_VALUE };
    case 'side plate':
    case 'foot plate':
    case 'bearer':
    case 'entry plate':
      return { short: 5, long: 5 };
    default:
      return { short: limit, long: limit };
  }
};

const railToLip = (s: Situation, rail: RailName | undefined): number =>
  s.ramp.plans.get(rail ?? '')?.toLip_mm ?? 0;

const fillsOf = (m: Member, piece: Piece): Fills => ({
  piece: pieceName(m.need),
  cut: length(piece.length_mm),
  needed: length(m.long_mm),
  off: length(Math.abs(piece.length_mm - m.long_mm)),
  section: pieceName(m.kind),
});

const lengthFinding = (
  s: Situation,
  m: Member,
  found: { piece: Piece; count: number },
  needs: readonly Member[],
  cut: ReadonlyMap<string, { piece: Piece; count: number }>,
  stage: Stage,
): Finding | null => {
  const { piece, count } = found;
  const off = piece.length_mm - m.long_mm;
  const may = allowed(s, m);
  if (off >= -may.short - NO_TURN && off <= may.long + NO_TURN) return null;
  const limit = m.kind === 'curved rail' ? may.short : Math.min(may.short, may.long);
  const fills = fillsOf(m, piece);
  const asked = Math.abs(piece.asked_mm - m.long_mm) > TAPE;
  return {
    key: `piece@${m.need}#${count}`,
    stage,
    severity: 'fix',
    words: asked ? (off > 0 ? 'piece-now-long' : 'piece-now-short') : off > 0 ? 'piece-long' : 'piece-short',
    fills: { ...fills, asked: length(piece.asked_mm) },
    tall: { v: Math.abs(off), as: 'length' },
    worst_mm: Math.abs(off),
    limit: { v: limit, as: 'length' },
    offers: pieceOffers({ s, m, piece, off, limit, fills }, needs, cut),
  };
};

/** The right length with an end at another angle than is asked now. */
const endFinding = (
  s: Situation,
  m: Member,
  found: { piece: Piece; count: number },
  stage: Stage,
): Finding | null => {
  const { piece, count } = found;
  const turn = Math.max(
    Math.abs(piece.ends_rad[0] - m.ends.first_rad),
    Math.abs(piece.ends_rad[1] - m.ends.second_rad),
  );
  if (turn <= END_LIMIT[s.ramp.design.tolerance] + NO_TURN) return null;
  const wedge = m.tube.depth_mm * Math.tan(turn);
  const limit = LIMIT[s.ramp.design.tolerance];
  const c: Case = { s, m, piece, off: -wedge, limit, fills: { ...fillsOf(m, piece), gap: length(wedge) } };
  return {
    key: `piece-end@${m.need}#${count}`,
    stage,
    severity: wedge > limit ? 'fix' : 'watch',
    words: 'piece-end',
    fills: { ...c.fills, turn: { v: turn, as: 'angle' } },
    tall: { v: turn, as: 'angle' },
    worst_mm: wedge,
    limit: { v: limit, as: 'length' },
    offers: [
      offer(
        'piece-recut-end',
        6,
        { ...ownPlan(c), ends_rad: [m.ends.first_rad, m.ends.second_rad] },
        c.fills,
        after(c, TAPE),
      ),
      offer('piece-new', 9, { need: m.need, spoils: piece.id, to_mm: m.long_mm }, c.fills, after(c, TAPE)),
      offer('leave-piece', 0, ownPlan(c), c.fills, after(c, wedge)),
    ],
  };
};

/** A piece whose need the design no longer has. */
const unneeded = (
  piece: Piece,
  needs: readonly Member[],
  cut: ReadonlyMap<string, unknown>,
  stage: Stage,
): Finding => {
  const place = elsewhere(piece, needs, cut, piece.section);
  const fills: Fills = { piece: pieceName(piece.serves), cut: length(piece.length_mm) };
  return {
    key: `piece-unneeded@${piece.id}`,
    stage,
    severity: 'watch',
    words: 'piece-unneeded',
    fills,
    offers: [
      ...(place === null
        ? []
        : [
            offer(
              'piece-elsewhere',
              10,
              { piece: piece.id, serves: place.need },
              {
                ...fills,
                other: pieceName(place.need),
                fits: length(place.long_mm),
              },
            ),
          ]),
      offer('piece-spare', 1, { spoils: piece.id }, fills),
      offer('piece-design-back', 3, { piece: piece.id }, fills),
      offer('leave-unneeded', 0, { piece: piece.id }, fills),
    ],
  };
};

/**
 * Pieces that are cut, against what is needed of them now: cut wrong, or cut right to a design or a curve that has since
 * changed; and pieces that nothing needs any more. Each with what can be done and the deviation left after it.
 * @param kinds kinds of member this stage answers for
 * @param stage whose page the findings stand on
 */
export const pieceFindings = (
  s: Situation,
  kinds: readonly MemberKind[],
  stage: Stage,
): readonly Finding[] => {
  const pieces = served(s);
  const cut = byNeed(pieces);
  const needs = [...s.ramp.members, ...s.ramp.entry.pieces];
  const mine = needs.filter(m => kinds.includes(m.kind));
  const findings: Finding[] = [];
  for (const m of mine) {
    const found = cut.get(m.need);
    if (found === undefined || isBuiltIn(s, m, found.piece)) continue;
    const wrong = lengthFinding(s, m, found, needs, cut, stage) ?? endFinding(s, m, found, stage);
    if (wrong !== null) findings.push(wrong);
  }
  const needed = new Set(needs.map(m => m.need));
  const stray = pieces.filter(
    p => p.fate === 'cut' && !needed.has(p.serves) && kinds.some(kind => p.serves.startsWith(`${kind}@`)),
  );
  return [...findings, ...stray.map(p => unneeded(p, needs, cut, stage))];
};
