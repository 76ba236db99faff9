import type { Loop, Profile } from '../geometry/loop.ts';
import type { Frame } from '../geometry/frame.ts';
import type { Vec2 } from '../geometry/vector.ts';

/**
 * Every part is a stack of flat profiles: a plate has one layer, a print or a turned piece
 * several. Outlines of neighbouring layers are equal or do not touch, so the stack meshes
 * watertight with one triangulation per level and no 3D boolean.
 */
export interface Layer {
  readonly profile: Profile;
  /** Lower and upper level, mm, `from` < `to`. */
  readonly from: number;
  readonly to: number;
}

/** How a hole is made and why it is there: a row of the hole table. */
export interface Hole {
  readonly id: string;
  readonly loop: Loop;
  /** Centre of a round hole or of a slot, part coordinates. */
  readonly at: Vec2;
  /** Diameter of a round hole as made, width of a slot. */
  readonly size: number;
  /** Overall length of a slot, absent for a round hole. */
  readonly slotLength?: number;
  /** Thread designation when tapped ("M6"); `size` is then the tap drill. */
  readonly thread?: string;
  /** What it is for, with the standard its size comes from. */
  readonly purpose: string;
}

/** A hole drilled along the layers of a stock part (square to the stack's z), for the drawing. */
export interface CrossHole {
  readonly id: string;
  /** Which face it enters, seen along that axis. */
  readonly face: 'x' | 'y';
  /** Position on that face: along the other horizontal axis, and z. */
  readonly at: Vec2;
  readonly size: number;
  readonly thread?: string;
  readonly depth: 'through' | number;
  readonly purpose: string;
}

interface PartBase {
  /** Unique and file-name safe: lower-case letters, digits and hyphens. */
  readonly id: string;
  readonly name: string;
  readonly quantity: number;
  readonly material: string;
  readonly finish: string;
  /** Grams a cubic centimetre. */
  readonly density: number;
  readonly layers: readonly Layer[];
  readonly notes: readonly string[];
  /** Features that the tolerance budget wants closer than the general class. */
  readonly tight: readonly string[];
}

/** Cut from sheet or sawn and drilled: one layer, z from 0 to the thickness. */
export interface PlatePart extends PartBase {
  readonly kind: 'plate';
  readonly process: 'laser' | 'waterjet' | 'plasma' | 'saw-drill';
  readonly holes: readonly Hole[];
  /** Single-stroke engraving, open polylines in part coordinates. */
  readonly engraving: readonly (readonly Vec2[])[];
}

/** Printed, as it lies on the bed: z up from 0. */
export interface PrintPart extends PartBase {
  readonly kind: 'print';
  readonly holes: readonly Hole[];
}

/** Cut to length from bar or angle, drilled to the drawing. */
export interface StockPart extends PartBase {
  readonly kind: 'stock';
  /** Standard designation of the stock: "square bar 20 x 20". */
  readonly section: string;
  readonly holes: readonly Hole[];
  readonly crossHoles: readonly CrossHole[];
}

/** Bought by its standard designation; the layers show its outer shape. */
export interface HardwarePart extends PartBase {
  readonly kind: 'hardware';
  /** "ISO 4762 - M6 x 20 - 8.8". */
  readonly designation: string;
}

export type Part = PlatePart | PrintPart | StockPart | HardwarePart;

/** What carries a placed part along. */
export type Carrier = 'ground' | 'nose' | 'step' | 'blade' | 'hand' | 'carriage';

/** A part in the assembly. */
export interface Placement {
  readonly part: string;
  /** Unique among placements: "base", "nose-bolt-left". */
  readonly name: string;
  readonly frame: Frame;
  readonly carrier: Carrier;
  /** Other placements it is meant to touch (bolted, screwed, sliding). */
  readonly touches: readonly string[];
}
