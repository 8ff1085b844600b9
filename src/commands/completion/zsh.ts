import { followed, type Offer, type Place, type Takes } from './offers.ts';

const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

const answer = (takes: Takes): string => {
  if (takes === 'file') return '_files';
  if (takes === 'folder') return '_files -/';
  return typeof takes === 'string' ? ':' : `compadd -- ${takes.join(' ')}`;
};

/** A name and what it is, as _describe reads them: the first colon parts the two. */
const described = (name: string, about: string): string => quoted(about === '' ? name : `${name}:${about}`);

const cases = ({ path, words, files, options }: Place): string[] => {
  const here = path.join(' ');
  const after = ({ name, takes }: Offer): string[] =>
    takes === 'nothing' ? [] : [`    ('${here}:--${name}') ${answer(takes)}; return ;;`];
  return [
    ...options.flatMap(after),
    `    ('${here}:'*)`,
    ...(words.length === 0
      ? []
      : [
          `      (( $#place == ${path.length} )) && first=(${words.map(w => described(w.word, w.about)).join(' ')})`,
        ]),
    ...(files ? ['      _files'] : []),
    `      names=(${options.map(o => described(`--${o.name}`, o.about)).join(' ')}) ;;`,
  ];
};

/** The script for zsh: as a file _curvewright in a folder of $fpath, or read into a shell. */
export const zshScript = (places: readonly Place[]): string => `#compdef curvewright
# curvewright for zsh. To have it in every shell, put this line into ~/.zshrc, after compinit:
#   source <(curvewright completion zsh)
_curvewright() {
  local -a place first names
  local i before=$words[CURRENT-1] here
  if [[ $PREFIX == --*=* ]]; then before=\${PREFIX%%=*}; compset -P '*='; fi
  for ((i = 2; i < CURRENT; i++)); do
    case $words[i] in
      (${followed(places).join('|')}) ((i += 1)) ;;
      (-*) ;;
      (*) place+=("$words[i]") ;;
    esac
  done
  here=$place[1]
  [[ $here == reckon && -n $place[2] ]] && here="reckon $place[2]"
  case "$here:$before" in
${places.flatMap(cases).join('\n')}
  esac
  (( $#first )) && _describe -t words 'word' first
  (( $#names )) && _describe -o -t options 'option' names
}
if [[ $funcstack[1] == _curvewright ]]; then _curvewright "$@"; else compdef _curvewright curvewright; fi
`;
