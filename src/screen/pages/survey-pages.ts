import type { Survey } from '../../build/fold.ts';
import type { Step } from '../../coach/walk.ts';
import { drawScene } from '../../drawing/braille.ts';
import { row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { offsetScene } from '../../stages/offset-scene.ts';
import type { PageContext } from './context.ts';
import { page, ruleRow, stripRow, titleRow } from './frame.ts';

/** Edges a rail can be read by, the usual one first. */
export const EDGES = ['rail bottom face', 'rail top face'] as const;

/** Where a station lies, as the hand finds it: the middle of a flat, an end. */
export const stationName = (c: PageContext, survey: Survey, at: number): string => {
  const plan = c.view.ramp.plans.get(survey.rail);
  const s = survey.stations_mm[at] ?? 0;
  const along = write(s, 'length', c.voice.system);
  if (plan === undefined || plan.slits.length === 0) return `${along} from the entry end`;
  const stretch = plan.bend_mm / (plan.finished.radius_mm * plan.turn_rad);
  const flat = plan.slits.filter(x => x.at_mm < s * stretch).length;
  if (s < 1) return 'the entry end';
  if (at === survey.stations_mm.length - 1) return `the lip mark, ${along} along`;
  return `flat ${flat}, ${along} along`;
};

/**
 * Before a curve is read: which edge, from where, and how.
 * @param edge the lit one of EDGES
 * @param help how points are typed instead of offsets
 */
export const beforeCurvePage = (
  c: PageContext,
  step: Step,
  edge: number,
  help: readonly string[],
  keys: Row,
): Row[] => {
  const rail = step.survey?.rail ?? '';
  return page(
    c,
    [titleRow(c), stripRow(c.view, step.stage), ruleRow(c, `${step.stage}: rail ${rail}, before reading`)],
    [
      row(' ', ['lead', '▸ MEASURE  Which edge of the tube will you read to the line?']),
      [],
      ...EDGES.map((e, i) =>
        row(
          ' ',
          [i === edge ? 'lead' : 'plain', `${i === edge ? '▸' : '·'} ${e}`],
          ['quiet', i === 0 ? '   the back wall, no slits: the usual one' : '   the slit side'],
        ),
      ),
      [],
      row(' ', `The line is the ${(step.survey?.to ?? '').toUpperCase()} of the rail's BOTTOM face.`),
      row(' ', 'Tube corners are round: stand a small square on the flat of the face.'),
      row(
        ' ',
        `${step.survey?.stations_mm.length ?? 0} stations, numbered from the entry end. Number them on the rail in marker.`,
      ),
      row(' ', 'Fewer will do: Tab passes one by. Single slits are told apart from eight on.'),
      ...help.map(text => row(' ', ['quiet', text])),
      ...drawScene(
        offsetScene(
          c.view.ramp.plans.get(rail)!,
          step.survey?.to ?? 'finished line',
          (step.survey?.stations_mm ?? []).map(station_mm => ({ station_mm, offset_mm: null })),
          null,
        ),
        {
          columns: c.look.columns - 2,
          rows: 8,
          ascii: c.look.ascii,
        },
      ),
    ],
    [row(' ', c.message ?? ''), keys],
  );
};

/** A string along one side has no edge to choose: it only says what is read, and which way is plus. */
export const beforeSidewaysPage = (c: PageContext, step: Step, keys: Row): Row[] => {
  return page(
    c,
    [
      titleRow(c),
      stripRow(c.view, step.stage),
      ruleRow(c, `${step.stage}: rail ${step.survey?.rail ?? ''} sideways, before reading`),
    ],
    [
      row(' ', ['lead', '▸ MEASURE  Stretch a string along a side of the rail, packed alike at its ends']),
      [],
      row(' ', 'Read the gap at each station and take the packing off: 0 where it is straight.'),
      row(' ', '+ where the rail bows toward the middle of the ramp, - where it bows away.'),
      row(' ', `${step.survey?.stations_mm.length ?? 0} stations, numbered from the entry end.`),
    ],
    [row(' ', c.message ?? ''), keys],
  );
};
