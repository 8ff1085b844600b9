/** What gives the time. Everything above takes one as an argument, so that a test can say what time it is. */
export type Clock = () => Date;

/** The time of this machine. It may be wrong or set back: nothing is ordered by it. */
export const clock: Clock = () => new Date();
