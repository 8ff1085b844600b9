import type { Diagnosis, EdgeName, Note, OddSlit } from './diagnosis.ts';

/** Notes in plain words: mm, degrees, stations and slits counted from 1. */

const mm = (v: number): string => v.toFixed(1);
const degrees = (rad: number): string => ((Math.abs(rad) * 180) / Math.PI).toFixed(2);
const list = (items: readonly (string | number)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
const side = (v: number): string => (v >= 0 ? 'toward the centre' : 'away from the centre');

const EDGES: Record<EdgeName, string> = {
  depth: 'the depth of the tube: the other face was measured',
  deck: 'the thickness of the deck: the line of the deck top was taken for that of the rail',
  wall: 'the wall of the tube: the other side of the wall was measured',
  'deck and depth': 'deck and tube together: the deck top was taken for the bottom face',
  'back wall': 'the distance to the middle of the back wall: the line of the hinge was taken for a face',
  'deck and back wall':
    'deck and distance to the back wall: the line of the hinge was taken for the deck top',
  unknown: 'no size of the tube that was given: look which line and which face were used',
};

function words(note: Note): string {
  switch (note.is) {
    case 'edge':
      return `Every reading is off by ${mm(Math.abs(note.offset_mm))} mm ${side(note.offset_mm)}, ${EDGES[note.of]}. Measure again from the right one.`;
    case 'missed-slit':
      return `Slit ${note.slit} lacks about the whole bend planned for it: it was not sawn, or not closed.`;
    case 'second-slit':
      return `Slit ${note.slit} stands out too, ${degrees(note.turn_rad)}° ${note.turn_rad >= 0 ? 'more' : 'less'} closed.`;
    case 'kink-at-support':
      return `Slit ${note.slit} is at the support at ${mm(note.support_mm)} mm: look whether the support stood high or low.`;
    case 'which-slit':
      return `An angle gauge on the flats beside slits ${list(note.slits)} settles which.`;
    case 'read-again':
      return `Station ${note.station} reads ${mm(note.read_mm)}, its neighbours ${mm(note.neighbours_mm)}: read it again.`;
    case 'jump':
      return `From station ${note.station} on the readings jump by ${mm(Math.abs(note.by_mm))} mm ${side(note.by_mm)}: rail or line moved while they were taken, read them again.`;
    case 'swing':
      return `From station ${note.station} on the readings lie as if the rail had been turned about its ${note.about === 'entry' ? 'start' : 'end'}, ${mm(Math.abs(note.by_mm))} mm at the other end: rail or support moved while they were taken, read them again.`;
    case 'bump':
      return `Around ${mm(note.at_mm)} mm the rail stands ${mm(Math.abs(note.by_mm))} mm ${side(note.by_mm)} in a way no slit makes: look at the support there, and read again before any cut.`;
    case 'uneven':
      return `The bend error is not even: ${list(note.thirds_rad.map(t => `${t >= 0 ? '+' : '−'}${degrees(t)}°`))} a slit in the first, middle and last third.`;
    case 'no-simple-cause':
      return 'The readings fit no simple cause: take a few again, twice, and see how far they agree.';
    case 'too-few-stations':
      return 'Too few stations to tell one slit from the next.';
    case 'measure':
      return `Read again, twice, at ${list(note.at_mm.map(mm))} mm along the line: there the likeliest answers differ most.`;
  }
}

const slitWords = (odd: readonly OddSlit[]): string =>
  list(
    odd.map(
      o => `slit ${o.slit} is closed ${degrees(o.turn_rad)}° too ${o.turn_rad >= 0 ? 'much' : 'little'}`,
    ),
  );

/** What a diagnosis says beyond its cause, in one or a few sentences. */
export function detailOf(d: Diagnosis): string {
  const odd = d.cause === 'unclear' ? [] : d.odd_slits.slice(0, 1);
  const even =
    d.even_rad !== 0 && (d.cause.includes('curl') || d.cause === 'wrong edge')
      ? [`Every slit is closed ${degrees(d.even_rad)}° too ${d.even_rad >= 0 ? 'much' : 'little'}.`]
      : [];
  const first = odd.length > 0 ? [`${slitWords(odd)}.`.replace(/^s/, 'S')] : [];
  const rest = d.notes.map(words);
  const edge = d.cause === 'wrong edge';
  const beyond = even.length + first.length > 0 ? ['With that taken off:'] : [];
  const told = edge ? [...rest, ...beyond, ...even, ...first] : [...even, ...first, ...rest];
  if (told.length > 0) return told.join(' ');
  if (d.cause === 'laid askew') return 'The rail is good: lay it anew.';
  return d.cause === 'on the line' ? 'Nothing stands out.' : '';
}
