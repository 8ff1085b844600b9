/** A moment as the clock on the wall has it: 21:40. Empty for what is no moment. */
export const clockTime = (moment: string | number): string => {
  const d = new Date(moment);
  return Number.isNaN(d.getTime())
    ? ''
    : `${String(d.getHours()).padStart(2, '0')}:${String(d.getMinutes()).padStart(2, '0')}`;
};
