import { underWay } from '../../coach/under-way.ts';
import { openFindings, type View } from '../../coach/view.ts';
import { toAscii } from '../../drawing/ascii-twin.ts';
import { cutRow, joinSides, row, rowText, rowWidth, rule, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS } from '../../drawing/signs.ts';
import { STAGES, type Stage } from '../../stages/sheet.ts';
import { clockTime } from './clock-time.ts';
import type { PageContext } from './context.ts';

/** Rows of a page: one less than the terminal has, or the whole screen is written anew at every key. */
export const pageRows = (c: PageContext): number => Math.max(1, c.look.rows - 1);

const findingCounts = (view: View): Row => {
  // Before the design is agreed half of it is only the usual: what is wrong with that is nobody's yet.
  const open = view.build.agreed ? openFindings(view) : [];
  const count = (severity: 'stop' | 'fix' | 'watch') => open.filter(f => f.severity === severity).length;
  const parts = [
    [count('stop'), 'stop', 'to stop for'],
    [count('fix'), 'fix', 'to fix'],
    [count('watch'), 'watch', 'to watch'],
  ] as const;
  // Of all three kinds only the short words have room.
  const short = parts.every(([n]) => n > 0);
  // Decided is not mended: what was chosen and is not done yet stays in sight.
  const chosen = view.build.agreed && parts.every(([n]) => n === 0) ? underWay(view).length : 0;
  if (chosen > 0) return row([SIGNS.waiting.role, `${SIGNS.waiting.sign} ${chosen} chosen, not done`]);
  return row(
    ...parts.flatMap(([n, state, word]) =>
      n === 0
        ? []
        : [[SIGNS[state].role, `${SIGNS[state].sign} ${n} ${short ? state : word}`] as const, '  '],
    ),
  );
};

/** Row 1: the build, what is open, where the entries are. */
export const titleRow = (c: PageContext, name = c.view.build.name): Row => {
  const disk: Row =
    c.disk.is === 'on disk'
      ? row(['settled', `✓ on disk${c.disk.at === null ? '' : ` ${clockTime(c.disk.at)}`}`])
      : c.disk.is === 'read only'
        ? row(['quiet', '– read only'])
        : row(['halt', '■ NOT ON DISK']);
  const left = joinSides(row(' ', ['lead', `${name}${c.view.build.invented ? ' (invented)' : ''}`]), [], 32);
  const counts = findingCounts(c.view);
  const pad = ' '.repeat(Math.max(1, 33 - left.reduce((w, s) => w + s.text.length, 0)));
  return joinSides([...left, { text: pad }, ...counts], disk, c.look.columns);
};

/** Row 2: the stages, heavy up to where you are, light after. */
export const stripRow = (view: View, stage: Stage): Row => {
  const at = STAGES.indexOf(stage);
  const open = openFindings(view);
  const stale = view.steps.filter(s => s.state === 'stale');
  const mending = new Set(underWay(view).map(u => u.next.stage));
  return row(
    ' ',
    ...STAGES.flatMap((name, i) => {
      const look =
        open.some(f => f.stage === name && f.severity !== 'watch') ||
        stale.some(s => s.stage === name) ||
        mending.has(name);
      const label = `${i + 1} ${i === at ? name.toUpperCase() : name}${look ? '!' : ''}`;
      const text = i === at ? (['lit', `▸${label}◂`] as const) : label;
      // Heavy up to here, light after; the brackets of the current one lean on their strokes.
      const stroke =
        i === STAGES.length - 1 ? '' : i === at ? '─ ' : i + 1 === at ? ' ━' : i < at ? ' ━ ' : ' ─ ';
      return [text, ['quiet', stroke] as const];
    }),
  );
};

/** In 7-bit signs the stage you are in stands in brackets: its arrows would point at nothing. */
const bracketed = (r: Row): Row =>
  r.some(s => s.text.endsWith('◂')) ? r.map(s => ({ ...s, text: s.text.replace(/^▸(.*)◂$/, '($1)') })) : r;

/** Rows that what is said may take: no refusal with what would do is longer. */
const MOST_SAID = 4;

/**
 * The foot with the whole of what is said: where row 22 is too short for it, it takes the rows above, the worst finding's first.
 * A refusal that is cut tells nobody what would do.
 */
export const wholeFoot = (foot: readonly Row[], columns: number): readonly Row[] => {
  const at = foot.length - 2;
  const said = foot[at];
  if (said === undefined || rowWidth(said) <= columns) return foot;
  const role = said.at(-1)?.role;
  const lines = wrap(rowText(said).trim(), columns - 2)
    .slice(0, MOST_SAID)
    .map(line => row(' ', role === undefined ? line : ([role, line] as const)));
  return [...foot.slice(0, Math.max(0, at - lines.length + 1)), ...lines, ...foot.slice(at + 1)];
};

/** Head, body filled to the foot, foot: cut to the page and, where asked, in 7-bit signs. */
export const page = (
  c: PageContext,
  head: readonly Row[],
  body: readonly Row[],
  below: readonly Row[],
): Row[] => {
  const rows = pageRows(c);
  const foot = wholeFoot(below, c.look.columns);
  const room = Math.max(0, rows - head.length - foot.length);
  const middle = body.slice(0, room);
  const filled = [
    ...head,
    ...middle,
    ...Array.from({ length: room - middle.length }, (): Row => []),
    ...foot,
  ].slice(0, rows);
  const shown = c.look.ascii ? toAscii(filled.map(bracketed), c.look.columns) : filled;
  return shown.map(r => cutRow(r, c.look.columns, c.look.ascii));
};

/** Row 22: what was last done, or why a key did nothing. */
export const echoRow = (c: PageContext, fallback = ''): Row => {
  if (c.disk.is === 'not on disk')
    return row(' ', ['halt', `Not on disk: ${c.disk.why}. Enter tries again.`]);
  return row(' ', c.message ?? fallback);
};

export const ruleRow = (c: PageContext, left: string, right = ''): Row => rule(left, right, c.look.columns);
