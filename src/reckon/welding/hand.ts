/** How fast a hand goes along a seam, mm/s: a beginner's slowest, 150 mm/min [practice]; makers' tables' slowest, 450 mm/min [found]. */
export const HAND_SLOWEST_mm_s = 150 / 60;
export const HAND_QUICKEST_mm_s = 450 / 60;
