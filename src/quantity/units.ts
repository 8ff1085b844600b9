/** What kind of thing a unit measures. Lengths of every step (tape, slit, caliper, distance) are one kind. */
export type UnitKind =
  | 'length'
  | 'angle'
  | 'speed'
  | 'mass'
  | 'force'
  | 'moment'
  | 'stress'
  | 'temperature'
  | 'time'
  | 'area'
  | 'volume'
  | 'second moment of area'
  | 'line load'
  | 'mass per length'
  | 'density'
  | 'heat input'
  | 'rate'
  | 'flow'
  | 'current'
  | 'tension'
  | 'ratio'
  | 'count';

/**
 * One unit. A number of it is worth (number + shift) × times ÷ per in the first unit of its kind. Two whole numbers
 * instead of one decimal factor, so that 63.5 in is 1612.9 mm to the last bit and not 1612.8999….
 */
export type Unit = Readonly<{
  kind: UnitKind;
  /** As it is written on a page. */
  label: string;
  times: number;
  per: number;
  /** Added before the factor; only thermometers have one. */
  shift?: number;
  /**
   * Further ways to type it. A space is a product (typed as nothing, a space, a dot or a hyphen), a slash may be
   * typed as "per", and a closing 2, 3 or 4 is a power. Capitals matter only where two units differ by them.
   */
  also?: readonly string[];
  source: string;
}>;

// The definitions are from memory and were read against the constants module of SciPy 1.17.1, which follows NIST
// SP 811; see test/outside/unit-factors.test.ts.
const SI = 'SI Brochure (BIPM, 9th ed.), definition or decimal prefix [memory]';
const YARD_POUND =
  'international yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, exact [memory]';
const GRAVITY = 'standard gravity 9.80665 m/s², 3rd CGPM, 1901, exact [memory]';
const POUND_FORCE = `${YARD_POUND}; ${GRAVITY}: 0.45359237 × 9.80665 = 4.4482216152605 N [derived]`;
const US_GALLON = 'NIST Handbook 44, Appendix C: US gallon 231 in³, quart a fourth of it, exact [memory]';
const THERMOMETER = 'NIST SP 811, B.8: °C = (°F − 32)/1.8 = K − 273.15, exact [memory]';
const CUBIC_FOOT = `${YARD_POUND}: 1 ft³ = 28.316846592 l [derived]`;

/** Pound-force in newtons, 4.4482216152605, as a whole number of 10⁻¹³ N. */
const LBF = 44482216152605;

/** Every unit that is read or written, by the ending that the fields of the number command give it. */
export const UNITS = {
  mm: {
    kind: 'length',
    label: 'mm',
    times: 1,
    per: 1,
    also: ['millimetre', 'millimeter', 'millimetres', 'millimeters'],
    source: SI,
  },
  um: { kind: 'length', label: 'µm', times: 1, per: 1000, also: ['micron', 'microns'], source: SI },
  cm: { kind: 'length', label: 'cm', times: 10, per: 1, source: SI },
  m: {
    kind: 'length',
    label: 'm',
    times: 1000,
    per: 1,
    also: ['metre', 'meter', 'metres', 'meters'],
    source: SI,
  },
  km: { kind: 'length', label: 'km', times: 1e6, per: 1, source: SI },
  in: { kind: 'length', label: 'in', times: 254, per: 10, also: ['"', 'inch', 'inches'], source: YARD_POUND },
  ft: { kind: 'length', label: 'ft', times: 3048, per: 10, also: ["'", 'foot', 'feet'], source: YARD_POUND },
  yd: { kind: 'length', label: 'yd', times: 9144, per: 10, also: ['yard', 'yards'], source: YARD_POUND },
  mi: { kind: 'length', label: 'mi', times: 1609344, per: 1, also: ['mile', 'miles'], source: YARD_POUND },
  thou: { kind: 'length', label: 'thou', times: 254, per: 10000, source: YARD_POUND },

  rad: { kind: 'angle', label: 'rad', times: 1, per: 1, also: ['radian', 'radians'], source: SI },
  mrad: { kind: 'angle', label: 'mrad', times: 1, per: 1000, source: SI },
  deg: { kind: 'angle', label: '°', times: Math.PI, per: 180, also: ['degree', 'degrees'], source: SI },

  m_s: { kind: 'speed', label: 'm/s', times: 1, per: 1, source: SI },
  mm_s: { kind: 'speed', label: 'mm/s', times: 1, per: 1000, source: SI },
  mm_min: { kind: 'speed', label: 'mm/min', times: 1, per: 60000, source: SI },
  m_min: { kind: 'speed', label: 'm/min', times: 1, per: 60, source: SI },
  km_h: { kind: 'speed', label: 'km/h', times: 1000, per: 3600, also: ['kmh', 'kph', 'km/hr'], source: SI },
  mph: {
    kind: 'speed',
    label: 'mph',
    times: 1609344,
    per: 3600000,
    also: ['mi/h', 'miles/hour'],
    source: YARD_POUND,
  },
  ft_s: { kind: 'speed', label: 'ft/s', times: 3048, per: 10000, also: ['fps'], source: YARD_POUND },
  ft_min: { kind: 'speed', label: 'ft/min', times: 3048, per: 600000, also: ['fpm'], source: YARD_POUND },
  in_s: { kind: 'speed', label: 'in/s', times: 254, per: 10000, source: YARD_POUND },
  in_min: { kind: 'speed', label: 'ipm', times: 254, per: 600000, also: ['in/min'], source: YARD_POUND },

  kg: { kind: 'mass', label: 'kg', times: 1, per: 1, also: ['kgs', 'kilo', 'kilos'], source: SI },
  g: { kind: 'mass', label: 'g', times: 1, per: 1000, also: ['gram', 'grams'], source: SI },
  lb: {
    kind: 'mass',
    label: 'lb',
    times: 45359237,
    per: 1e8,
    also: ['lbs', 'pound', 'pounds'],
    source: YARD_POUND,
  },
  oz: {
    kind: 'mass',
    label: 'oz',
    times: 45359237,
    per: 16e8,
    also: ['ounce', 'ounces'],
    source: YARD_POUND,
  },

  N: { kind: 'force', label: 'N', times: 1, per: 1, also: ['newton', 'newtons'], source: SI },
  kN: { kind: 'force', label: 'kN', times: 1000, per: 1, source: SI },
  kgf: { kind: 'force', label: 'kgf', times: 980665, per: 100000, source: GRAVITY },
  lbf: { kind: 'force', label: 'lbf', times: LBF, per: 1e13, source: POUND_FORCE },
  kip: { kind: 'force', label: 'kip', times: LBF, per: 1e10, also: ['kips'], source: POUND_FORCE },

  Nmm: { kind: 'moment', label: 'N·mm', times: 1, per: 1, also: ['N mm'], source: SI },
  Nm: { kind: 'moment', label: 'Nm', times: 1000, per: 1, also: ['N m'], source: SI },
  kNm: { kind: 'moment', label: 'kNm', times: 1e6, per: 1, also: ['kN m'], source: SI },
  lbfft: {
    kind: 'moment',
    label: 'lbf ft',
    times: 1355.8179483314004,
    per: 1,
    also: ['ft lbf', 'lb ft', 'ft lb', 'ft lbs'],
    source: `${POUND_FORCE} × 304.8 mm`,
  },
  lbfin: {
    kind: 'moment',
    label: 'lbf in',
    times: 112.9848290276167,
    per: 1,
    also: ['in lbf', 'lb in', 'in lb', 'in lbs'],
    source: `${POUND_FORCE} × 25.4 mm`,
  },

  MPa: { kind: 'stress', label: 'MPa', times: 1, per: 1, also: ['N/mm2'], source: SI },
  Pa: { kind: 'stress', label: 'Pa', times: 1, per: 1e6, source: SI },
  kPa: { kind: 'stress', label: 'kPa', times: 1, per: 1000, also: ['kN/m2'], source: SI },
  GPa: { kind: 'stress', label: 'GPa', times: 1000, per: 1, also: ['kN/mm2'], source: SI },
  psi: { kind: 'stress', label: 'psi', times: LBF, per: 645.16e13, also: ['lbf/in2'], source: POUND_FORCE },
  ksi: { kind: 'stress', label: 'ksi', times: LBF, per: 645.16e10, also: ['kip/in2'], source: POUND_FORCE },

  C: { kind: 'temperature', label: '°C', times: 1, per: 1, also: ['° C', 'deg C', 'celsius'], source: SI },
  F: {
    kind: 'temperature',
    label: '°F',
    times: 5,
    per: 9,
    shift: -32,
    also: ['° F', 'deg F', 'fahrenheit'],
    source: THERMOMETER,
  },
  K: { kind: 'temperature', label: 'K', times: 1, per: 1, shift: -273.15, source: THERMOMETER },

  s: { kind: 'time', label: 's', times: 1, per: 1, also: ['sec', 'secs', 'second', 'seconds'], source: SI },
  min: { kind: 'time', label: 'min', times: 60, per: 1, also: ['mins', 'minute', 'minutes'], source: SI },
  h: { kind: 'time', label: 'h', times: 3600, per: 1, also: ['hr', 'hrs', 'hour', 'hours'], source: SI },

  m2: { kind: 'area', label: 'm²', times: 1, per: 1, also: ['m2', 'sq m'], source: SI },
  cm2: { kind: 'area', label: 'cm²', times: 1, per: 1e4, also: ['cm2', 'sq cm'], source: SI },
  mm2: { kind: 'area', label: 'mm²', times: 1, per: 1e6, also: ['mm2', 'sq mm'], source: SI },
  in2: {
    kind: 'area',
    label: 'in²',
    times: 64516,
    per: 1e8,
    also: ['in2', 'sq in', 'sq inch'],
    source: YARD_POUND,
  },
  ft2: {
    kind: 'area',
    label: 'ft²',
    times: 9290304,
    per: 1e8,
    also: ['ft2', 'sq ft', 'sq feet'],
    source: YARD_POUND,
  },

  l: {
    kind: 'volume',
    label: 'l',
    times: 1,
    per: 1,
    also: ['litre', 'liter', 'litres', 'liters'],
    source: SI,
  },
  ml: { kind: 'volume', label: 'ml', times: 1, per: 1000, also: ['cc', 'cm3'], source: SI },
  mm3: { kind: 'volume', label: 'mm³', times: 1, per: 1e6, also: ['mm3'], source: SI },
  m3: { kind: 'volume', label: 'm³', times: 1000, per: 1, also: ['m3'], source: SI },
  in3: {
    kind: 'volume',
    label: 'in³',
    times: 16387064,
    per: 1e9,
    also: ['in3', 'cu in'],
    source: YARD_POUND,
  },
  ft3: {
    kind: 'volume',
    label: 'cu ft',
    times: 28316846592,
    per: 1e9,
    also: ['ft3', 'ft³'],
    source: CUBIC_FOOT,
  },
  gal: {
    kind: 'volume',
    label: 'gal',
    times: 3785411784,
    per: 1e9,
    also: ['US gal', 'gallon', 'gallons'],
    source: US_GALLON,
  },
  qt: {
    kind: 'volume',
    label: 'qt',
    times: 3785411784,
    per: 4e9,
    also: ['quart', 'quarts'],
    source: US_GALLON,
  },

  mm4: { kind: 'second moment of area', label: 'mm⁴', times: 1, per: 1, also: ['mm4'], source: SI },
  cm4: { kind: 'second moment of area', label: 'cm⁴', times: 1e4, per: 1, also: ['cm4'], source: SI },
  in4: {
    kind: 'second moment of area',
    label: 'in⁴',
    times: 4162314256,
    per: 1e4,
    also: ['in4'],
    source: YARD_POUND,
  },

  N_mm: { kind: 'line load', label: 'N/mm', times: 1, per: 1, also: ['kN/m'], source: SI },
  N_m: { kind: 'line load', label: 'N/m', times: 1, per: 1000, source: SI },
  lbf_ft: { kind: 'line load', label: 'lbf/ft', times: LBF, per: 304.8e13, source: POUND_FORCE },
  lbf_in: { kind: 'line load', label: 'lbf/in', times: LBF, per: 25.4e13, source: POUND_FORCE },

  kg_m: { kind: 'mass per length', label: 'kg/m', times: 1, per: 1, source: SI },
  lb_ft: { kind: 'mass per length', label: 'lb/ft', times: 45359237, per: 30480000, source: YARD_POUND },

  kg_m3: { kind: 'density', label: 'kg/m³', times: 1, per: 1, also: ['kg/m3'], source: SI },
  g_cm3: {
    kind: 'density',
    label: 'g/cm³',
    times: 1000,
    per: 1,
    also: ['g/cm3', 'g/cc', 'kg/l'],
    source: SI,
  },
  lb_ft3: {
    kind: 'density',
    label: 'lb/ft³',
    times: 45359237e3,
    per: 2831684659.2,
    also: ['lb/ft3'],
    source: YARD_POUND,
  },
  lb_in3: {
    kind: 'density',
    label: 'lb/in³',
    times: 45359237e3,
    per: 1638706.4,
    also: ['lb/in3'],
    source: YARD_POUND,
  },

  kJ_mm: { kind: 'heat input', label: 'kJ/mm', times: 1, per: 1, source: SI },
  J_mm: { kind: 'heat input', label: 'J/mm', times: 1, per: 1000, source: SI },
  kJ_in: { kind: 'heat input', label: 'kJ/in', times: 10, per: 254, source: YARD_POUND },

  per_min: { kind: 'rate', label: '/min', times: 1, per: 1, also: ['per min', 'per minute'], source: SI },
  per_h: { kind: 'rate', label: '/h', times: 1, per: 60, also: ['per h', 'per hour'], source: SI },

  l_min: { kind: 'flow', label: 'l/min', times: 1, per: 1, also: ['lpm'], source: SI },
  ft3_h: {
    kind: 'flow',
    label: 'CFH',
    times: 28316846592,
    per: 6e10,
    also: ['ft3/h', 'cu ft/h'],
    source: CUBIC_FOOT,
  },

  A: { kind: 'current', label: 'A', times: 1, per: 1, also: ['amp', 'amps'], source: SI },
  V: { kind: 'tension', label: 'V', times: 1, per: 1, also: ['volt', 'volts'], source: SI },

  one: { kind: 'ratio', label: '', times: 1, per: 1, source: 'a plain number' },
  pct: { kind: 'ratio', label: '%', times: 1, per: 100, also: ['percent', 'per cent'], source: SI },
  each: { kind: 'count', label: '', times: 1, per: 1, source: 'a count' },
} as const satisfies Record<string, Unit>;

export type UnitCode = keyof typeof UNITS;

export const isUnitCode = (code: string): code is UnitCode => Object.hasOwn(UNITS, code);

export const unitOf = (code: UnitCode): Unit => UNITS[code];
