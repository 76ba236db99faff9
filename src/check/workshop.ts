import { createStore, type Store } from '../core/store.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { WORLD, type Frame } from '../geometry/frame.ts';
import type { Mesh } from '../model/mesh.ts';
import type { Part } from '../model/part.ts';
import { prismsOf } from '../model/prisms.ts';
import { meshOf } from '../model/solid.ts';
import type { ByPlace } from './by-place.ts';
import { CHECK_CHORD } from './chord.ts';
import { createBodyNames, type BodyNames } from './content.ts';
import {
  createRoom,
  prepare,
  prismForm,
  type Form,
  type PairCheck,
  type Room,
  type Shape,
  type Solid,
} from './distance/index.ts';
import type { Fit } from './fit.ts';
import type { CheckResult } from './result.ts';

/** A part as convex prisms, and the solids made of it so far. */
export interface Formed {
  /** Parts of one name have the same prisms; a part that is made again may get another name. */
  readonly name: string;
  /** The solid standing in a frame, ready for distance queries. */
  readonly at: (frame: Frame) => Solid;
}

/**
 * What checks build and keep by its content from one question to the next. A shell makes one and
 * hands it down; it may throw it away at any time, for nothing in it changes a result.
 */
export interface Workshop {
  /**
   * Parts as the objects that they were when they were made before, where nothing in them has changed:
   * what is kept by an object is then found without writing it out.
   */
  readonly asBefore: (parts: readonly Part[]) => readonly Part[];
  readonly formed: (part: Pick<Part, 'layers'>) => Result<Formed>;
  /** The mesh of a part for a picture on the screen. */
  readonly pictured: (part: Pick<Part, 'layers'>) => Result<Mesh>;
  /** `prepare` of a shape that is no mesh. */
  readonly prepared: (name: string, shape: Exclude<Shape, { kind: 'mesh' }>) => Result<Solid>;
  readonly nameOf: BodyNames;
  /** Where one search after another works. */
  readonly room: Room;
  /** Everything in a value that is never changed, written out once however often it is asked for. */
  readonly contentOf: (value: object) => string;
  /** Answers about pairs of bodies, and about how the parts of a fixture stand to each other. */
  readonly pairs: Store<PairCheck>;
  readonly assemblies: Store<Result<readonly CheckResult[]>>;
  /** How two parts fit that are carried as one, by their shapes and where the second stands to the first. */
  readonly fits: Store<ByPlace<Result<Fit>>>;
  /** What else a family computes, by a name of its own for each kind of value. */
  readonly keep: <T>(kind: string, key: string, make: () => T) => T;
}

/** Parts of several designs between which a maker goes back and forth. */
const PARTS = 200;
/** Places of one part over the settings of a design: a placed copy may have some hundred kilobytes. */
const PLACES = 20;
/** Shapes of machines and hands. */
const SHAPES = 200;
/** Of each kind plans, poses or blades of the latest designs: with points of blades they are large. */
const OTHERS = 12;
/** Questions about pairs, and assemblies, of such designs. */
const ANSWERS = 8000;
const ASSEMBLIES = 40;

const keyOf = ({ origin, x, y, z }: Frame): string => [origin, x, y, z].join(' ');

/** How far the picture of a solid may depart from the solid, mm. */
export const PICTURE_CHORD = 0.1;
/** The same where rings of a rounded end lie closer together than that. */
const PICTURE_FINE = 0.02;

const pictureOf = (layers: Part['layers']): Result<Mesh> => {
  const coarse = meshOf(layers, { chord: PICTURE_CHORD, volumeShare: 1 });
  return coarse.ok ? coarse : meshOf(layers, { chord: PICTURE_FINE, volumeShare: 1 });
};

/** Keeps parts by their content, and lists of them by which parts they hold. */
const createPartShelf = (): Workshop['asBefore'] => {
  const parts: Store<{ readonly number: number; readonly part: Part }> = createStore(PARTS);
  const lists: Store<readonly Part[]> = createStore(ASSEMBLIES);
  let count = 0;
  return (made) => {
    const known = made.map((part) =>
      parts(JSON.stringify(part), () => ({ number: count++, part })),
    );
    const numbers = known.map(({ number }) => number);
    return lists(numbers.join(' '), () => known.map(({ part }) => part));
  };
};

const formed = (name: string, form: Form): Formed => {
  const solids = createStore<Solid>(PLACES);
  // Parts carried as one are asked about at rest over and over: without a key of twelve numbers.
  let rest: Solid | undefined;
  return {
    name,
    at: (frame) =>
      frame === WORLD ? (rest ??= form.at(WORLD)) : solids(keyOf(frame), () => form.at(frame)),
  };
};

export const createWorkshop = (): Workshop => {
  const parts: Store<Result<Formed>> = createStore(PARTS);
  const shapes: Store<Result<Solid>> = createStore(SHAPES);
  const others = new Map<string, Store<unknown>>();
  const pictures: Store<Result<Mesh>> = createStore(PARTS);
  // The checks and the picture of a design ask about the same parts.
  const contents = new WeakMap<object, string>();
  const contentOf = (value: object): string => {
    const content = contents.get(value) ?? JSON.stringify(value);
    contents.set(value, content);
    return content;
  };
  let count = 0;
  return {
    asBefore: createPartShelf(),
    nameOf: createBodyNames(),
    room: createRoom(),
    contentOf,
    prepared: (name, shape) =>
      shapes(`${name} ${JSON.stringify(shape)}`, () => prepare(name, shape)),
    pairs: createStore(ANSWERS),
    assemblies: createStore(ASSEMBLIES),
    fits: createStore(ANSWERS),
    // A kind's values are all of the type that its one caller makes.
    keep: <T>(kind: string, key: string, make: () => T) => {
      const store = others.get(kind) ?? createStore(OTHERS);
      others.set(kind, store);
      return store(key, make) as T;
    },
    pictured: ({ layers }) => pictures(contentOf(layers), () => pictureOf(layers)),
    formed: ({ layers }) =>
      parts(contentOf(layers), () =>
        chain(prismsOf(layers, CHECK_CHORD), (prisms) =>
          ok(formed(String(count++), prismForm(prisms))),
        ),
      ),
  };
};
