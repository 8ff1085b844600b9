import { good, type Outcome } from '../../quantity/outcome.ts';
import { Envelopes } from './envelope.ts';
import { type FootLoad, footLoads } from './foot-loads.ts';
import type { MemberKind } from './frame-builder.ts';
import { JointGather, type JointResult } from './frame-joints.ts';
import { MemberGather, type MemberResult } from './frame-members.ts';
import { SlitGather, type SlitResult } from './frame-slits.ts';
import { type Combination, eachCombination } from './load-combinations.ts';
import type { MemberCheck } from './member-check.ts';
import { type Responses, responsesOf } from './responses.ts';
import { type Sags, sagsOf } from './sag.ts';
import { type SideFrame, sideFrame } from './side-frame.ts';
import type { SideFrameInput } from './side-frame-input.ts';
import { LOAD_FACTORS } from './tube-strength.ts';

export type Governing = Readonly<{
  what: 'member' | 'slit' | 'slit, ridden again and again' | 'joint' | 'sag';
  /** Member, or number of the slit. */
  name: string;
  kind: MemberKind | 'slit' | 'lip';
  check: MemberCheck | 'weld' | 'range' | 'sag';
  utilisation: number;
  x_mm: number;
  /** Null where it is no one arrangement of the loads. */
  worst: Combination | null;
}>;

/** Whether a side frame holds: everything that was checked, and what governs. Guidance, never an approval. */
export type Holding = Readonly<{
  members: readonly MemberResult[];
  slits: readonly SlitResult[];
  joints: readonly JointResult[];
  feet: readonly FootLoad[];
  sags: Sags;
  governing: Governing;
  /** Nothing is used beyond what is allowed. */
  holds: boolean;
}>;

/**
 * Whether one side frame holds under the moving rider: all of him on this side, on one wheel, at every place of the rail.
 * Refuses what `sideFrame`, `responsesOf`, `memberCapacity`, `slitSection` and `jointWeld` refuse.
 */
export const willItHold = async (input: SideFrameInput): Promise<Outcome<Holding>> => {
  const frame = sideFrame(input);
  if (!frame.ok) return frame;
  const responses = await responsesOf(frame.value);
  return responses.ok ? holdingOf(frame.value, responses.value) : responses;
};

const holdingOf = (frame: SideFrame, responses: Responses): Outcome<Holding> => {
  const members = MemberGather.of(frame);
  if (!members.ok) return members;
  const slits = SlitGather.of(frame);
  if (!slits.ok) return slits;
  const joints = JointGather.of(frame);
  if (!joints.ok) return joints;
  const envelopes = new Envelopes(frame);
  const factors = LOAD_FACTORS[frame.input.standard];
  eachCombination(frame, responses, factors, 'pieces', (combination, figures) => {
    envelopes.gather(figures);
    members.value.gather(combination, figures);
    slits.value.gather(combination, figures);
    joints.value.gather(combination, figures);
  });
  const checked = {
    members: members.value.all(envelopes.all()),
    slits: slits.value.all(responses),
    joints: joints.value.all(),
    sags: sagsOf(frame, responses),
  };
  const governing = governs(frame, checked);
  return good({
    ...checked,
    feet: footLoads(frame, responses),
    governing,
    holds: governing.utilisation <= 1,
  });
};

const governs = (
  frame: SideFrame,
  { members, slits, joints, sags }: Pick<Holding, 'members' | 'slits' | 'joints' | 'sags'>,
): Governing => {
  const all: Governing[] = [
    ...members.map(
      ({ name, kind, check, utilisation, worst, from_x_mm, to_x_mm }): Governing => ({
        what: 'member',
        name,
        kind,
        check,
        utilisation,
        x_mm: (from_x_mm + to_x_mm) / 2,
        worst,
      }),
    ),
    ...slits.flatMap(({ number, utilisation, range_utilisation, worst, x_mm }): Governing[] => [
      { what: 'slit', name: String(number), kind: 'slit', check: 'weld', utilisation, x_mm, worst },
      {
        what: 'slit, ridden again and again',
        name: String(number),
        kind: 'slit',
        check: 'range',
        utilisation: range_utilisation,
        x_mm,
        worst: null,
      },
    ]),
    ...joints.map(({ member, name, end, utilisation, worst }): Governing => {
      const { kind, from_x_mm, to_x_mm } = frame.members[member]!;
      const x_mm = end === 'foot' ? from_x_mm : to_x_mm;
      return { what: 'joint', name, kind, check: 'weld', utilisation, x_mm, worst };
    }),
    ...(['lip', 'span'] as const).map(
      (place): Governing => ({
        what: 'sag',
        name: place,
        kind: place === 'lip' ? 'lip' : 'curved rail',
        check: 'sag',
        utilisation: sags[place].sag_mm / sags[place].allowed_mm,
        x_mm: sags[place].x_mm,
        worst: null,
      }),
    ),
  ];
  return all.reduce((worst, next) => (next.utilisation > worst.utilisation ? next : worst));
};
