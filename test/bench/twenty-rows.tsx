import { Box, render, Text, useInput } from 'ink';
import { useState } from 'react';

const NAMES = Array.from({ length: 20 }, (_, i) => `row ${i}`);

/** A plain screen of twenty rows, of which a key changes one. What a key of the bench is measured against. */
const Rows = () => {
  const [n, setN] = useState(0);
  useInput(() => setN(k => (k + 1) % 20));
  return (
    <Box flexDirection="column">
      {NAMES.map((name, i) => (
        <Text key={name} bold={i === n}>
          {`${i === n ? '>' : ' '} ${name} of a plain screen with some words on it`}
        </Text>
      ))}
    </Box>
  );
};

render(<Rows />, { exitOnCtrlC: false, incrementalRendering: true, maxFps: 60 });
