import type { Blade } from '../../src/blade/schema.ts';
import type { SpineRestPass } from '../../src/virtual/types.ts';
import type { SpineRestBody } from '../../src/virtual/hold/spine-settle.ts';
import { flatSurface } from '../../src/virtual/surface.ts';

/** Measures of a test blade with a straight edge, mm; left out: 3 thick, 50 high, 150 long. */
export interface Measures {
  readonly length?: number;
  readonly height?: number;
  readonly thickness?: readonly { readonly u: number; readonly t: number }[];
  readonly radius?: number;
  readonly edge?: number;
  readonly shareLeft?: number;
  readonly ricasso?: number;
  /** The outline by points in place of a rectangle. */
  readonly outline?: Blade['outline'];
}

export const bladeOf = (m: Measures = {}): Blade => {
  const { length = 150, height = 50, edge = 0.2 } = m;
  return {
    name: 'Test',
    quantity: 1,
    outline: m.outline ?? {
      kind: 'curves',
      spine: [
        [0, 0],
        [length, 0],
      ],
      edge: [
        [0, height],
        [length, height],
      ],
    },
    ricasso: m.ricasso ?? 10,
    tang: { kind: 'tang', length: 100, height: 15, thickness: 3, drop: 5 },
    thickness: [...(m.thickness ?? [{ u: 0, t: 3 }])],
    spineRadius: m.radius ?? 0,
    edge: { asHeatTreated: 1, wanted: edge, shareLeft: m.shareLeft ?? 0.5 },
    bevels: { left: { kind: 'angle', angle: 3.5 }, right: { kind: 'angle', angle: 3.5 } },
    line: { follow: 'share', allowed: 1 },
  };
};

export const BODY: SpineRestBody = {
  noseHalf: 57,
  noseFront: 0.5,
  step: { kind: 'wide', half: 35, yaw: 0 },
  stepTop: 6,
};

/** One belt, 50 wide unless told, on one side; the tip stroked off to `overlap` mm of blade. */
export const passOf = (
  side: 'left' | 'right',
  setoff: number,
  length: number,
  more: {
    readonly edge?: number;
    readonly lean?: number;
    readonly overlap?: number;
    readonly plungeStop?: number;
    readonly width?: number;
    readonly body?: SpineRestBody;
  } = {},
): SpineRestPass => {
  const { edge = 0.2, lean = 0, overlap = 3, plungeStop = 0, width = 50 } = more;
  return {
    id: side,
    side,
    holding: { kind: 'spine-rest', body: more.body ?? BODY, setoff },
    surface: flatSurface(lean),
    edge,
    stroke: { width, from: plungeStop + width / 2, to: length - overlap + width / 2 },
  };
};
