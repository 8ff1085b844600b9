import { type Fault, good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { angleSection, type BarSection, flatSection } from '../../reckon/steel/bar-section.ts';
import { type Tube, tubeSection } from '../../reckon/steel/section.ts';
import { underFields } from './fault-field.ts';
import type { FieldSpecs, Topic, TopicAnswer } from './topic.ts';

/** The fields as read. Which of them a shape needs and which it has no use for is told here, not by the reader. */
type Asked = Readonly<{
  shape: 'square' | 'rect' | 'angle' | 'flat';
  depth_mm: number;
  width_mm?: number;
  wall_mm?: number;
  rule?: Tube['rule'];
  root_mm?: number;
  toe_mm?: number;
}>;

const FIELDS = {
  shape: { is: 'choice', of: ['square', 'rect', 'angle', 'flat'] },
  depth_mm: { is: 'number', above: 0, about: 'side, or leg, in the plane of bending' },
  width_mm: {
    is: 'number',
    above: 0,
    optional: true,
    about: 'side across the bend; a square tube and an angle of equal legs need none',
  },
  wall_mm: {
    is: 'number',
    above: 0,
    optional: true,
    about: 'the wall as sold, or as a caliper reads it with rule EN10219; of an angle its thickness',
  },
  rule: {
    is: 'choice',
    of: ['EN10219', 'AISC'],
    optional: true,
    about: 'of a tube. AISC: strength from 0.93 of the wall',
  },
  root_mm: { is: 'number', atLeast: 0, optional: true, about: 'fillet between the legs of an angle; 0' },
  toe_mm: { is: 'number', atLeast: 0, optional: true, about: 'rounding of both toes of an angle; 0' },
} as const satisfies FieldSpecs;

type Field = keyof Asked;

/** What each shape has to be told, in the order of the fields, and what it has no use for. */
const SHAPES: Readonly<Record<Asked['shape'], { needs: readonly Field[]; not: readonly Field[] }>> = {
  square: { needs: ['wall_mm', 'rule'], not: ['root_mm', 'toe_mm'] },
  rect: { needs: ['width_mm', 'wall_mm', 'rule'], not: ['root_mm', 'toe_mm'] },
  angle: { needs: ['wall_mm'], not: ['rule'] },
  flat: { needs: ['width_mm'], not: ['wall_mm', 'rule', 'root_mm', 'toe_mm'] },
};

const ACCEPTED: Readonly<Partial<Record<Field, string>>> = {
  width_mm: 'the side across the bend, above 0 mm',
  wall_mm: 'the wall, above 0 mm, as a caliper reads it: no gauge number',
  rule: '"EN10219" or "AISC"',
};

/** What is lacking for the shape, or has no place in it. */
const misfit = (asked: Asked): Outcome<true> => {
  const { needs, not } = SHAPES[asked.shape];
  const idle = not.find(field => asked[field] !== undefined);
  if (idle !== undefined) {
    return refuse(
      'contradiction',
      idle,
      `Shape ${asked.shape} has no ${idle}.`,
      `depth_mm, ${asked.shape === 'angle' ? 'width_mm, root_mm, toe_mm, ' : ''}${needs.join(', ')}`,
    );
  }
  const lacking = needs.find(field => asked[field] === undefined);
  return lacking === undefined
    ? good(true)
    : refuse('missing-field', lacking, `${lacking} is missing.`, ACCEPTED[lacking] ?? lacking);
};

type Bent = Pick<
  BarSection,
  'area_mm2' | 'massPerM_kg' | 'inertia_mm4' | 'elastic_mm3' | 'plastic_mm3' | 'gyration_mm'
>;

/** What every shape is asked for, about the axis across its depth. */
const bending = ({ area_mm2, massPerM_kg, inertia_mm4, elastic_mm3, plastic_mm3, gyration_mm }: Bent) => ({
  area_mm2,
  mass_kg_m: massPerM_kg,
  inertia_mm4,
  elastic_mm3,
  plastic_mm3,
  gyration_mm,
});

const tubeAnswer = (tube: Tube): Outcome<TopicAnswer> => {
  const section = tubeSection(tube);
  if (!section.ok) return section;
  const { designWall_mm, outsideRadius_mm, perimeter_mm } = section.value;
  return good({
    ...bending(section.value),
    design_wall_mm: designWall_mm,
    outside_radius_mm: outsideRadius_mm,
    perimeter_mm,
  });
};

const barAnswer = (section: Outcome<BarSection>): Outcome<TopicAnswer> => {
  // The kernel's own names of the sides, as this command line has them.
  const named = underFields(section, {
    leg_mm: 'depth_mm',
    otherLeg_mm: 'width_mm',
    thickness_mm: 'wall_mm',
  });
  if (!named.ok) return { ok: false, fault: plainly(named.fault) };
  const { leastInertia_mm4, leastGyration_mm } = named.value;
  return good({
    ...bending(named.value),
    least_inertia_mm4: leastInertia_mm4,
    least_gyration_mm: leastGyration_mm,
  });
};

const plainly = (fault: Fault): Fault => ({
  ...fault,
  message: fault.message
    .replace(/^otherLeg_mm/, 'width_mm')
    .replace(/^leg_mm/, 'depth_mm')
    .replace(/^thickness_mm/, 'wall_mm'),
});

export const topic: Topic = {
  name: 'section',
  summary: 'area, mass and bending figures of a tube, an angle or a flat',
  fields: FIELDS,
  example: 'section --shape square --depth_mm 40 --width_mm 40 --wall_mm 3 --rule EN10219',
  run: input => {
    const asked = input as Asked;
    const fits = misfit(asked);
    if (!fits.ok) return fits;
    const { shape, depth_mm, width_mm = depth_mm, wall_mm = 0, root_mm = 0, toe_mm = 0 } = asked;
    if (shape === 'flat') return barAnswer(flatSection(depth_mm, width_mm));
    if (shape === 'angle') {
      return barAnswer(
        angleSection({ leg_mm: depth_mm, otherLeg_mm: width_mm, thickness_mm: wall_mm, root_mm, toe_mm }),
      );
    }
    return tubeAnswer(asked as Tube);
  },
};
