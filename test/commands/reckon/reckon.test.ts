import { describe, expect, test } from 'vitest';
import { TOPICS } from '../../../src/commands/reckon/topics.ts';
import { run } from '../../../src/commands/reckon.ts';

/** Runs the command as main would, with files and standard input held here. */
const reckon = async (
  args: readonly string[],
  world: { stdin?: string; files?: Record<string, string> } = {},
) => {
  let out = '';
  let err = '';
  const code = await run(args, {
    out: text => {
      out += text;
    },
    err: text => {
      err += text;
    },
    readStdin: async () => {
      if (world.stdin === undefined) throw new Error('no standard input');
      return world.stdin;
    },
    readFile: async path => {
      const text = world.files?.[path];
      if (text === undefined) throw new Error(`no file ${path}`);
      return text;
    },
  });
  return { code, out, err, json: () => JSON.parse(out) };
};

describe('an answer', () => {
  test('is a table, or with --json one object and nothing else', async () => {
    const table = await reckon(['arc', '--radius_mm', '3000', '--exit_deg', '45']);
    expect(table).toMatchObject({ code: 0, err: '' });
    expect(table.out).toContain('height    878.68  mm');
    const answer = await reckon(['arc', '--json', '--radius_mm', '3000', '--exit_deg', '45']);
    expect(answer.code).toBe(0);
    expect(answer.json()).toMatchObject({ schemaVersion: 1, exit_deg: 45, radius_mm: 3000 });
    expect(answer.out.trimEnd().split('\n')).toHaveLength(1);
  });

  test('comes from a file or from standard input alike', async () => {
    const text = '{"radius_mm": "10 ft", "exit_deg": 45}';
    const file = await reckon(['arc', '--in', 'a.json', '--json'], { files: { 'a.json': text } });
    const stdin = await reckon(['arc', '--in', '-', '--json'], { stdin: text });
    expect(file.json().radius_mm).toBe(3048);
    expect(stdin.out).toBe(file.out);
  });

  test('is not rounded', async () => {
    const { json } = await reckon(['arc', '--radius_mm=3000', '--exit_deg=45', '--json']);
    expect(json().run_mm).toBe(3000 * Math.sin(Math.PI / 4));
  });
});

describe('a refusal', () => {
  test('is exit 2, an object with --json and the same words without', async () => {
    const args = ['arc', '--run_mm', '3200', '--radius_mm', '3000'];
    const object = await reckon([...args, '--json']);
    expect(object).toMatchObject({ code: 2, err: '' });
    const { schemaVersion, error } = object.json();
    expect(schemaVersion).toBe(1);
    expect(Object.keys(error)).toEqual(['code', 'field', 'message', 'accepted']);
    const words = await reckon(args);
    expect(words).toMatchObject({ code: 2, out: '' });
    const flat = words.err.replace(/\s+/g, ' ');
    expect(flat).toContain(error.message);
    expect(flat).toContain(error.accepted);
  });

  test('of an unknown topic names the nearest', async () => {
    const { code, json } = await reckon(['slit', '--json']);
    expect(code).toBe(2);
    expect(json().error).toMatchObject({
      code: 'unknown-topic',
      field: null,
      message: 'There is no topic "slit". Did you mean slits?',
    });
    expect((await reckon(['toString', '--json'])).json().error.code).toBe('unknown-topic');
    expect((await reckon(['--radius_mm', '3', '--json'])).json().error.code).toBe('unknown-topic');
  });

  test('of a file that cannot be read is exit 66', async () => {
    const { code, json } = await reckon(['arc', '--in', 'gone.json', '--json']);
    expect(code).toBe(66);
    expect(json().error.message).toContain('gone.json');
    expect((await reckon(['arc', '--in', '-'])).code).toBe(66);
  });

  test.each([
    ['a file together with fields', ['--in', 'a.json', '--radius_mm', '3'], 'contradiction'],
    ['two files', ['--in', 'a.json', '--in', 'a.json'], 'too-many-values'],
    ['--in without a file', ['--in'], 'missing-field'],
  ])('of %s', async (_, args, error) => {
    const { code, json } = await reckon(['arc', '--json', ...args], { files: { 'a.json': '{}' } });
    expect(code).toBe(2);
    expect(json().error.code).toBe(error);
  });

  test('of a file that is not JSON is an object too', async () => {
    const { code, json } = await reckon(['arc', '--in', '-', '--json'], { stdin: 'radius: 3' });
    expect(code).toBe(2);
    expect(json().error.message).toContain('not JSON');
  });

  test('from a topic tells the field by the name it has here', async () => {
    const pull = [
      '--turn_deg=0.3',
      '--pull_deg=0.5',
      '--hinge_radius_mm=3000',
      '--depth_mm=40',
      '--wall_mm=3',
      '--kerf_mm=1.2',
    ];
    expect((await reckon(['slits', ...pull, '--json'])).json().error.field).toBe('pull_deg');
  });
});

describe('help', () => {
  test('lists every topic with an example', async () => {
    const { code, out } = await reckon([]);
    expect(code).toBe(0);
    for (const name of Object.keys(TOPICS)) expect(out).toContain(`curvewright reckon ${name}`);
    expect((await reckon(['--help'])).out).toBe(out);
    expect((await reckon(['--radius_mm', '3', '--help'])).out).toBe(out);
    expect((await reckon(['--json'])).json().topics).toHaveLength(Object.keys(TOPICS).length);
  });

  test('of a topic lists its fields, whatever else is given', async () => {
    const { code, out } = await reckon(['arc', '--nonsense', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('--sagitta_mm');
    expect((await reckon(['arc', '--help', '--json'])).json()).toMatchObject({
      schemaVersion: 1,
      name: 'arc',
    });
  });

  test('--schema prints the schema of the input', async () => {
    expect((await reckon(['layout', '--schema'])).json()).toMatchObject({
      type: 'object',
      required: ['radius_mm', 'exit_deg', 'from', 'at_mm'],
    });
  });
});

describe('every topic', () => {
  test.each(Object.keys(TOPICS))(
    '%s is named as it is called, and its example works as pasted',
    async name => {
      const { topic } = await (TOPICS[name] as (typeof TOPICS)[string])();
      expect(topic.name).toBe(name);
      // The words a shell makes of the example: single-quoted JSON is one word.
      const words = [...topic.example.matchAll(/(?:'([^']*)'|"([^"]*)"|[^\s'"])+/g)].map(([word]) =>
        word.replace(/'([^']*)'|"([^"]*)"/g, '$1$2'),
      );
      expect(words[0]).toBe(name);
      const answer = await reckon([...words, '--json']);
      expect(answer.code, answer.out).toBe(0);
      expect(answer.json().schemaVersion).toBe(1);
      expect((await reckon(words)).out.split('\n').every(line => line.length <= 120)).toBe(true);
    },
  );
});
