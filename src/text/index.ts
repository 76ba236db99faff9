import { adapt } from './en/adapt.ts';
import { app } from './en/app.ts';
import { blade } from './en/blade.ts';
import { check } from './en/check.ts';
import { cli } from './en/cli.ts';
import { document } from './en/document.ts';
import { drawing } from './en/drawing.ts';
import { exporting } from './en/export.ts';
import { family } from './en/family.ts';
import { glossary } from './en/glossary.ts';
import { grind } from './en/grind.ts';
import { grinder } from './en/grinder.ts';
import { make } from './en/make.ts';
import { model } from './en/model.ts';
import { safety } from './en/safety.ts';
import { setup } from './en/setup.ts';
import { virtual } from './en/virtual.ts';

/**
 * Everything a person reads, in one catalogue. Entries are strings or functions of the values
 * they mention; another language is another object of the same type.
 */
export const text = {
  adapt,
  app,
  blade,
  check,
  cli,
  document,
  drawing,
  exporting,
  family,
  glossary,
  grind,
  grinder,
  make,
  model,
  safety,
  setup,
  virtual,
} as const;

export type Catalogue = typeof text;
