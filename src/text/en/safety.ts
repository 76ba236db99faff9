export const safety = {} as const;
