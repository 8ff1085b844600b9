import { toAscii } from '../../drawing/ascii-twin.ts';
import { cutTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import type { Desk } from '../places/desk.ts';
import { stepText } from './step-words.ts';

/** A window too small for a page: the step with its numbers, and how large to make it. */
export const smallPage = (desk: Desk, size: { columns: number; rows: number }): Row[] => {
  const columns = Math.max(10, size.columns - 2);
  const rows: Row[] = [];
  if (desk.keeper !== null) {
    const next = desk.view.next;
    rows.push(row(' ', ['lead', cutTo(desk.view.build.name, columns)]), []);
    if (next !== null) {
      rows.push(
        ...wrap(`▸ NEXT  ${stepText(desk.view, desk.voice, next, 'title') ?? next.key}`, columns).map(l =>
          row(' ', ['lead', l]),
        ),
      );
      const item = (next.items ?? []).find(i => !desk.view.build.ticks.has(i.key));
      if (item?.value !== undefined)
        rows.push(row(' ', `${item.name}: ${write(item.value.v, item.value.as, desk.system)}`));
      rows.push([]);
    }
  }
  rows.push(
    ...wrap(
      `This window is ${size.columns} x ${size.rows}. Make it 80 x 24, or the letters smaller, and the whole page comes back. Nothing is lost.`,
      columns,
    ).map(l => row(' ', l)),
    [],
    row(' ', ['quiet', 'q leave']),
  );
  const shown = rows.slice(0, Math.max(1, size.rows - 1));
  return desk.look.ascii ? toAscii(shown, size.columns) : shown;
};
