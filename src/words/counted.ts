/** A count with its thing, one or many: "1 entry", "2 entries". */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
