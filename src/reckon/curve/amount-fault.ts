import { refuse } from '../../quantity/outcome.ts';

/** The first amount that is not a finite number above 0, refused under its name; undefined when all are. */
export const amountFault = (
  amounts: Readonly<Record<string, number>>,
): ReturnType<typeof refuse> | undefined => {
  const wrong = Object.entries(amounts).find(([, amount]) => !(amount > 0 && Number.isFinite(amount)));
  return wrong && refuse('out-of-range', wrong[0], `${wrong[1]} will not do here.`, 'a number above 0');
};
