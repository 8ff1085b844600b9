import { good } from '../../quantity/outcome.ts';
import { type Tube, tubeSection } from '../../reckon/steel/section.ts';
import type { Topic } from './topic.ts';

export const topic: Topic = {
  name: 'section',
  summary: 'area, mass and bending figures of a square or rectangular tube',
  fields: {
    shape: { is: 'choice', of: ['square', 'rect'] },
    depth_mm: { is: 'number', above: 0, about: 'side in the plane of bending' },
    width_mm: {
      is: 'number',
      above: 0,
      optional: true,
      about: 'side across the bend; a square tube needs none',
    },
    wall_mm: {
      is: 'number',
      above: 0,
      about: 'the wall as sold, or as a caliper reads it with rule EN10219',
    },
    rule: { is: 'choice', of: ['EN10219', 'AISC'], about: 'AISC: strength from 0.93 of the wall' },
  },
  example: 'section --shape square --depth_mm 40 --width_mm 40 --wall_mm 3 --rule EN10219',
  run: input => {
    const section = tubeSection(input as Tube);
    if (!section.ok) return section;
    const { massPerM_kg, designWall_mm, outsideRadius_mm, ...properties } = section.value;
    return good({
      area_mm2: properties.area_mm2,
      mass_kg_m: massPerM_kg,
      inertia_mm4: properties.inertia_mm4,
      elastic_mm3: properties.elastic_mm3,
      plastic_mm3: properties.plastic_mm3,
      gyration_mm: properties.gyration_mm,
      design_wall_mm: designWall_mm,
      outside_radius_mm: outsideRadius_mm,
      perimeter_mm: properties.perimeter_mm,
    });
  },
};
