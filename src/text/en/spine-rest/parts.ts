import { mm } from '../rounded.ts';

/** Names, notes and purposes of the parts that the spine-referenced rest does not share. */
export const parts = {
  names: {
    slide: 'Step plate',
    gauge: 'Setting gauge',
  },
  finish: {
    slide: 'Front face flat and square; its lower edge broken 0.1 mm at most',
  },
  notes: {
    stepFace: (contact: number) =>
      `The front face is the step. The spine touches it only ${mm(contact)} above the seat: deburr the lower edge, do not chamfer it.`,
    gauge: (width: number) =>
      `Between belt and step at the last setting: ${mm(width)} wide. Measure it with calipers: what they show is the setting that it tells.`,
    stick: 'stands on the step, nose behind the blade and below its edge',
  },
  tight: {
    front: 'front face straight',
    square: 'front face square to the guide over its length',
    gauge: 'faces towards belt and step straight and parallel',
  },
} as const;
