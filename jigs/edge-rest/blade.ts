import {
  flatCut,
  hollowCut,
  shapeOf,
  wantedBevel,
  type Blade,
  type Cut,
  type Side,
  type SideCuts,
} from '../../src/family/index.ts';

/** A hollow along a blade: its axis from the edge towards the spine and out from the midplane, mm. */
export interface AlongEdge {
  readonly radius: number;
  readonly up: number;
  readonly out: number;
}

/** The flat bevel a side comes with: stated with its hollow, or a side that is not hollow. */
export const bevelOf = (blade: Blade, side: Side): number | undefined => {
  const bevel = blade.bevels[side];
  return bevel.kind === 'hollow' ? bevel.angle : wantedBevel(blade, side)?.angle;
};

/** Edge of a bevelled side from the midplane: shared when both are bevelled, else all of it. */
const edgeOf = (blade: Blade, side: Side): ((half: number) => number) => {
  const both = bevelOf(blade, 'left') !== undefined && bevelOf(blade, 'right') !== undefined;
  const { wanted, shareLeft } = blade.edge;
  const share = side === 'left' ? wanted * shareLeft : wanted * (1 - shareLeft);
  return (half) => (both ? share : wanted - half);
};

/** Whether a blade is to be ground alike on both sides. */
export const isEven = ({ bevels: { left, right }, edge }: Blade): boolean =>
  edge.shareLeft === 0.5 && JSON.stringify(left) === JSON.stringify(right);

/** The cuts of a blade that comes with its bevels ground, and with hollows where it has any. */
export const cutsOf = (
  blade: Blade,
  hollows: Readonly<Partial<Record<Side, readonly AlongEdge[]>>> = {},
): SideCuts => {
  const { thickness } = shapeOf(blade);
  const side = (of: Side): readonly Cut[] => {
    const angle = bevelOf(blade, of);
    const edge = edgeOf(blade, of);
    const flat =
      angle === undefined
        ? []
        : [flatCut((u) => ({ offset: edge(thickness.value(u) / 2), angle }))];
    const round = (hollows[of] ?? []).map(({ radius, up, out }) =>
      hollowCut(radius, ({ edge }) => ({ v: edge - up, w: out })),
    );
    return [...flat, ...round];
  };
  const left = side('left');
  // One and the same list is worked out once.
  const isOne = isEven(blade) && hollows.left === hollows.right;
  return { left, right: isOne ? left : side('right') };
};
