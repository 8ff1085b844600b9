import { good, type Outcome } from '../../quantity/outcome.ts';
import { RAIL_SPREAD, updatePull } from '../../reckon/rail/pull.ts';
import type { Topic, TopicAnswer, TopicInput } from './topic.ts';

type PullInput = {
  prior_deg: number;
  prior_spread: number;
  measured_deg: number;
  measured_sd_deg: number;
  rail_spread?: number;
};

function run(raw: TopicInput): Outcome<TopicAnswer> {
  const { prior_deg, prior_spread, measured_deg, measured_sd_deg, rail_spread } = raw as PullInput;
  const after = updatePull(
    prior_deg,
    prior_spread,
    measured_deg,
    measured_sd_deg,
    rail_spread ?? RAIL_SPREAD,
  );
  return good({
    deg: after.pull,
    spread: after.spread,
    next_deg_low: after.next_low,
    next_deg_high: after.next_high,
  });
}

export const topic: Topic = {
  name: 'pull',
  summary: 'How far one slit turns as its weld cools, learned from a measured rail.',
  fields: {
    prior_deg: { is: 'number', above: 0, atMost: 90, about: 'turn of one slit believed so far' },
    prior_spread: {
      is: 'number',
      above: 0,
      atMost: 5,
      about: 'spread of that belief, sd of its natural log',
    },
    measured_deg: { is: 'number', above: 0, atMost: 90, about: 'turn of one slit as measured' },
    measured_sd_deg: { is: 'number', atLeast: 0, about: 'sd of that measurement' },
    rail_spread: {
      is: 'number',
      atLeast: 0,
      atMost: 5,
      optional: true,
      about: 'scatter from rail to rail, sd of the natural log, 0.15 if not given',
    },
  },
  example: 'pull --prior_deg 0.258 --prior_spread 0.6 --measured_deg 0.355 --measured_sd_deg 0.008',
  run,
};
