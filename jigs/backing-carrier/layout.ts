import {
  asin,
  clearanceHole,
  cos,
  degrees,
  type Design,
  fail,
  type Frame,
  type Grinder,
  hollowDepth,
  leastEdge,
  type Issue,
  loweredTo,
  mendedBy,
  ok,
  problem,
  radians,
  raisedTo,
  type Result,
  sin,
  text,
  type Vec2,
  washer,
} from '../../src/family/index.ts';
import { sheetIssues } from '../shared/rules.ts';
import { parameters, type Values } from './parameters.ts';
import { slotIssues, slotsOf, type Slots } from './slots.ts';

const words = text.family.backingCarrier;

export type Platen = Exclude<Grinder['platen'], { kind: 'none' }>;
type Backing = Grinder['backings'][number];

/** Proportions that no one sets, mm. */
export const SIZE = {
  /** How far the ears reach over the ends of the platen, and how thick they are. */
  earReach: 5,
  ear: 6,
  /** How far an ear reaches in front of the platen. */
  earFront: 4,
  /** Radius of the ribs' ends under a soft backing, whose own ends are rounded over them. */
  ribEnd: 8,
  /** Bolts from the ends of the platen; set screws from them. */
  boltEnd: 20,
  screwEnd: 45,
  /** How far cheeks stay behind the face and from the ends of the platen. */
  cheekBack: 1,
  cheekEnd: 8,
  /** Metal of a cheek behind its set screws, at least. */
  cheekWeb: 3,
} as const;

/** Metal beyond the least beside a hole, mm. */
const SPARE = 0.2;

/** Play between platen and cheeks that their set screws take up, mm, both sides together. */
const CHEEK_PLAY = 0.2;

/**
 * Every length of the carrier, mm, in the frame of the platen: y from its bare face to the maker,
 * z along it from the top of the rest, x along the stroke.
 */
export interface Layout {
  /** Face of the platen, liner counted; front of the ribs at its foremost; support of the belt. */
  readonly back: number;
  readonly front: number;
  readonly support: number;
  readonly bottom: number;
  readonly top: number;
  /** Convex face under the belt: radius, centre (y, z) and half angle, degrees. */
  readonly round:
    { readonly radius: number; readonly centre: Vec2; readonly half: number } | undefined;
  /** Ribs side by side, washers between them and each cheek. */
  readonly ribs: number;
  readonly width: number;
  readonly washers: number;
  /** Inner faces of the cheeks. */
  readonly cheekX: number;
  /** Cheeks and set screws (y, z) that grip the platen; none in its place. */
  readonly grip:
    { readonly back: number; readonly front: number; readonly screws: readonly Vec2[] } | undefined;
  /** Slots for the nuts of the platen's bolts, in its place. */
  readonly slots: Slots | undefined;
  /** Rods through the ribs, (y, z). */
  readonly bolts: readonly Vec2[];
  /** The backing as the grinder file has to state it. */
  readonly backing: Backing;
}

/** The back of the ribs, on the platen or on what carried it, mm from the platen's bare metal. */
const backOf = (v: Values, { liner }: Platen): number =>
  v.place === 'instead' ? -v.platenThickness : liner;

const rodsAt = ({ bottom, top }: Platen): number[] => [
  bottom + SIZE.boltEnd,
  (bottom + top) / 2,
  top - SIZE.boltEnd,
];

const roundOf = (v: Values, front: number, { bottom, top }: Platen): Layout['round'] => {
  if (v.face !== 'radius') return undefined;
  const { radius, endRadius: r } = v;
  return {
    radius,
    centre: [front - radius, (bottom + top) / 2],
    half: degrees(asin(((top - bottom) / 2 - r) / (radius - r))),
  };
};

/** What the design cannot be, before anything is laid out. */
export const layoutIssues = (design: Design, v: Values): Issue[] => {
  const { platen, backings } = design.grinder;
  const { process } = design.making.plates;
  if (platen.kind !== 'flat')
    return [problem('platen-not-flat', 'grinder.platen', words.issues.notFlat(platen.kind))];
  const issues = sheetIssues(design, [
    { key: 'plate', of: parameters.plate, thickness: v.plate },
    ...(v.place === 'instead' ? [] : [{ key: 'cheek', of: parameters.cheek, thickness: v.cheek }]),
  ]);
  const path = 'fixture.parameters.';
  if (backings.some(({ id }) => id === CARRIER))
    issues.push(problem('backing-named', 'grinder.backings', words.issues.named(CARRIER)));
  if (v.face === 'soft' && v.endRadius > v.softThickness)
    issues.push(
      loweredTo(
        problem(
          'end-in-rib',
          `${path}endRadius`,
          words.issues.endRadius(v.endRadius, v.softThickness),
        ),
        v.softThickness,
      ),
    );
  issues.push(...slotIssues(v, platen, rodsAt(platen)));
  const { least, drop } = leastDepth(v, platen, process);
  if (v.depth < least)
    issues.push(
      raisedTo(
        problem('too-shallow', `${path}depth`, words.issues.shallow(v.depth, least, drop)),
        least,
      ),
    );
  const inside = v.contact > platen.bottom && v.contact < platen.top;
  if (!inside)
    issues.push(
      mendedBy(
        problem(
          'contact-off-platen',
          `${path}contact`,
          words.issues.contact(v.contact, platen.bottom, platen.top),
        ),
        Math.round((platen.bottom + platen.top) / 2),
      ),
    );
  return issues;
};

type Process = Design['making']['plates']['process'];

/** Metal between a hole and the outline: half the thickness, or what the process asks for, mm. */
const webOf = (process: Process, thickness: number): number =>
  Math.max(thickness / 2, leastEdge(process, thickness));

/** Bolts in front of the platen, with metal between them and the back of the ribs, mm. */
const boltDepth = ({ plate }: Values, process: Process): number =>
  clearanceHole('M6', 'normal').diameter / 2 + webOf(process, plate) + SPARE;

/** Least depth with metal round the bolts, and what the convex face falls back at the cheeks, mm. */
const leastDepth = (
  v: Values,
  { bottom, top, liner }: Platen,
  process: Process,
): { least: number; drop: number } => {
  const reach = (top - bottom) / 2 - SIZE.cheekEnd;
  const drop = v.face === 'radius' && v.radius > reach ? hollowDepth(v.radius, 2 * reach) : 0;
  const metal = Math.max(webOf(process, v.plate), webOf(process, v.cheek) + SIZE.cheekBack) + SPARE;
  const hole = clearanceHole('M6', 'normal').diameter / 2;
  const rods = drop + boltDepth(v, process) + hole + metal;
  if (v.place !== 'instead') return { least: rods, drop };
  // Ribs as deep as the platen with its liner was thick, so that no setting comes nearer.
  const soft = v.face === 'soft' ? v.softThickness : 0;
  const as = v.platenThickness + liner - soft;
  return { least: Math.max(rods, drop + slotsOf(v, 0, 1).end + v.plate + SPARE, as), drop };
};

/** Name of the backing that the carrier makes. */
export const CARRIER = 'carrier';

export const layoutOf = (v: Values, platen: Platen, process: Process): Result<Layout> => {
  const { bottom, top, liner, width: across } = platen;
  const back = backOf(v, platen);
  const over = v.place !== 'instead';
  const front = back + v.depth;
  const soft = v.face === 'soft';
  const round = roundOf(v, front, platen);
  if (round && !Number.isFinite(round.half))
    return fail(
      problem(
        'radius-small',
        'fixture.parameters.radius',
        words.issues.radius(v.radius, top - bottom),
      ),
    );
  const thick = washer('M6', 'plain').thickness;
  const ribs = Math.floor(across / v.plate + 1e-9);
  const width = ribs * v.plate;
  const washers = over
    ? Math.max(0, Math.ceil((across + CHEEK_PLAY - width) / (2 * thick) - 1e-9))
    : 0;
  const { drop } = leastDepth(v, platen, process);
  const y = back + boltDepth(v, process);
  const screwY = -v.platenThickness / 2;
  const support = front + (soft ? v.softThickness : 0);
  // A backing lies on the liner, in the grinder file too.
  const thickness = support - liner;
  const id = CARRIER;
  return ok({
    back,
    front,
    support,
    bottom,
    top,
    round,
    ribs,
    width,
    washers,
    cheekX: width / 2 + washers * thick,
    grip: over
      ? {
          back: screwY - 2.5 - Math.max(SIZE.cheekWeb, webOf(process, v.cheek)),
          front: front - drop - SIZE.cheekBack,
          screws: [bottom + SIZE.screwEnd, top - SIZE.screwEnd].map((z): Vec2 => [screwY, z]),
        }
      : undefined,
    slots: over ? undefined : slotsOf(v, back, ribs),
    bolts: rodsAt(platen).map((z): Vec2 => [y, z]),
    backing: soft
      ? { kind: 'leather', id, thickness }
      : { kind: 'radius', id, thickness, radius: v.radius },
  });
};

/** The grinder with the carrier's backing and ends. */
export const carried = (grinder: Grinder, v: Values, l: Layout): Grinder => ({
  ...grinder,
  backings: [...grinder.backings, l.backing],
  platen:
    grinder.platen.kind === 'none'
      ? grinder.platen
      : { ...grinder.platen, edgeRadius: v.endRadius },
});

/** The platen's own frame in the frame of the grinder: it leans about the top of the rest. */
export const platenFrame = ({ lean }: Grinder): Frame => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  return { origin: [0, 0, 0], x: [1, 0, 0], y: [0, c, s], z: [0, -s, c] };
};

/** Slope of the face at a height, degrees, top away from the maker positive: asin(h / R). */
export const slopeAt = ({ round }: Layout, z: number): number =>
  round ? degrees(asin((z - round.centre[1]) / round.radius)) : 0;
