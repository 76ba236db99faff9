import { field } from './field.ts';

export const document = { field } as const;
