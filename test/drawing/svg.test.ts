import { describe, expect, test } from 'vitest';
import { sceneSvg } from '../../src/drawing/svg.ts';

describe('a scene as a file', () => {
  const file = sceneSvg(
    {
      title: 'rails <A> & "B"',
      items: [
        {
          is: 'path',
          points: [
            { x: 0, y: 0 },
            { x: 2000, y: 900 },
          ],
          stroke: 'solid',
        },
        {
          is: 'path',
          points: [
            { x: 0, y: 0 },
            { x: 2000, y: 0 },
          ],
          stroke: 'dotted',
        },
        { is: 'label', at: { x: 2000, y: 900 }, text: 'lip', anchor: 'right' },
      ],
    },
    { margin_mm: 10 },
  );

  test('it is full size: as many mm on paper as units in the drawing', () => {
    expect(file).toContain('width="2020mm" height="920mm" viewBox="-10 -910 2020 920"');
  });

  test('up in the scene is up on the sheet', () => {
    expect(file).toContain('points="0,0 2000,-900"');
  });

  test('words cannot break the file', () => {
    expect(file).toContain('<title>rails &lt;A&gt; &amp; &quot;B&quot;</title>');
  });

  test('a line laid out is dashed', () => {
    expect(file.match(/stroke-dasharray/g)).toHaveLength(1);
  });
});
