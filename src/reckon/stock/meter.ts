/** What a search may still spend: counted work, and time when a clock was passed in. */
export type Meter = Readonly<{
  /** Adds work done, in steps of the innermost loops. */
  spend: (steps: number) => void;
  /** True once the work or the time is used up; it stays true. */
  over: () => boolean;
  /** A meter for a part of what is left; what it spends counts here too. */
  share: (part: number) => Meter;
}>;

/** A few milliseconds: under load each takes several times as long, and an answer is not to be late. */
const STEPS_BETWEEN_LOOKS = 25_000;

/**
 * A meter that ends after a number of steps, or at a time.
 * @param steps the most steps, the same on every machine
 * @param now a clock in milliseconds; without one only the steps count
 * @param until_ms the time by that clock at which it ends
 */
export const meter = (steps: number, now?: () => number, until_ms = Number.POSITIVE_INFINITY): Meter => {
  const part = (limit: number, until: number, of: Meter | null): Meter => {
    let used = 0;
    let looked = 0;
    let ended = false;
    return {
      spend: n => {
        used += n;
        of?.spend(n);
      },
      over: () => {
        if (ended) return true;
        if (used >= limit || of?.over() === true) ended = true;
        else if (now !== undefined && used - looked >= STEPS_BETWEEN_LOOKS) {
          looked = used;
          ended = now() >= until;
        }
        return ended;
      },
      share(share) {
        const at = now?.() ?? 0;
        return part((limit - used) * share, at + (until - at) * share, this);
      },
    };
  };
  return part(steps, until_ms, null);
};
