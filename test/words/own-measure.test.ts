import { describe, expect, test } from 'vitest';
import { ownMeasure } from '../../src/words/own-measure.ts';
import { WORDS } from '../stages/word-gaps.ts';

describe('a measure said in both systems is read in one', () => {
  test.each([
    ['12 to 18 km/h (7 to 11 mph), say', '12 to 18 km/h, say', '7 to 11 mph, say'],
    ['over five metres (16 ft) of ground', 'over five metres of ground', 'over 16 ft of ground'],
    ['to one or two kilometres an hour (about 1 mph)', 'to one or two kilometres an hour', 'to about 1 mph'],
    ['a patch of 50 by 50 mm (2 by 2 in).', 'a patch of 50 by 50 mm.', 'a patch of 2 by 2 in.'],
    ['above a metre (40 in), other', 'above a metre, other', 'above 40 in, other'],
    ['half a metre (20 in) past', 'half a metre past', '20 in past'],
    ['2.4 mm (3/32 in), one', '2.4 mm, one', '3/32 in, one'],
    [
      '{use-slits} (in time {use-range})',
      '{use-slits} (in time {use-range})',
      '{use-slits} (in time {use-range})',
    ],
  ] as const)('%s', (text, metric, us) => {
    expect(ownMeasure(text, 'us')).toBe(us);
    expect(ownMeasure(text, 'metric')).toBe(metric);
  });
});

/** Measures written out in the words of both systems; marks are filled later, in the reader's own. */
const METRIC = /\d\s?(?:mm(?!²)|cm|m|kg|km\/h|N|kN|bar|°C|m\/s|l)(?![\w²/])|\b(?:metre|litre|kilogram)s?\b/;
/** A source's own text stands as it is. */
const QUOTED = /29 CFR/;

const said = (value: unknown, where: string): [string, string][] =>
  typeof value === 'string'
    ? [[where, value]]
    : value === null || typeof value !== 'object'
      ? []
      : Object.entries(value).flatMap(([k, v]) => said(v, `${where}.${k}`));

test('no sentence of a US build has a metric measure', () => {
  const all = Object.entries(WORDS)
    .filter(([part]) => part !== 'sources')
    .flatMap(([part, value]) => said(value, part));
  expect(all.length).toBeGreaterThan(1000);
  const metric = all.filter(([, text]) => METRIC.test(ownMeasure(text, 'us')) && !QUOTED.test(text));
  expect(metric.map(([where, text]) => `${where}: ${text}`)).toEqual([]);
});
