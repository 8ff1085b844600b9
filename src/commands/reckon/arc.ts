import { good } from '../../quantity/outcome.ts';
import { type Arc, type ArcKnown, arcFrom, radiusPerRun } from '../../reckon/curve/arc.ts';
import { degrees, radians } from '../../reckon/numeric/angle.ts';
import { underFields } from './fault-field.ts';
import type { FieldSpec, Topic } from './topic.ts';

const length = (about: string): FieldSpec => ({ is: 'number', above: 0, optional: true, about });

export const topic: Topic = {
  name: 'arc',
  summary: 'a whole arc from any two of its numbers',
  fields: {
    height_mm: length('rise of the lip above the start'),
    run_mm: length('from the start to under the lip'),
    radius_mm: length('of the arc'),
    exit_deg: { is: 'number', above: 0, atMost: 120, optional: true, about: 'slope at the lip' },
    arc_mm: length('along the arc'),
    chord_mm: length('straight from end to end, with sagitta_mm'),
    sagitta_mm: length('rise of the arc on its chord, at the middle'),
  },
  example: 'arc --height_mm 760 --run_mm 2050',
  run: input => {
    const { exit_deg, ...lengths } = input as Readonly<Record<string, number>>;
    // The order of the input is kept, so that the value too many is the one given last.
    const known = Object.fromEntries(
      Object.entries(input as Record<string, number>).map(([name, value]) =>
        name === 'exit_deg' ? ['exit_rad', radians(value)] : [name, value],
      ),
    ) as ArcKnown;
    const outcome = underFields(arcFrom(known), { exit_rad: 'exit_deg' });
    if (!outcome.ok) return outcome;
    const { other, ...arc } = outcome.value;
    const doubtful = 'run_mm' in lengths && 'arc_mm' in lengths;
    return good({
      ...answerOf(arc),
      // Degrees given come back as given, not by way of radians.
      ...(exit_deg === undefined ? {} : { exit_deg }),
      ...(other === undefined ? {} : { other: answerOf(other) }),
      ...(doubtful ? { warnings: [warningOf(arc)] } : {}),
    });
  },
};

const answerOf = ({ height_mm, run_mm, radius_mm, exit_rad, arc_mm, chord_mm, sagitta_mm }: Arc) => ({
  height_mm,
  run_mm,
  radius_mm,
  exit_deg: degrees(exit_rad),
  arc_mm,
  chord_mm,
  sagitta_mm,
});

const warningOf = ({ exit_rad }: Arc): string =>
  `run and arc fix the radius poorly: 1 mm in the run moves it by ${radiusPerRun(exit_rad).toPrecision(2)} mm. Measure the height as well.`;
