/** How many letters have to be changed, added or left out to make one word of another. */
const distance = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, n) => n);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    row = next;
  }
  return row[b.length] as number;
};

/** The known word that a mistyped one is most likely meant to be; undefined when none is near. */
export const nearest = (typed: string, known: readonly string[]): string | undefined => {
  const plain = (word: string) => word.toLowerCase().replace(/[-_ ]/g, '');
  const word = plain(typed.slice(0, 60));
  const begun = known.filter(
    one => word.length >= 3 && (plain(one).startsWith(word) || word.startsWith(plain(one))),
  );
  const ranked = known
    .map(one => ({
      one,
      off: begun.includes(one) ? 0.5 : distance(word, plain(one)),
      length: plain(one).length,
    }))
    .filter(({ off, length }) => off <= Math.max(1, Math.floor(length / 3)))
    .sort((a, b) => a.off - b.off);
  return ranked[0]?.one;
};
