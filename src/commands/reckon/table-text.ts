/** One cell of a table; numbers stand to the right of theirs. */
export type Cell = Readonly<{ text: string; right?: boolean }>;

const GAP = '  ';

/** Rows as lines with their columns under each other. */
export const table = (rows: readonly (readonly Cell[])[], indent = ''): string => {
  const columns = Math.max(...rows.map(row => row.length));
  const widths = Array.from({ length: columns }, (_, n) =>
    Math.max(...rows.map(row => row[n]?.text.length ?? 0)),
  );
  return rows
    .map(row =>
      `${indent}${widths
        .map((width, n) => {
          const cell = row[n] ?? { text: '' };
          return cell.right ? cell.text.padStart(width) : cell.text.padEnd(width);
        })
        .join(GAP)}`.trimEnd(),
    )
    .join('\n');
};

/** A number for reading: hundredths from 1 up and four digits below; no exponent until it would fill the line. */
export const numberText = (value: number): string => {
  const size = Math.abs(value);
  if (Number.isInteger(value) && size < 1e15) return String(value);
  if (size >= 1e9 || size < 1e-6) return value.toExponential(4);
  return size >= 1 ? value.toFixed(2) : value.toFixed(Math.min(9, 3 - Math.floor(Math.log10(size))));
};

/**
 * Numbers that stand under each other: with hundredths all alike, unless one of them would vanish in that. Noise a
 * thousand-millionth of the greatest is not worth digits.
 */
export const numberTexts = (list: readonly number[]): readonly string[] => {
  const sizes = list.map(Math.abs);
  const most = Math.max(...sizes);
  const alike = most >= 1 && most < 1e9 && sizes.every(size => size >= 0.05 || size <= most * 1e-9);
  if (!alike || list.every(Number.isInteger)) return list.map(numberText);
  return list.map(value => value.toFixed(2).replace(/^-(0\.00)$/, '$1'));
};

/** Numbers in a row, as many to a line as fit `width`. */
export const listText = (list: readonly number[], indent: string, width: number): string => {
  const texts = numberTexts(list);
  const column = Math.max(...texts.map(text => text.length));
  const perLine = Math.max(1, Math.floor((width - indent.length + GAP.length) / (column + GAP.length)));
  const lines: string[] = [];
  for (let n = 0; n < texts.length; n += perLine)
    lines.push(
      indent +
        texts
          .slice(n, n + perLine)
          .map(text => text.padStart(column))
          .join(GAP),
    );
  return lines.join('\n');
};

/** Words as lines of at most `width`, those after the first indented by `hang`. */
export const wrapped = (text: string, width: number, hang = ''): string => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(last === undefined ? word : hang + word);
  }
  return lines.join('\n');
};
