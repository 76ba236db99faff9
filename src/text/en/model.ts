import { hardware, materials } from './hardware.ts';
import { mm } from './lengths.ts';
import { rules } from './model-rules.ts';
import { plain } from '../../core/units.ts';

export const model = {
  filletTooLarge: (corner: number, radius: number, needed: number, edge: number) => ({
    message: `The radius ${mm(radius)} at corner ${String(corner + 1)} does not fit: its edge is ${mm(edge)} long and the roundings at its ends need ${mm(needed)}.`,
    fix: 'Make the radius smaller or the edge longer.',
  }),
  layerWithoutHeight: (from: number | undefined, to: number | undefined) => ({
    message:
      from === undefined || to === undefined
        ? 'The part has no layer, so it has no volume.'
        : `A layer from ${mm(from)} to ${mm(to)} has no height; its upper level must lie above its lower one.`,
    fix: 'Give the part at least one layer with a height above 0 mm.',
  }),
  layerWithoutFace: (from: number, to: number) => ({
    message: `The contours of the layer from ${mm(from)} to ${mm(to)} cross themselves or each other, so they enclose no face.`,
    fix: 'Change the sizes that shape these contours.',
  }),
  layersTouch: (z: number, one: string, other: string) => ({
    message: `At z = ${mm(z)} ${one} and ${other} touch or cross. Contours that meet at a level must be equal in both layers or stay clear of each other.`,
    fix: 'Move one of them clear, or use the same contour in both layers.',
  }),
  layersOverlap: (z: number, one: string, other: string) => ({
    message: `Above z = ${mm(z)} two layers fill the same space: ${one} and ${other}.`,
    fix: 'Join them into one contour, or move them apart.',
  }),
  circleNamed: (diameter: number, x: number, y: number, isHole: boolean) =>
    `the ${isHole ? 'hole' : 'round contour'} of diameter ${mm(diameter)} at (${plain(x, 3)}, ${plain(y, 3)})`,
  contourNamed: (x: number, y: number, isHole: boolean) =>
    `the ${isHole ? 'opening' : 'outline'} starting at (${plain(x, 3)}, ${plain(y, 3)})`,
  offsetVanishes: (by: number) => ({
    message: `Moving the contour by ${mm(by)} makes an edge vanish or the contour cross itself: a feature is too small for that.`,
    fix: 'Use a smaller kerf, or make narrow slots, holes and inner radii larger than the kerf.',
  }),
  plateThickness: (part: string, thickness: number) => ({
    message: `The thickness of ${part} is ${mm(thickness)}; it must be above 0 mm.`,
    fix: 'Enter the thickness of the sheet.',
  }),
  contourFault: (part: string, feature: string, reason: string) => ({
    message: `The contour "${feature}" of ${part} cannot be cut: ${reason}.`,
    fix: 'Change the sizes that shape this contour.',
  }),
  faultNotFinite: 'one of its coordinates is not a number',
  faultNoArea: 'it encloses no area',
  faultShortEdge: (limit: number) => `it has an edge shorter than ${mm(limit)}`,
  faultCrossesItself: 'it crosses or touches itself',
  holeRepeated: (part: string, hole: string) => ({
    message: `Two holes of ${part} are called "${hole}"; every hole needs its own name.`,
    fix: 'Rename one of the holes.',
  }),
  holeOutside: (part: string, hole: string) => ({
    message: `The hole "${hole}" of ${part} does not lie wholly inside the outline.`,
    fix: 'Move the hole inward, make it smaller or make the plate larger.',
  }),
  holesOverlap: (part: string, one: string, other: string) => ({
    message: `The holes "${one}" and "${other}" of ${part} overlap or touch.`,
    fix: 'Move them apart or make them smaller.',
  }),
  materials,
  hardware,
  rules,
} as const;
