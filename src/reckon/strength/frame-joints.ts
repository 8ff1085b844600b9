import { good, type Outcome } from '../../quantity/outcome.ts';
import { type JointWeld, jointWeld, usualLeg } from './joint-weld.ts';
import { type Combination, pieceAt } from './load-combinations.ts';
import { AXIAL, SAG_FROM, SAG_TO, SHEAR } from './responses.ts';
import type { SideFrame } from './side-frame.ts';

export type JointResult = Readonly<{
  /** The member whose end it is. */
  member: number;
  name: string;
  end: 'foot' | 'head';
  leg_mm: number;
  utilisation: number;
  worst: Combination;
  /** Narrower than 0.6 of the tube it stands on: that tube's wall may fold in first. */
  narrow: boolean;
}>;

/** AISC 360 chapter K and EN 1993-1-8 7.5: under this share of widths the wall it stands on may govern [memory]. */
const NARROW = 0.6;

type Joint = {
  member: number;
  end: 'foot' | 'head';
  piece: number;
  weld: JointWeld;
  leg_mm: number;
  narrow: boolean;
  use: number;
  worst: Combination;
};

/** Gathers what the fillets at the ends of uprights, diagonals, ties and side plates feel. */
export class JointGather {
  readonly #frame: SideFrame;
  readonly #joints: Joint[];

  private constructor(frame: SideFrame, joints: Joint[]) {
    this.#frame = frame;
    this.#joints = joints;
  }

  /** Refuses what `jointWeld` refuses. */
  static of(frame: SideFrame): Outcome<JointGather> {
    const { input, members, pieces } = frame;
    const walls = (kind: string) =>
      members.find(member => member.kind === kind)!.strength.section.designWall_mm;
    const [railWall, baseWall] = [walls('curved rail'), walls('base rail')];
    const joints: Joint[] = [];
    for (const [member, plan] of members.entries()) {
      if (plan.kind === 'curved rail' || plan.kind === 'base rail') continue;
      const own = pieces.flatMap((piece, k) => (piece.member === member ? [k] : []));
      const wall = plan.strength.section.designWall_mm;
      for (const end of ['foot', 'head'] as const) {
        const tie = plan.kind === 'tie';
        const other = tie ? wall : end === 'foot' ? baseWall : railWall;
        const onto = tie ? plan.tube : end === 'foot' ? input.base.tube : input.rail.tube;
        const thinnerWall_mm = Math.min(wall, other);
        const leg_mm = input.leg_mm ?? usualLeg(thinnerWall_mm);
        const weld = jointWeld({
          standard: input.standard,
          grade: input.grade,
          depth_mm: plan.tube.depth_mm,
          width_mm: plan.tube.width_mm,
          leg_mm,
          thinnerWall_mm,
          electrode_MPa: input.electrode_MPa,
          proven: input.jointProven,
        });
        if (!weld.ok) return weld;
        joints.push({
          member,
          end,
          piece: end === 'foot' ? own[0]! : own.at(-1)!,
          weld: weld.value,
          leg_mm,
          narrow: plan.tube.width_mm < NARROW * onto.width_mm,
          use: 0,
          worst: { load: 'L1', place: null },
        });
      }
    }
    return good(new JointGather(frame, joints));
  }

  gather(combination: Combination, figures: Float64Array): void {
    for (const joint of this.#joints) {
      const at = pieceAt(joint.piece);
      const use = joint.weld.use({
        axial_N: figures[at + AXIAL]!,
        shear_N: figures[at + SHEAR]!,
        moment_Nmm: figures[at + (joint.end === 'foot' ? SAG_FROM : SAG_TO)]!,
      });
      if (use <= joint.use) continue;
      joint.use = use;
      joint.worst = combination;
    }
  }

  all(): JointResult[] {
    return this.#joints.map(({ member, end, leg_mm, use, worst, narrow }) => ({
      member,
      name: this.#frame.members[member]!.name,
      end,
      leg_mm,
      utilisation: use,
      worst,
      narrow,
    }));
  }
}
