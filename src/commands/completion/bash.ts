import { followed, type Offer, type Place, type Takes } from './offers.ts';

const answer = (takes: Takes): string => {
  if (takes === 'file') return `found=$(compgen -f -- "$word"); files=yes`;
  if (takes === 'folder') return `found=$(compgen -d -- "$word"); files=yes`;
  return typeof takes === 'string' ? ':' : `offer='${takes.join(' ')}'`;
};

/** The cases of one place: after an option that is followed by something, only that; else the words, once, and the options. */
const cases = ({ path, words, files, options }: Place): string[] => {
  const here = path.join(' ');
  const after = ({ name, takes }: Offer): string[] =>
    takes === 'nothing' ? [] : [`    '${here}:--${name}') ${answer(takes)} ;;`];
  const first = words.map(({ word }) => word).join(' ');
  const names = options.map(({ name }) => `--${name}`).join(' ');
  return [
    ...options.flatMap(after),
    `    '${here}:'*) offer='${names}'${first === '' ? '' : `; [ $count -eq ${path.length} ] && offer="${first} $offer"`}${files ? `; ${answer('file')}` : ''} ;;`,
  ];
};

/**
 * The script for bash, 3.2 and later. Where the line stands is told by its first one or two words that are neither options nor what
 * follows one.
 */
export const bashScript = (
  places: readonly Place[],
): string => `# curvewright for bash. To have it in every shell, put this line into ~/.bashrc:
#   source <(curvewright completion bash)
_curvewright() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}"
  local here='' count=0 i offer='' found='' files='' IFS=$' \\t\\n'
  # bash takes the sign of --name=value for a word of its own.
  if [ "$word" = '=' ]; then word=''; elif [ "$before" = '=' ]; then before="\${COMP_WORDS[COMP_CWORD-2]}"; fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    case "\${COMP_WORDS[i]}" in
      ${followed(places).join('|')})
        if [ "\${COMP_WORDS[i+1]}" = '=' ]; then ((i += 2)); else ((i += 1)); fi ;;
      -*|=) ;;
      *)
        if [ $count -eq 0 ]; then here="\${COMP_WORDS[i]}"
        elif [ $count -eq 1 ] && [ "$here" = reckon ]; then here="reckon \${COMP_WORDS[i]}"
        fi
        ((count += 1)) ;;
    esac
  done
  case "$here:$before" in
${places.flatMap(cases).join('\n')}
  esac
  [ -n "$offer" ] && found="$(compgen -W "$offer" -- "$word")
$found"
  [ -n "$files" ] && type compopt >/dev/null 2>&1 && compopt -o filenames 2>/dev/null
  COMPREPLY=()
  while IFS= read -r i; do
    [ -n "$i" ] && COMPREPLY[\${#COMPREPLY[@]}]="$i"
  done <<< "$found"
  return 0
}
complete -F _curvewright curvewright
`;
