import { useInput } from 'ink';
import TextInput from 'ink-text-input';
import { useRef } from 'react';
import { typedLine } from './typed-line.ts';

export type TextFieldProps = Readonly<{
  value: string;
  onChange: (text: string) => void;
  onSubmit: (text: string) => void;
  /** Escape or Ctrl-C: the field closes, the text is the caller's to keep. */
  onClose: () => void;
  onSuspend?: () => void;
  placeholder?: string;
}>;

/**
 * One line of free text: a reason, a remark, a name. It reads the terminal itself, so the keys of the page must be silent
 * while it is shown (`useKeys(…, false)`).
 */
export const TextField = ({
  value,
  onChange,
  onSubmit,
  onClose,
  onSuspend,
  placeholder = '',
}: TextFieldProps) => {
  const chord = useRef(false);
  return (
    <>
      <KeyWatch chord={chord} onClose={onClose} onSuspend={onSuspend} />
      <TextInput
        value={value}
        placeholder={placeholder}
        onChange={proposed => {
          // The input would type the letter of a chord.
          if (chord.current) return;
          const { text, enter } = typedLine(proposed, value);
          if (text !== value) onChange(text);
          if (enter) onSubmit(text);
        }}
        onSubmit={onSubmit}
      />
    </>
  );
};

type KeyWatchProps = Readonly<{
  chord: { current: boolean };
  onClose: () => void;
  onSuspend: (() => void) | undefined;
}>;

/** Listens before the input does (effects run in the order of the tree), so that it can tell a chord from a letter. */
const KeyWatch = ({ chord, onClose, onSuspend }: KeyWatchProps): null => {
  useInput((input, key) => {
    chord.current = key.ctrl || key.meta;
    if (key.escape || (key.ctrl && input === 'c')) onClose();
    if (key.ctrl && input === 'z') onSuspend?.();
  });
  return null;
};
