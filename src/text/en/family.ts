export const family = {} as const;
