/** What is written on the steel: "upright 9 A", "crossmember 4", "rear diagonal"; beyond the first two rails also which pair it joins. */
export const pieceName = (need: string): string => {
  const [kind = need, where = ''] = need.split('@');
  const [rails = '', place = ''] = where.split(':');
  const rail = rails === 'A-B' ? '' : rails;
  return [kind, place, rail].filter(part => part !== '').join(' ');
};
