export const exporting = {} as const;
