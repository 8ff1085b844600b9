/** Standard gravity, m/s²: 3rd CGPM, 1901, exact [memory]. */
export const GRAVITY_m_s2 = 9.80665;
