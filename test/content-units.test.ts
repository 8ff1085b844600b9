import { describe, expect, test } from 'vitest';
import { compileContent } from '../src/making/compile-content.ts';

const content = JSON.parse(compileContent(process.cwd())) as Record<string, unknown>;

/** A measure written out, of one system and of the other. A wire's cross-section in mm² is what its insulation says everywhere. */
const METRIC =
  /\d\s?(?:mm(?!²)|cm|m|kg|km\/h|N|kN|bar|°C|m\/s|l)(?![\w²/])|\b(?:metre|litre|millimetre|kilogram)s?\b/i;
const AMERICAN =
  /\d\s?(?:in|ft|lb|mph|°F|gal|psi)\b|\b(?:sq|cu) ft\b|\b(?:inch|inches|pound|pounds|pint|pints)\b|\d"/i;

type Said = Readonly<{ where: string; text: string }>;

const saidIn = (value: unknown, where: string): Said[] => {
  if (typeof value === 'string') return [{ where, text: value }];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([k, v]) => saidIn(v, `${where}.${k}`));
};

/** Sources are quoted as they are; everything else is read at a bench that has one tape. */
const said = Object.entries(content)
  .filter(([part]) => part !== 'sources')
  .flatMap(([part, value]) => saidIn(value, part));

describe('measures written out in words', () => {
  test('stand in both systems, or are a mark that is filled in the person’s own', () => {
    expect(said.length).toBeGreaterThan(1000);
    const one = said.filter(({ text }) => METRIC.test(text) && !AMERICAN.test(text));
    expect(one.map(({ where, text }) => `${where}: ${text}`)).toEqual([]);
  });

  test('are said in the one of the build, not in both at once', () => {
    // `{1 m|40 in}` is one or the other.
    const both = said
      .map(({ where, text }) => ({ where, text: text.replace(/\{[^{}|]+\|[^{}|]+\}/g, '') }))
      .filter(({ text }) => METRIC.test(text) && AMERICAN.test(text));
    expect(both.map(({ where, text }) => `${where}: ${text}`)).toEqual([]);
  });
});
