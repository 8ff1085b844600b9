import { Box, Text } from 'ink';
import TextInput from 'ink-text-input';
import { cellWidth, graphemes } from '../../drawing/cells.ts';
import { parts, type TypedLine } from './typed-line.ts';

export type TextFieldProps = Readonly<{ title: string; line: TypedLine; columns: number }>;

/** The end of a text that fits so many cells. */
const endOf = (text: string, cells: number): string => {
  const signs = graphemes(text);
  while (signs.length > 0 && cellWidth(signs.join('')) > cells) signs.shift();
  return signs.join('');
};

/**
 * One line of free text: a reason, a remark, a name. It only shows: the keys are the desk's, for the input's own listener
 * knows the text of its last drawing, and of two keys in one chunk it would lose the first.
 */
export const TextField = ({ title, line, columns }: TextFieldProps) => {
  const [before, under, after] = parts(line);
  const room = Math.max(8, columns - cellWidth(title) - 4);
  const shown = endOf(before, room - Math.min(cellWidth(after), Math.floor(room / 3)));
  return (
    <Box height={1} overflow="hidden">
      <Text bold> {title} </Text>
      <TextInput value={shown} onChange={() => {}} focus={false} />
      <Text inverse>{under === '' ? ' ' : under}</Text>
      <Text wrap="truncate">{after}</Text>
    </Box>
  );
};
