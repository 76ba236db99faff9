import {
  plate as cutPlate,
  materialOf,
  text,
  type Hole,
  type Loop,
  type Making,
  type PlatePart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import type { Drawn } from '../layout/drawn.ts';
import type { Joint } from '../layout/joints.ts';

/** The same with every length chosen from the hardware tables. */
export interface Context extends Drawn {
  readonly joints: readonly Joint[];
  /** Feed screw: its length, its front end and the front of the knob at the mean place. */
  readonly feed: { readonly length: number; readonly frontY: number; readonly knobY: number };
  readonly pinLength: number;
  readonly collarScrew: number;
}

export const words = text.family.shared.parts;

/** What a part that is cut or printed has to know of the workshop. */
export interface Workshop {
  readonly making: Making;
}

/** Radius of plate corners, mm: none where they are sawn. */
export const cornerRadius = ({ making }: Workshop): number =>
  making.plates.process === 'saw-drill' ? 0 : 3;

export interface PlateSpec {
  readonly id: string;
  readonly name: string;
  readonly quantity?: number;
  readonly thickness: number;
  readonly outline: Loop;
  readonly holes: readonly Hole[];
  readonly engraving?: readonly (readonly Vec2[])[];
  readonly finish?: string;
  readonly notes?: readonly string[];
  readonly tight?: readonly string[];
}

/** What is made through packer and base at once: all holes that are drilled, the pins of a cut pair. */
export const together = ({ making, v }: Context): string[] => [
  ...(making.plates.process === 'saw-drill' ? [words.notes.transfer] : []),
  ...(v.guide === 'strips' ? [] : [words.notes.ream]),
];

/** A plate of the design's sheet: one profile, its holes in it. */
export const plate = ({ making }: Workshop, spec: PlateSpec): Result<PlatePart> => {
  const { name, density } = materialOf(making.plates.material);
  return cutPlate({
    ...spec,
    quantity: spec.quantity ?? 1,
    material: name,
    density,
    finish: spec.finish ?? words.finish.plate,
    process: making.plates.process,
  });
};

/** Name and density of the filament, and what its holes are printed larger by, mm. */
export const printed = ({ making }: Workshop): { name: string; density: number; play: number } => {
  const { name, density } = materialOf(making.prints.material);
  return { name, density, play: making.prints.play[making.prints.fit] };
};

/** Takes places from the plan to a plate whose front edge lies at `front`. */
export const from =
  (front: number) =>
  (places: readonly Vec2[]): Vec2[] =>
    places.map(([x, y]): Vec2 => [x, y - front]);
