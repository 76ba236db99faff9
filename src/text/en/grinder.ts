export const grinder = {} as const;
