import { describe, expect, test } from 'vitest';
import { drawScene } from '../../src/drawing/braille.ts';
import { rowText } from '../../src/drawing/cells.ts';
import type { SceneItem } from '../../src/scene/scene.ts';
import { jointScene } from '../../src/stages/joint-scene.ts';
import { set } from './doings.ts';
import { situation } from './frame-doings.ts';

const s = situation();
const member = (kind: string) => s.ramp.members.find(m => m.kind === kind);
const labels = (items: readonly SceneItem[]) => items.flatMap(i => (i.is === 'label' ? [i] : []));
const at = (items: readonly SceneItem[], text: string) => labels(items).find(l => l.text === text)?.at;

const sceneOf = (kind: string, end: 'rail' | 'foot') => {
  const m = member(kind);
  const scene = m === undefined ? null : jointScene(s, m, end);
  if (scene === null) throw new Error(`no joint of a ${kind}`);
  return scene;
};

describe('one joint close up', () => {
  test.each([
    ['lip upright', 'rail'],
    ['upright', 'foot'],
    ['diagonal', 'rail'],
    ['diagonal', 'foot'],
    ['crossmember', 'rail'],
  ] as const)('%s at the %s: four faces numbered, the first pair lit, all of it finite', (kind, end) => {
    const { items, title } = sceneOf(kind, end);
    expect(
      labels(items)
        .map(l => l.text.slice(0, 1))
        .sort(),
    ).toEqual(['1', '2', '3', '4']);
    expect(items.filter(i => i.is === 'path' && i.stroke === 'lit')).toHaveLength(2);
    for (const i of items) {
      const points = i.is === 'path' ? i.points : [i.at];
      expect(points.every(p => Number.isFinite(p.x) && Number.isFinite(p.y))).toBe(true);
    }
    expect(title.length).toBeLessThanOrEqual(44);
  });

  test('face 1 of an upright looks to the lip; of a diagonal it is the open side, by its foot toward the entry', () => {
    const upright = sceneOf('upright', 'foot').items;
    expect(at(upright, '1')?.x).toBeGreaterThan(at(upright, '2')?.x ?? 0);
    const foot = sceneOf('diagonal', 'foot').items;
    expect(at(foot, '1')?.x).toBeLessThan(at(foot, '2')?.x ?? 0);
    const head = sceneOf('diagonal', 'rail').items;
    expect(at(head, '1')?.x).toBeGreaterThan(at(head, '2')?.x ?? 0);
  });

  test('an upright hangs from its rail and stands on its base', () => {
    expect(at(sceneOf('upright', 'rail').items, '3')?.y).toBeLessThan(0);
    expect(at(sceneOf('upright', 'foot').items, '3')?.y).toBeGreaterThan(0);
  });

  test('the rail slopes as it does there', () => {
    const lip = member('lip upright');
    const face = sceneOf('lip upright', 'rail').items.find(i => i.is === 'path');
    const [a, b] = face?.is === 'path' ? face.points : [];
    const slope = Math.atan2((b?.y ?? 0) - (a?.y ?? 0), (b?.x ?? 0) - (a?.x ?? 0));
    expect(slope).toBeCloseTo(lip?.ends.second_rad ?? 0, 9);
  });

  test('a piece without such a joint has no drawing', () => {
    const rail = member('curved rail');
    expect(rail === undefined ? null : jointScene(s, rail)).toBeNull();
  });

  test('all four numbers find room in the drawing beside the list, in dots and in plain signs', () => {
    for (const kind of ['lip upright', 'upright', 'diagonal', 'crossmember'])
      for (const end of ['rail', 'foot'] as const)
        for (const ascii of [false, true])
          for (const rows of [6, 8]) {
            const text = drawScene(sceneOf(kind, end), { columns: 33, rows, ascii }).map(rowText).join('\n');
            for (const n of ['1', '2', '3', '4']) expect(text, `${kind} ${end} ${n}\n${text}`).toContain(n);
          }
  });

  test('a low ramp, wide tubes and rolled rails have joints as well', () => {
    for (const other of [
      situation(set('shape', { height: 300, exit: 20 * (Math.PI / 180) })),
      situation(set('route', 'rolled')),
    ])
      for (const m of other.ramp.members) {
        const scene = jointScene(other, m);
        if (scene !== null) expect(scene.items.length).toBeGreaterThan(6);
      }
  });
});
