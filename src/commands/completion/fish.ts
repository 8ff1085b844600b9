import { followed, type Place, type Takes } from './offers.ts';

const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;

const answer = (takes: Takes): string => {
  if (takes === 'nothing') return '';
  if (takes === 'file') return ' -r -F';
  if (takes === 'folder') return ` -x -a '(__fish_complete_directories)'`;
  return typeof takes === 'string' ? ' -x' : ` -x -a '${takes.join(' ')}'`;
};

const about = (text: string): string => (text === '' ? '' : ` -d ${quoted(text)}`);

const lines = ({ path, words, files, options }: Place): string[] => {
  const here = ['__curvewright_at', ...path].join(' ');
  // The program's own options stand before a command; those of a command anywhere after it, those of reckon before its topic.
  const within =
    path.length === 0 || path.join(' ') === 'reckon' ? here : `__curvewright_in ${path.join(' ')}`;
  return [
    ...words.map(w => `complete -c curvewright -n '${here}' -a ${w.word}${about(w.about)}`),
    ...(files ? [`complete -c curvewright -n '${within}' -F`] : []),
    ...options.map(
      o => `complete -c curvewright -n '${within}' -l ${o.name}${answer(o.takes)}${about(o.about)}`,
    ),
  ];
};

/** The script for fish, 3.1 and later. */
export const fishScript = (
  places: readonly Place[],
): string => `# curvewright for fish. To have it in every shell, put this line into ~/.config/fish/config.fish:
#   curvewright completion fish | source
function __curvewright_place
    set -l words (commandline -opc)
    set -l skip no
    for word in $words[2..-1]
        if test $skip = yes
            set skip no
        else if contains -- $word ${followed(places).join(' ')}
            set skip yes
        else if not string match -q -- '-*' $word
            echo -- $word
        end
    end
end
function __curvewright_at
    set -l place (__curvewright_place)
    test "$place" = "$argv"
end
function __curvewright_in
    set -l place (__curvewright_place)
    set -l depth (count $argv)
    test "$place[1..$depth]" = "$argv"
end
complete -c curvewright -f
${places.flatMap(lines).join('\n')}
`;
