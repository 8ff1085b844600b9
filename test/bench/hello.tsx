import { render, Text, useInput } from 'ink';
import { useState } from 'react';

/** The least Ink program: one line, one key. What the bench is measured against. */
const Hello = () => {
  const [n, setN] = useState(0);
  useInput(() => setN(k => k + 1));
  return <Text>hello {n}</Text>;
};

render(<Hello />, { exitOnCtrlC: false });
