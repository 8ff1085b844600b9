import type { StartBand } from './start-band.ts';

export type Polarity =
  | 'electrode positive'
  | 'electrode negative'
  | 'AC or electrode positive'
  | 'AC or either';

/** What the settings ask to be said beside them. */
export type SettingsCaution =
  /** The wire carries no more; the wall asks it. */
  | 'wire at its limit'
  /** Bevel, and two passes at these settings. */
  | 'bevel, two passes'
  /** A wire made for single passes (E71T-GS) cannot lay the second [AWS A5.20, memory]. */
  | 'no single-pass wire'
  /** Outside the currents the volts were fitted to. */
  | 'volts reckoned past their fit'
  /** Under 2 mm a 75/25 mix is kinder than CO2. */
  | 'mix kinder than CO2'
  /** These numbers are from memory: the chart in the machine's door goes before them. */
  | 'door chart first'
  /** The chart in the door is the only word on wire feed. */
  | 'feed from door chart'
  /** Thinner than a beginner should weld with a rod. */
  | 'thin for a rod';

export type Settings = Readonly<{
  /** Wire or rod core. */
  filler_mm: number;
  polarity: Polarity;
  amps: StartBand;
  volts: StartBand;
  /** Wire speed; null with a rod, or where no rule is known. */
  feed_m_min: StartBand | null;
  /** Contact tip to work; null with a rod. */
  stick_out_mm: StartBand | null;
  travel_mm_s: StartBand;
  /** null without gas. */
  gas_l_min: StartBand | null;
  passes: 1 | 2;
  cautions: readonly SettingsCaution[];
}>;
