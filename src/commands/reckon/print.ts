import type { Fault } from '../../quantity/outcome.ts';
import { unitOf } from '../../quantity/units.ts';
import { acceptedOf, limitsOf } from './accepted.ts';
import { fieldName } from './field-unit.ts';
import { type Cell, listText, numberText, numberTexts, table, wrapped } from './table-text.ts';
import type { FieldSpec, FieldSpecs, Topic, TopicAnswer } from './topic.ts';

const WIDTH = 80;

const isRecord = (value: unknown): value is TopicAnswer =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** An answer as a short table: one figure a line with its unit, lists of records as tables of their own under it. */
export const answerText = (answer: TopicAnswer): string => blocks(answer, '').join('\n\n');

const blocks = (record: TopicAnswer, indent: string): string[] => {
  const entries = Object.entries(record).filter(([, value]) => value !== undefined);
  const figures = entries.filter(
    ([, value]) => !Array.isArray(value) && !isRecord(value) && !isSentence(value),
  );
  const below = entries.filter(entry => !figures.includes(entry)).map(entry => blockBelow(entry, indent));
  return [...(figures.length === 0 ? [] : [table(figures.map(figureRow), indent)]), ...below];
};

/** A text too long to stand in a column. */
const isSentence = (value: unknown): boolean => typeof value === 'string' && value.length > 24;

const blockBelow = ([name, value]: readonly [string, unknown], indent: string): string => {
  if (typeof value === 'string') return wrapped(`${indent}${headOf(name)}: ${value}`, WIDTH, `${indent}  `);
  const block = Array.isArray(value)
    ? listBlock(value, name, `${indent}  `)
    : blocks(value as TopicAnswer, `${indent}  `).join('\n');
  return `${indent}${headOf(name)}\n${block}`;
};

const headOf = (name: string): string => {
  const { words, unit } = fieldName(name);
  const label = unit === undefined ? '' : unitOf(unit).label;
  return [words, label].filter(part => part !== '').join(', ');
};

const figureRow = ([name, value]: readonly [string, unknown]): readonly Cell[] => {
  const { words, unit } = fieldName(name);
  const label = unit === undefined || typeof value !== 'number' ? '' : unitOf(unit).label;
  return [{ text: words === '' ? label : words }, cellOf(value), { text: label }];
};

const cellOf = (value: unknown): Cell => {
  if (typeof value === 'number') return { text: numberText(value), right: true };
  if (typeof value === 'boolean') return { text: value ? 'yes' : 'no' };
  if (value === null) return { text: '–' };
  if (Array.isArray(value)) return { text: value.map(one => partText(one)).join('  ') };
  return { text: isRecord(value) ? partText(value) : String(value) };
};

/** A part within a table's cell: a cut as its length, a force as its numbers with their names. */
const partText = (value: unknown): string => {
  if (!isRecord(value)) return cellOf(value).text;
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .map(([name, part]) => `${headOf(name)} ${cellOf(part).text}`)
    .join(' · ');
};

const listBlock = (list: readonly unknown[], name: string, indent: string): string => {
  if (list.length === 0) return `${indent}none`;
  if (list.every(one => typeof one === 'number')) return listText(list as readonly number[], indent, WIDTH);
  if (!list.every(isRecord))
    return list.map(one => wrapped(`${indent}${partText(one)}`, WIDTH, `${indent}  `)).join('\n');
  const rows = list as readonly TopicAnswer[];
  const names = [...new Set(rows.flatMap(row => Object.keys(row)))];
  const columns = names.map(one =>
    columnOf(
      one,
      rows.map(row => row[one]),
    ),
  );
  const text = table(
    ['head', ...rows].map((_, n) => columns.map(column => column[n] as Cell)),
    indent,
  );
  // Too wide for a terminal of 80: each record on lines of its own.
  if (text.split('\n').every(line => line.length <= WIDTH)) return text;
  return rows
    .map((row, n) => [`${indent}${headOf(name)} ${n + 1}`, ...blocks(row, `${indent}  `)].join('\n'))
    .join('\n');
};

/** One column of a table: its head, and under it every row's cell. */
const columnOf = (name: string, values: readonly unknown[]): readonly Cell[] => {
  const numbers = values.filter(value => typeof value === 'number');
  if (numbers.length === values.length)
    return [headOf(name), ...numberTexts(numbers)].map(text => ({ text, right: true }));
  return [
    { text: headOf(name) },
    ...values.map(value => (value === undefined ? { text: '' } : cellOf(value))),
  ];
};

/** A refusal in words: what is wrong, where, and what would do. */
export const faultText = ({ code, field, message, accepted }: Fault): string =>
  [
    wrapped(`${message} [${code}]`, WIDTH),
    ...(field === null ? [] : [`  field: ${field}`]),
    wrapped(`  accepted: ${accepted}`, WIDTH, '    '),
  ].join('\n');

/** What one topic takes, with an example. */
export const topicHelp = (topic: Topic): string =>
  [
    wrapped(`curvewright reckon ${topic.name}: ${topic.summary}`, WIDTH, '  '),
    '',
    exampleText(topic),
    '',
    ...fieldLines(topic.fields),
    '',
    'A number counts in the unit its field ends in; a text with a unit ("4 ft 6 in")',
    'is taken as well. Instead of fields: --in FILE with one JSON object, - for',
    'standard input. --json answers in JSON; --schema prints the schema of the input.',
  ].join('\n');

/** A command to paste, broken before its flags where it is too long for a line. */
const exampleText = (topic: Topic): string =>
  `curvewright reckon ${topic.example}`
    .split(' --')
    .reduce<string[]>((lines, part, n) => {
      const last = lines.at(-1);
      const flag = n === 0 ? `  ${part}` : ` --${part}`;
      if (last === undefined) return [flag];
      return last.length + flag.length + 2 <= WIDTH
        ? [...lines.slice(0, -1), last + flag]
        : [...lines.slice(0, -1), `${last} \\`, `   ${flag}`];
    }, [])
    .join('\n');

const fieldLines = (fields: FieldSpecs): string[] => {
  const column = Math.max(...Object.keys(fields).map(name => name.length)) + 6;
  return Object.entries(fields).map(([name, spec]) => {
    const limits = spec.is === 'number' ? limitsOf(unsaid(spec), name) : '';
    const parts = [spec.about ?? '', limits, kindText(spec, name), spec.optional ? 'optional' : ''];
    const text = parts.filter(part => part !== '').join('; ');
    return wrapped(`${`  --${name}`.padEnd(column)}${text}`, WIDTH, ' '.repeat(column)).trimEnd();
  });
};

/** That a length is above 0 need not be said; the refusal says it to whoever tries. */
const unsaid = ({ above, ...rest }: Extract<FieldSpec, { is: 'number' }>) =>
  above === 0 || above === undefined ? rest : { ...rest, above };

const kindText = (spec: FieldSpec, name: string): string => {
  if (spec.is === 'number' || spec.is === 'text') return '';
  if (spec.is === 'list' && spec.of.is === 'number') return 'numbers with commas between';
  return acceptedOf(spec, name);
};

/** Every topic with its line, and an example of each to paste. */
export const topicList = (topics: readonly Topic[]): string => {
  const column = Math.max(...topics.map(topic => topic.name.length)) + 4;
  return [
    'curvewright reckon TOPIC: the numbers, without a build',
    '',
    ...topics.map(({ name, summary }) =>
      wrapped(`  ${name}`.padEnd(column) + summary, WIDTH, ' '.repeat(column)),
    ),
    '',
    'Examples',
    ...topics.map(exampleText),
    '',
    'curvewright reckon TOPIC --help lists what a topic takes.',
  ].join('\n');
};
