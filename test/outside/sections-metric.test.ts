// EN 10219 cold-formed hollow sections [found: square from a maker's brochure table, rectangular from a merchant's EN 10219 table]
// and EN 10056 equal angles [found: a mill's table of equal angles].
import { describe, expect, test } from 'vitest';
import { angleSection } from '../../src/reckon/steel/bar-section.ts';
import { tubeSection } from '../../src/reckon/steel/section.ts';

const within = (share: number, got: number, wanted: number) =>
  expect(Math.abs(got / wanted - 1), `${got} for ${wanted}`).toBeLessThan(share);

const rowsOf = (table: string) =>
  table
    .trim()
    .split('\n')
    .map(line => {
      const [name, ...figures] = line.trim().split(' ');
      return { name: name as string, figures: figures.map(Number) };
    });

// name, depth, width, wall (mm), kg/m, A mm², I cm⁴, W elastic cm³, W plastic cm³, i cm
const TUBES = rowsOf(`
  SHS40x40x2 40 40 2.0 2.306 294 6.94 3.47 4.13 1.54
  SHS40x40x3 40 40 3.0 3.303 421 9.32 4.66 5.72 1.49
  SHS50x50x5 50 50 5.0 6.56 836 27.04 10.82 13.7 1.8
  SHS60x60x4 60 60 4.0 6.71 855 43.55 14.52 17.64 2.26
  RHS40x20x2 40 20 2.0 1.68 214 4.05 2.02 2.61 1.38
  RHS50x30x3 50 30 3.0 3.3 421 12.83 5.13 6.57 1.75
  RHS60x40x3 60 40 3.0 4.25 541 25.38 8.46 10.53 2.17
`);

const tube = (depth: number, width: number, wall: number) => {
  const section = tubeSection({
    shape: depth === width ? 'square' : 'rect',
    depth_mm: depth,
    width_mm: width,
    wall_mm: wall,
    rule: 'EN10219',
  });
  if (!section.ok) throw new Error(section.fault.message);
  return section.value;
};

describe('EN 10219-2 Annex B', () => {
  test.each(TUBES)('$name to the printed digit', ({ figures }) => {
    const [depth, width, wall, mass, area, inertia, elastic, plastic, gyration] = figures as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const section = tube(depth, width, wall);
    within(0.004, section.massPerM_kg, mass);
    expect(Math.abs(section.area_mm2 - area)).toBeLessThan(1);
    within(0.003, section.inertia_mm4 / 1e4, inertia);
    within(0.004, section.elastic_mm3 / 1e3, elastic);
    within(0.004, section.plastic_mm3 / 1e3, plastic);
    expect(Math.abs(section.gyration_mm / 10 - gyration)).toBeLessThan(0.0051);
  });

  // Weak axis of the same rectangular table: Iz cm⁴, Wz, Wplz cm³, iz cm [found].
  test.each([
    [40, 20, 2, 1.34, 1.34, 1.6, 0.79],
    [40, 30, 3, 4.6, 3.07, 3.77, 1.13],
    [50, 30, 3, 5.7, 3.8, 4.58, 1.16],
    [60, 40, 3, 13.44, 6.72, 7.94, 1.58],
  ])('%d×%d×%d laid on its side', (depth, width, wall, inertia, elastic, plastic, gyration) => {
    const section = tube(width, depth, wall);
    within(0.004, section.inertia_mm4 / 1e4, inertia);
    within(0.004, section.elastic_mm3 / 1e3, elastic);
    within(0.004, section.plastic_mm3 / 1e3, plastic);
    expect(Math.abs(section.gyration_mm / 10 - gyration)).toBeLessThan(0.0051);
  });

  // Outside surface, m²/m, of the same table [found].
  test.each([
    [40, 20, 2, 0.113],
    [50, 30, 3, 0.15],
    [60, 40, 2, 0.193],
  ])('%d×%d×%d has its surface to paint', (depth, width, wall, surface) => {
    expect(Math.abs(tube(depth, width, wall).perimeter_mm / 1000 - surface)).toBeLessThan(0.0006);
  });
});

// name, leg, thickness, root radius, toe radius (mm), kg/m, A mm², I cm⁴, W cm³, i cm
const ANGLES = rowsOf(`
  L20x20x3 20 3 3.5 2 0.882 112 0.39 0.28 0.59
  L30x30x3 30 3 5 2.5 1.36 174 1.4 0.65 0.9
  L40x40x4 40 4 6 3 2.42 308 4.47 1.55 1.21
  L50x50x5 50 5 7 3.5 3.77 480 10.96 3.05 1.51
  L60x60x6 60 6 8 4 5.42 691 22.79 5.29 1.82
`);

describe('equal angles', () => {
  test.each(ANGLES)('$name', ({ figures }) => {
    const [leg, thickness, root, toe, mass, area, inertia, elastic, gyration] = figures as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const angle = angleSection({
      leg_mm: leg,
      otherLeg_mm: leg,
      thickness_mm: thickness,
      root_mm: root,
      toe_mm: toe,
    });
    if (!angle.ok) throw new Error(angle.fault.message);
    within(0.006, angle.value.massPerM_kg, mass);
    within(0.006, angle.value.area_mm2, area);
    expect(Math.abs(angle.value.inertia_mm4 / 1e4 - inertia)).toBeLessThan(0.006 * inertia + 0.005);
    expect(Math.abs(angle.value.elastic_mm3 / 1e3 - elastic)).toBeLessThan(0.006 * elastic + 0.005);
    expect(Math.abs(angle.value.gyration_mm / 10 - gyration)).toBeLessThan(0.006);
  });

  // Least radius of gyration iv, cm, of the same table [found]. It cuts rather than rounds: 7.77 mm is printed 0.77.
  test.each([
    [30, 3, 5, 2.5, 0.58],
    [40, 4, 6, 3, 0.77],
    [50, 5, 7, 3.5, 0.97],
  ])('a strut of L%d×%d buckles about its weakest axis', (leg, thickness, root, toe, least) => {
    const angle = angleSection({
      leg_mm: leg,
      otherLeg_mm: leg,
      thickness_mm: thickness,
      root_mm: root,
      toe_mm: toe,
    });
    if (!angle.ok) throw new Error(angle.fault.message);
    expect(Math.abs(angle.value.leastGyration_mm / 10 - least)).toBeLessThan(0.0075);
  });
});
