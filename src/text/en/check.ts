import { assembly } from './check-assembly.ts';
import { rules } from './check-rules.ts';
import { said } from './ids.ts';
import { upper } from './upper.ts';

const mm = (value: number): string => value.toFixed(3);
/** Text of the geometric checks. */
export const check = {
  assembly,
  rules,
  distance: {
    meshEmpty: (name: string) => ({
      message: `${name}: its mesh has fewer than four triangles, so it bounds no solid and no clearance to it can be computed.`,
      fix: 'Give the part a closed solid.',
    }),
    meshOpen: (name: string) => ({
      message: `${name}: its mesh is not closed, so what lies inside it cannot be told and no clearance to it can be trusted.`,
      fix: 'Mend the part so that every edge of its mesh is shared by two triangles.',
    }),
    meshCorner: (name: string) => ({
      message: `${name}: a triangle of its mesh names a corner that does not exist.`,
      fix: 'Build the mesh again.',
    }),
    notFinite: (name: string) => ({
      message: `${name}: a coordinate of its shape is not a number, so no clearance to it can be computed.`,
      fix: 'Correct the dimension that the shape comes from.',
    }),
    noSize: (name: string) => ({
      message: `${name}: a dimension of its shape is not above 0 mm.`,
      fix: 'Give every dimension a size above 0 mm.',
    }),
    shapeEmpty: (name: string) => ({
      message: `${name}: its shape has no points.`,
      fix: 'Give the shape at least one point.',
    }),
    bodyEmpty: (name: string) => ({
      message: `${name}: there is no solid to check, so its clearance counts as failed.`,
      fix: 'Give the body at least one solid.',
    }),
    chordError: (name: string, value: number) => ({
      message: `${name}: its chord error is ${value} mm; it must be 0 mm or more.`,
      fix: 'State how far the true round surface may stand outside the facets.',
    }),
    notRigid: (at: string) => ({
      message: `${at}: a pose is not rigid (its axes are not unit length and square to each other, or not numbers).`,
      fix: 'Build the pose from two unit axes that are square to each other.',
    }),
    turnTooWide: (at: string, degrees: number, most: number) => ({
      message: `${at}: it turns by ${degrees.toFixed(1)} degrees in one movement; at most ${most} degrees say which way it turns.`,
      fix: 'Split the movement into smaller turns.',
    }),
    notBounded: (at: string) => ({
      message: `${at}: its rates of travel and turn are not bounded, so nothing can be said between two places.`,
      fix: 'State finite rates of 0 or more.',
    }),
    motionEmpty: (name: string) => ({
      message: `${name}: its motion has no places.`,
      fix: 'List the places it is checked at, or leave the motion out.',
    }),
    motionsDiffer: (a: string, b: string, countA: number, countB: number) => ({
      message: `${a} moves through ${countA} places and ${b} through ${countB}: they cannot be checked together.`,
      fix: 'List the same configurations for every moving body.',
    }),
    bothUnbounded: (a: string, b: string) => ({
      message: `${a} and ${b} are both unbounded, so their distance means nothing.`,
      fix: 'Leave the pair out, or bound one of them.',
    }),
    tooNear: (a: string, b: string, gap: number, required: number, where: string) => ({
      message: `Between ${said(a)} and ${said(b)} ${mm(Math.max(0, gap))} mm are left${where}; ${mm(required)} mm are required.`,
      fix: `Move ${said(a)} and ${said(b)} apart there by ${mm(required - gap)} mm.`,
    }),
    hits: (a: string, b: string, required: number, where: string) => ({
      message: `${upper(said(a))} and ${said(b)} run into each other${where}; ${mm(required)} mm of clearance are required.`,
      fix: `Move or cut back ${said(a)} or ${said(b)} where they meet.`,
    }),
    inside: (a: string, b: string, where: string) => ({
      message: `One of ${said(a)} and ${said(b)} lies wholly inside the other${where}.`,
      fix: `Correct the placement of ${said(a)} or ${said(b)}.`,
    }),
    notTouching: (a: string, b: string, gap: string, tolerance: number, where: string) => ({
      message: `${upper(said(a))} should touch ${said(b)}, but ${gap} are open${where}; at most ${mm(tolerance)} mm are allowed.`,
      fix: `Close the contact of ${said(a)} and ${said(b)}.`,
    }),
    touchesElsewhere: (a: string, b: string, where: string) => ({
      message: `${upper(said(a))} and ${said(b)} touch outside the place declared for the contact${where}.`,
      fix: 'Correct the placement, or the declared place of the contact.',
    }),
    tooDeep: (a: string, b: string, tolerance: number) => ({
      message: `It cannot be shown that ${said(a)} and ${said(b)} overlap by no more than ${mm(tolerance)} mm everywhere.`,
      fix: `Move ${said(a)} and ${said(b)} apart, or take material away where they meet.`,
    }),
    touchTooDeep: (a: string, b: string, tolerance: number, where: string) => ({
      message: `${upper(said(a))} and ${said(b)} should touch, but it cannot be shown that they overlap by no more than ${mm(tolerance)} mm${where}.`,
      fix: 'Take away the overlap, or state the direction in which the two come apart.',
    }),
    openAmount: (gap: number) => `${mm(gap)} mm`,
    openBeyond: (gap: number) => `more than ${mm(gap)} mm`,
    where: (label: string) => (label === '' ? '' : ` at ${label.replace(/(\w)-(?=\w)/g, '$1 ')}`),
  },
} as const;
