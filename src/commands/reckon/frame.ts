import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { type EndForces, type FrameAnswer, prepareFrame } from '../../reckon/statics/frame.ts';
import type { FrameLoad } from '../../reckon/statics/frame-loads.ts';
import {
  type FrameMember,
  type FrameModel,
  MOST_MEMBERS,
  MOST_NODES,
} from '../../reckon/statics/frame-model.ts';
import { STEEL_E_MPA } from '../../reckon/steel/steel.ts';
import type { FieldSpec, Topic, TopicAnswer } from './topic.ts';

/** A load as it comes in: on a node or on a member. */
type LoadInput = Readonly<{
  node?: string;
  member?: string;
  x_N?: number;
  y_N?: number;
  moment_Nm?: number;
  across_N_mm?: number;
}>;

type MemberInput = Omit<FrameMember, 'E_MPa'> & Readonly<{ E_MPa?: number }>;

type FrameInput = Omit<FrameModel, 'members'> &
  Readonly<{ members: readonly MemberInput[]; loads: readonly LoadInput[] }>;

const number: FieldSpec = { is: 'number' };
const positive: FieldSpec = { is: 'number', above: 0 };
const text: FieldSpec = { is: 'text' };

export const topic: Topic = {
  name: 'frame',
  summary: 'movements and forces of a plane frame of straight members',
  fields: {
    nodes: {
      is: 'list',
      least: 1,
      most: MOST_NODES,
      of: { is: 'record', fields: { id: text, x_mm: number, y_mm: number } },
      about: 'x right, y up',
    },
    members: {
      is: 'list',
      least: 1,
      most: MOST_MEMBERS,
      of: {
        is: 'record',
        fields: {
          id: text,
          from: text,
          to: text,
          E_MPa: { ...positive, optional: true, about: `${STEEL_E_MPA} when not given` },
          area_mm2: positive,
          inertia_mm4: positive,
          hinge_from: { is: 'flag', optional: true },
          hinge_to: { is: 'flag', optional: true },
        },
      },
      about: 'a hinge passes no moment',
    },
    supports: {
      is: 'list',
      of: {
        is: 'record',
        fields: {
          node: text,
          x: { is: 'flag', optional: true },
          y: { is: 'flag', optional: true },
          turn: { is: 'flag', optional: true },
        },
      },
      about: 'true where the node is held',
    },
    loads: {
      is: 'list',
      of: {
        is: 'record',
        fields: {
          node: { ...text, optional: true },
          x_N: { ...number, optional: true },
          y_N: { ...number, optional: true },
          moment_Nm: { ...number, optional: true, about: 'counter-clockwise +' },
          member: { ...text, optional: true },
          across_N_mm: { ...number, optional: true, about: 'uniform, + to the left of from→to' },
        },
      },
      about: 'on a node, or on a member; several add',
    },
  },
  example:
    `frame --nodes '[{"id":"toe","x_mm":0,"y_mm":0},{"id":"lip","x_mm":900,"y_mm":0}]'` +
    ` --members '[{"id":"rail","from":"toe","to":"lip","E_MPa":210000,"area_mm2":421,"inertia_mm4":93200}]'` +
    ` --supports '[{"node":"toe","x":true,"y":true,"turn":true}]' --loads '[{"node":"lip","y_N":-200}]'`,
  run: async input => {
    const { nodes, members, supports, loads: given } = input as FrameInput;
    const loads = readLoads(given);
    const steel = members.map(({ E_MPa = STEEL_E_MPA, ...member }) => ({ ...member, E_MPa }));
    const frame = await prepareFrame({ nodes, members: steel, supports });
    if (!frame.ok) return frame;
    if (!loads.ok) return loads;
    const answer = frame.value.solve(loads.value);
    return answer.ok ? good(written(answer.value)) : answer;
  },
};

/** Each load is on a node or on a member, never both, and says how much. */
const readLoads = (given: readonly LoadInput[]): Outcome<readonly FrameLoad[]> => {
  const loads: FrameLoad[] = [];
  for (const [k, { node, member, x_N, y_N, moment_Nm, across_N_mm }] of given.entries()) {
    const onNode = [x_N, y_N, moment_Nm].some(value => value !== undefined);
    if (node !== undefined && member !== undefined) {
      return refuse(
        'contradiction',
        `loads.${k}`,
        'A load is on a node or on a member.',
        'node or member, not both',
      );
    }
    if (member !== undefined) {
      if (onNode) {
        const accepted = 'across_N_mm, or a node instead of the member';
        return refuse('contradiction', `loads.${k}`, 'A member takes a load across it alone.', accepted);
      }
      if (across_N_mm === undefined) {
        return refuse(
          'missing-field',
          `loads.${k}.across_N_mm`,
          'The load on the member is missing.',
          'a load, N/mm',
        );
      }
      loads.push({ member, across_N_mm });
      continue;
    }
    if (node === undefined) {
      return refuse('missing-field', `loads.${k}.node`, 'The load stands nowhere.', 'a node, or a member');
    }
    if (across_N_mm !== undefined) {
      const accepted = 'x_N, y_N or moment_Nm, or a member instead of the node';
      return refuse('contradiction', `loads.${k}`, 'A node takes no load across a length.', accepted);
    }
    loads.push({ node, x_N, y_N, moment_Nmm: moment_Nm === undefined ? undefined : moment_Nm * 1000 });
  }
  return good(loads);
};

const written = ({ nodes, reactions, members }: FrameAnswer): TopicAnswer => ({
  nodes,
  reactions: reactions.map(({ node, x_N, y_N, moment_Nmm }) => ({
    node,
    x_N,
    y_N,
    moment_Nm: moment_Nmm / 1000,
  })),
  members: members.map(({ id, from, to }) => ({ id, from: end(from), to: end(to) })),
});

const end = ({ axial_N, shear_N, moment_Nmm }: EndForces) => ({
  axial_N,
  shear_N,
  moment_Nm: moment_Nmm / 1000,
});
