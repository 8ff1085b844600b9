/** What a terminal is taken to be when it does not say (a pipe, some serial lines, a window not yet told its size). */
export const USUAL_SIZE = { columns: 80, rows: 24 } as const;
