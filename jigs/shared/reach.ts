import {
  hull,
  interval,
  text,
  type Design,
  type Interval,
  type Limit,
  type Reach,
  type ReachBox,
} from '../../src/family/index.ts';

const words = text.family.shared.reach;

/** Travel that stays in hand at both ends, mm: the least reserve that a design may have. */
export const LEFT_TRAVEL = 0.5;

/** Sections of blades: every combination of the given ranges, mm and degrees. */
export interface SectionBox {
  /** From spine to edge. */
  readonly height: Interval;
  /** At the spine. */
  readonly thickness: Interval;
  /** Of the finished bevel, a side. */
  readonly angle: Interval;
}

/** Answers about boxes, each found once though every limit asks for it. */
export const byBox = <Box extends object, T>(make: (box: Box) => T): ((box: Box) => T) => {
  const made = new WeakMap<Box, { readonly value: T }>();
  return (box) => {
    const known = made.get(box) ?? { value: make(box) };
    made.set(box, known);
    return known.value;
  };
};

/** One belt on one side of the blades in question. */
interface Bevelled {
  /** Edge of the belt side from the midplane. */
  readonly edge: Interval;
  /** Height of the bevel along the midplane. */
  readonly bevel: Interval;
}

/** The edge a pass leaves on either side, whichever of a family's blades it is. */
export const edgeOf = ({ blades }: Design, { edge }: Design['sequence'][number]): Interval =>
  interval.times(
    interval.point(edge),
    hull(
      blades.flatMap(({ edge: { shareLeft } }) => [shareLeft, 1 - shareLeft]).map(interval.point),
    ),
  );

/** Spine radii of a family's blades. */
export const spineRadii = ({ blades }: Design): Interval =>
  hull(blades.map(({ spineRadius }) => interval.point(spineRadius)));

/** A bevel that lies on the blade: below the corner of its spine, and no wider than its half. */
export const bevelLimits = (
  design: Design,
  cases: (box: SectionBox) => readonly Bevelled[],
): Limit<SectionBox>[] => [
  {
    id: 'spine',
    label: words.spine,
    unit: 'mm',
    atLeast: 0,
    found: (box) =>
      interval.minus(
        interval.minus(box.height, spineRadii(design)),
        hull(cases(box).map(({ bevel }) => bevel)),
      ),
  },
  {
    id: 'bevel',
    label: words.bevel,
    unit: 'mm',
    atLeast: 0,
    found: (box) =>
      interval.minus(
        interval.over(box.thickness, interval.point(2)),
        hull(cases(box).map(({ edge }) => edge)),
      ),
  },
];

/** What a fixture for flat bevels can grind, by height, thickness and angle. */
export const sectionReach = (
  limits: readonly Limit<SectionBox>[],
  scope: string,
  heightStep = 5,
): Reach => {
  const sectionOf = byBox(({ across, up, run }: ReachBox): SectionBox => ({
    height: across,
    thickness: up,
    angle: run,
  }));
  return {
    axes: {
      across: { label: words.height, unit: 'mm', from: 10, to: 80, step: heightStep },
      up: { label: words.thickness, unit: 'mm', from: 1, to: 7, step: 0.5 },
      run: { label: words.angle, unit: 'deg', from: 0.5, to: 15, step: 0.1 },
    },
    limits: limits.map((limit) => ({ ...limit, found: (box) => limit.found(sectionOf(box)) })),
    scope,
  };
};
