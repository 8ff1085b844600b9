/** What is asked of at the start and refused whatever the numbers say. */
export type RefusedUse =
  | 'vehicle or motorcycle ramp'
  | 'wheelchair ramp'
  | 'footbridge'
  | 'take-off from a roof or balcony'
  | 'trailer, tow or lift hook'
  | 'playground, club or street';

/** What is known of a ride. A limit whose facts are not there yet says nothing. */
export type RideFacts = Readonly<{
  uses?: readonly RefusedUse[] | undefined;
  novice?: boolean | undefined;
  /** Of the curve at the lip. */
  exit_rad?: number | undefined;
  /** n₀ = 1 + v²/(gR), a point at the tyres. */
  load_factor?: number | undefined;
  /** Of the deck top. */
  radius_m?: number | undefined;
  /** At the foot of the curve. */
  speed_m_s?: number | undefined;
  /** Above it the load of so tight a curve is not known; null where it is known. */
  speed_cap_m_s?: number | null | undefined;
  /** Straight last part of the lip, and distance between the axles. */
  straight_m?: number | undefined;
  wheelbase_m?: number | undefined;
  width_mm?: number | undefined;
  /** Highest place a person stands on, above what he would fall to. */
  stand_m?: number | undefined;
  /** Lip above the ground behind it. */
  drop_m?: number | undefined;
  landing?: 'table' | 'gap' | 'flat ground' | 'hard edge' | 'water' | 'people or vehicles' | undefined;
  /** The ramp is the first one this person builds and rides. */
  first?: boolean | undefined;
  /** Highest point of the flight above a flat landing. */
  apex_m?: number | undefined;
  /** Worst equivalent fall height of the landing band. */
  fall_m?: number | undefined;
  /** Width of the window of entry speeds that clears and lands. */
  window_m_s?: number | undefined;
  /** Free behind the landing, and to either side. */
  clear_behind_m?: number | undefined;
  clear_beside_m?: number | undefined;
  towed?: boolean | undefined;
  anchors?: number | undefined;
  entryAnchors?: number | undefined;
  /** So many stakes are counted to hold it in this ground; whether any number is. */
  anchorsWanted?: number | undefined;
  anchorable?: boolean | undefined;
  pulled?: boolean | undefined;
  inspected?: boolean | undefined;
  proven?: boolean | undefined;
  crack?: boolean | undefined;
  /** Children ride; an adult is there; they are all of this household. */
  children?: boolean | undefined;
  adult?: boolean | undefined;
  othersChildren?: boolean | undefined;
  /** Greatest use of the frame or its deck; a board, a sheet or an entry plate is checked as strictly. */
  utilisation?: number | undefined;
  deck_utilisation?: number | undefined;
}>;
