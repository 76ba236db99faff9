import { plain } from '../core/units.ts';
import { sha256 } from '../export/sha256.ts';
import type { Loop } from '../geometry/loop.ts';
import type { Part } from '../model/part.ts';

/** Shapes that agree to a tenth of a micrometre are the same shape. */
const DECIMALS = 4;

const value = (n: number): string => plain(n, DECIMALS);

export const loopContent = (loop: Loop): string =>
  loop.kind === 'circle'
    ? `o ${[...loop.centre, loop.radius].map(value).join(' ')}`
    : `p ${loop.vertices.map(({ x, y, bulge }) => [x, y, bulge].map(value).join(' ')).join(', ')}`;

const holesOf = (part: Part): unknown[] =>
  part.kind === 'hardware'
    ? []
    : part.holes.map(({ loop, thread }) => [loopContent(loop), thread ?? '']).sort();

const crossHolesOf = (part: Part): unknown[] =>
  part.kind === 'stock'
    ? part.crossHoles.map(({ face, at, size, thread, depth }) =>
        [face, ...at.map(value), value(size), thread ?? '', String(depth)].join(' '),
      )
    : [];

/** Everything that decides whether a part at hand can stand in for this one, as text. */
const described = (part: Part): unknown => {
  if (part.kind === 'hardware') return ['hardware', part.designation];
  return [
    part.kind,
    part.material,
    part.kind === 'plate' ? part.process : '',
    part.kind === 'stock' ? part.section : '',
    part.layers.map(({ profile, from, to }) => [
      value(from),
      value(to),
      loopContent(profile.outer),
      profile.holes.map(loopContent).sort(),
    ]),
    holesOf(part),
    crossHolesOf(part),
    part.kind === 'plate' ? part.engraving.map((line) => line.flat().map(value).join(' ')) : [],
  ];
};

/**
 * SHA-256 of what a part is: shape, material, threads, marks; bought pieces by their designation.
 * Its name, number and notes do not enter: parts of equal content can stand in for each other.
 */
export const partContent = (part: Part): string =>
  sha256(new TextEncoder().encode(JSON.stringify(described(part))));
