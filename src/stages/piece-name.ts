/** What is written on the steel: "upright 9 A", "crossmember 4", "rear diagonal". */
export const pieceName = (need: string): string => {
  const [kind = need, where = ''] = need.split('@');
  const [rails = '', place = ''] = where.split(':');
  const rail = rails.includes('-') ? '' : rails;
  return [kind, place, rail].filter(part => part !== '').join(' ');
};
