export const blade = {} as const;
