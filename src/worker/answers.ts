import type { Issue } from '../core/issue.ts';
import type { Fixture } from '../family/family.ts';
import { flatten } from '../geometry/flatten.ts';
import type { Checked } from '../make/engine.ts';
import { dialRanges } from '../make/free-range/dials.ts';
import { massOf } from '../model/measure.ts';
import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import type { Built, PartCard, Solved } from './protocol.ts';

/** How far an outline on the screen may depart from the part, mm. */
const CHORD = 0.01;

/** An edge rest grinds a hollow, the others a flat. */
const pieceOf = ({ known }: Fixture): Solved['testPiece'] => {
  const [setting] = known?.settings ?? [];
  if (setting === undefined) return null;
  return setting.set.kind === 'edge-rest' ? 'hollow' : 'flat';
};

/** The numbers of a fixture as plain data that can leave the worker. */
export const solvedOf = (fixture: Fixture): Solved => ({
  settings: fixture.settings,
  lines: fixture.lines,
  facts: fixture.facts,
  sections: Object.fromEntries(
    fixture.settings.map((setting) => [setting.id, fixture.section(setting.id)]),
  ),
  testPiece: pieceOf(fixture),
  assembly: fixture.assembly,
  zeroing: fixture.zeroing,
  cautions: fixture.cautions,
});

const describe = (part: Part): string => {
  if (part.kind === 'plate') return text.document.parameters.making.process.options[part.process];
  if (part.kind === 'stock') return part.section;
  return part.kind === 'hardware' ? part.designation : part.finish;
};

/** The box around a part, the longest side first. */
const sizeOf = ({ layers }: Part, contours: PartCard['layers']): number[] => {
  const points = contours.flatMap(({ outer }) => outer);
  const sides = [
    points.map(([x]) => x),
    points.map(([, y]) => y),
    layers.flatMap(({ from, to }) => [from, to]),
  ];
  return sides.map((list) => Math.max(...list) - Math.min(...list)).sort((a, b) => b - a);
};

const cardOf = (part: Part): PartCard => {
  const layers = part.layers.map(({ profile }) => ({
    outer: flatten(profile.outer, CHORD),
    holes: profile.holes.map((hole) => flatten(hole, CHORD)),
  }));
  return {
    id: part.id,
    name: part.name,
    kind: part.kind,
    quantity: part.quantity,
    material: part.material,
    process: describe(part),
    mass: massOf(part),
    size: part.kind === 'hardware' ? null : sizeOf(part, layers),
    layers,
  };
};

/** Parts and checks as plain data that can leave the worker, with the advice on making them. */
export const builtOf = ({ fixture, parts, checks }: Checked, advice: readonly Issue[]): Built => ({
  parts: parts.map(cardOf),
  supplies: fixture.supplies ?? [],
  checks,
  dials: dialRanges(fixture, checks),
  advice,
});
