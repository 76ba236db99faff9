export const grind = {} as const;
