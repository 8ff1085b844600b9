const METHODS = ['log', 'info', 'warn', 'error', 'debug'] as const;

/** At most this many lines are kept; a library that repeats itself must not fill the memory of a long evening. */
const KEPT_LINES = 40;

/**
 * Keeps what libraries write to the console while the screen is taken, where it would tear the page.
 * @returns a way to give the console back; it returns the lines that were held.
 */
export const holdConsole = (): (() => string[]) => {
  const held: string[] = [];
  const originals = METHODS.map(method => [method, console[method]] as const);
  for (const method of METHODS) {
    console[method] = (...parts: unknown[]) => {
      held.push(parts.map(part => (part instanceof Error ? part.message : String(part))).join(' '));
      if (held.length > KEPT_LINES) held.shift();
    };
  }
  return () => {
    for (const [method, original] of originals) console[method] = original;
    return held.splice(0);
  };
};
