import type { CommandSpec, OptionSpec } from '../command.ts';
import type { FieldSpec, Topic } from '../reckon/topic.ts';

/** What follows an option: nothing, a file, a folder, one of a few words, or something only the person knows. */
export type Takes = 'nothing' | 'file' | 'folder' | 'own' | readonly string[];

export type Offer = Readonly<{ name: string; about: string; takes: Takes }>;

/** What a shell may offer at one place of the line: `words` next, `files` and `options` anywhere after. `path` is what was typed to get there. */
export type Place = Readonly<{
  path: readonly string[];
  words: readonly Readonly<{ word: string; about: string }>[];
  files: boolean;
  options: readonly Offer[];
}>;

const takesOf = ({ type, value = '' }: OptionSpec): Takes => {
  if (type === 'boolean') return 'nothing';
  if (value === 'FILE') return 'file';
  if (value === 'DIR') return 'folder';
  return value.includes('|') ? value.split('|') : 'own';
};

const offers = (options: Readonly<Record<string, OptionSpec>>): Offer[] =>
  Object.entries(options).map(([name, spec]) => ({ name, about: spec.about, takes: takesOf(spec) }));

const fieldTakes = (spec: FieldSpec): Takes => {
  if (spec.is === 'choice') return spec.of;
  return spec.is === 'flag' ? 'nothing' : 'own';
};

/**
 * Every place of the command line with what may be typed there: the program, each command, each topic of the number command.
 * Those options are left out that a command does not read. `topics` are the number command's, whose fields are options there.
 */
export const placesOf = async (
  commands: readonly CommandSpec[],
  common: Readonly<Record<string, OptionSpec>>,
  topics: readonly Topic[],
): Promise<readonly Place[]> => {
  const places = await Promise.all(
    commands.map(async ({ name, options, words }): Promise<Place> => {
      const about = new Map(topics.map(topic => [topic.name, topic.summary]));
      const reckons = name === 'reckon';
      return {
        path: [name],
        words: (typeof words === 'function' ? await words() : []).map(word => ({
          word,
          about: reckons ? (about.get(word) ?? '') : '',
        })),
        files: words === 'files',
        // The number command reads its own line, and of the common options only this.
        options: offers({
          ...options,
          ...(reckons ? { help: { type: 'boolean', about: 'this help' } as const } : common),
        }),
      };
    }),
  );
  const own = places.find(({ path }) => path[0] === 'reckon')?.options ?? [];
  return [
    {
      path: [],
      words: commands.map(({ name, summary }) => ({ word: name, about: summary })),
      files: false,
      options: offers({ ...commands.find(({ name }) => name === 'bench')?.options, ...common }),
    },
    ...places,
    ...topics.map(
      (topic): Place => ({
        path: ['reckon', topic.name],
        words: [],
        files: false,
        options: [
          ...Object.entries(topic.fields).map(([name, spec]) => ({
            name,
            about: spec.about ?? '',
            takes: fieldTakes(spec),
          })),
          ...own,
        ],
      }),
    ),
  ];
};

/** Options of any place that are followed by a word of their own: what comes after them is no command. */
export const followed = (places: readonly Place[]): string[] => [
  ...new Set(
    places
      .filter(({ path }) => path.length < 2)
      .flatMap(({ options }) => options)
      .filter(({ takes }) => takes !== 'nothing')
      .map(({ name }) => `--${name}`),
  ),
];
