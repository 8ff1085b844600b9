import { type UnitCode, type UnitKind, unitOf } from './units.ts';

/** What each kind is called, and what can be typed for it. The first words of a refusal's way out. */
const KINDS: Readonly<Record<UnitKind, readonly [name: string, examples: string]>> = {
  length: ['a length', `1613 mm, 1.2 m, 63 1/2 in or 5'-3 1/2"`],
  angle: ['an angle', '45°, 45 deg, 0.785 rad or 1 in 12'],
  speed: ['a speed', '18 km/h, 11 mph, 5 m/s, 6 mm/s or 14 ipm'],
  mass: ['a mass', '75 kg, 500 g, 165 lb or 2 lb 3 oz'],
  force: ['a force', '1200 N, 1.2 kN, 270 lbf or 122 kgf'],
  moment: ['a moment', '245 Nm, 0.25 kNm or 180 lbf ft'],
  stress: ['a stress', '235 MPa, 0.2 GPa or 34 ksi'],
  temperature: ['a temperature', '16 °C or 61 °F'],
  time: ['a time', '45 s, 12 min, 1.5 h or 1 h 20 min'],
  area: ['an area', '3.2 m², 410 mm² or 34 sq ft'],
  volume: ['a volume', '2.5 l, 400 ml, 1 qt or 0.6 gal'],
  'second moment of area': ['a second moment of area', '94600 mm⁴, 9.46 cm⁴ or 0.23 in⁴'],
  'line load': ['a load along a line', '1.2 N/mm, 1.2 kN/m or 82 lbf/ft'],
  'mass per length': ['a mass per length', '3.3 kg/m or 2.2 lb/ft'],
  density: ['a density', '7850 kg/m³, 7.85 g/cm³ or 490 lb/ft³'],
  'heat input': ['a heat input', '0.2 kJ/mm or 5 kJ/in'],
  rate: ['a rate', '2 per min'],
  flow: ['a flow', '12 l/min or 25 CFH'],
  current: ['a current', '90 A'],
  tension: ['a voltage', '17.5 V'],
  ratio: ['a plain number', '0.85, 85 % or 1 in 12'],
  count: ['a whole number', '25'],
};

/** What a kind is called in a sentence: "a length". */
export const kindName = (kind: UnitKind): string => KINDS[kind][0];

/** What would do, in words: `a length such as 1.2 m or 63 1/2 in; a bare number is in mm`. */
export const acceptedFor = (bare: UnitCode): string => {
  const { kind, label } = unitOf(bare);
  const [name, examples] = KINDS[kind];
  return `${name} such as ${examples}${label === '' ? '' : `; a bare number counts as ${label === 'in' ? 'inches' : label}`}`;
};
