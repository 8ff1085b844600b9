import { describe, expect, test } from 'vitest';
import type { Role } from '../../src/drawing/row.ts';
import { ansi, inkProps } from '../../src/screen/styles.ts';

const ROLES: readonly Role[] = [
  'plain',
  'lead',
  'lit',
  'settled',
  'attention',
  'halt',
  'quiet',
  'plus',
  'minus',
];

describe('colour roles', () => {
  test('the two sides of the line are blue and orange, cyan and yellow in 16 colours', () => {
    expect(inkProps('plus', '256')).toEqual({ color: 'ansi256(33)' });
    expect(inkProps('minus', '256')).toEqual({ color: 'ansi256(166)' });
    expect(inkProps('plus', '16')).toEqual({ color: 'cyan' });
    expect(inkProps('minus', '16')).toEqual({ color: 'yellow' });
  });

  test('stop needs no colour: it is inverse and bold', () => {
    expect(inkProps('halt', '16')).toEqual({ bold: true, inverse: true });
    expect(inkProps('quiet', '256')).toEqual({ dimColor: true });
  });

  test('without colour nothing is set at all, and the background never', () => {
    for (const role of ROLES) {
      expect(inkProps(role, 'none')).toEqual({});
      expect(inkProps(role, '256')).not.toHaveProperty('backgroundColor');
    }
  });
});

describe('plain printing', () => {
  test('each span is closed before the next', () => {
    const line = [
      { text: 'x ' },
      { text: 'done', role: 'settled' as const },
      { text: ' 1', role: 'lit' as const },
    ];
    expect(ansi(line, 'none')).toBe('x done 1');
    expect(ansi(line, '256')).toBe('x \u001B[38;5;33mdone\u001B[0m\u001B[1;7m 1\u001B[0m');
    expect(ansi(line, '16')).toBe('x \u001B[36mdone\u001B[0m\u001B[1;7m 1\u001B[0m');
  });

  test('a name cannot bring its own escape sequences', () => {
    expect(ansi([{ text: 'ramp\u001B[31m' }], 'none')).toBe('ramp [31m');
  });
});
