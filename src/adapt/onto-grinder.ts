import type { Issue } from '../core/issue.ts';
import { problem } from '../core/issue.ts';
import type { Design, Pass } from '../document/schema.ts';
import type { Grinder } from '../grinder/schema.ts';
import { text } from '../text/index.ts';

const words = text.adapt.notes;

const note = (path: string, message: string): Issue =>
  problem('adapted', path, { message, fix: '' }, 'note');

/** The belt of the new grinder that takes a belt's place: of its name, else of the nearest grit. */
const beltFor = (id: string, from: Grinder, to: Grinder): Grinder['belts'][number] | undefined => {
  const same = to.belts.find((belt) => belt.id === id);
  if (same) return same;
  const grit = from.belts.find((belt) => belt.id === id)?.grit ?? 0;
  // Grits are steps of equal ratio, so the nearest is nearest in ratio.
  const off = (other: number): number => Math.abs(Math.log(Math.max(other, 1) / Math.max(grit, 1)));
  return [...to.belts].sort((a, b) => off(a.grit) - off(b.grit))[0];
};

/** The backing that takes a backing's place: of its name, else of its kind, else none, else any. */
const backingFor = (
  id: string,
  from: Grinder,
  to: Grinder,
): Grinder['backings'][number] | undefined => {
  const kind = from.backings.find((backing) => backing.id === id)?.kind;
  return (
    to.backings.find((backing) => backing.id === id) ??
    to.backings.find((backing) => backing.kind === kind) ??
    to.backings.find((backing) => backing.kind === 'none') ??
    to.backings[0]
  );
};

const samePass = (a: Pass | undefined, b: Pass): boolean =>
  a?.belt === b.belt && a.backing === b.backing && a.edge === b.edge && a.steeper === b.steeper;

/** The sequence with the belts and backings of another grinder, and a note on each exchange. */
const sequenceOn = (design: Design, to: Grinder): { passes: Pass[]; notes: Issue[] } => {
  const notes: Issue[] = [];
  const passes: Pass[] = [];
  design.sequence.forEach((pass, i) => {
    const belt = beltFor(pass.belt, design.grinder, to)?.id ?? pass.belt;
    const backing = backingFor(pass.backing, design.grinder, to)?.id ?? pass.backing;
    const at = `sequence.${String(i)}`;
    if (belt !== pass.belt) notes.push(note(`${at}.belt`, words.belt(i + 1, pass.belt, belt)));
    if (backing !== pass.backing)
      notes.push(note(`${at}.backing`, words.backing(i + 1, pass.backing, backing)));
    const adapted = { ...pass, belt, backing };
    if (samePass(passes.at(-1), adapted)) notes.push(note(at, words.passDropped(i + 1, belt)));
    else passes.push(adapted);
  });
  return { passes, notes };
};

/** A design on another grinder, with notes on everything that had to give way. */
export const ontoGrinder = (
  design: Design,
  grinder: Grinder,
): { design: Design; notes: Issue[] } => {
  const { passes, notes } = sequenceOn(design, grinder);
  const { calibration, ...fixture } = design.fixture;
  return {
    design: { ...design, grinder, sequence: passes, fixture },
    notes:
      calibration === undefined
        ? notes
        : [...notes, note('fixture.calibration', words.calibration)],
  };
};
