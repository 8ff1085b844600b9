/**
 * The same kernel, with the answers to its last few inputs kept: every page is made anew at every key, from inputs that seldom change.
 * The kernel must be pure and its input plain data.
 * @param most answers that are kept
 */
export const keptByInput = <I, A>(kernel: (input: I) => A, most = 16): ((input: I) => A) => {
  const kept = new Map<string, A>();
  return input => {
    const key = JSON.stringify(input);
    const known = kept.get(key);
    if (known !== undefined) return known;
    const answer = kernel(input);
    kept.set(key, answer);
    const oldest = kept.keys().next().value;
    if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    return answer;
  };
};
