import { number } from '../core/parameter.ts';
import { choiceParameter } from '../schema/field.ts';
import { text } from '../text/index.ts';

const words = text.blade.parameters;

/** Every number and choice of a blade, with unit, range and reason: the only place they stand. */
export const bladeParameters = {
  quantity: number(words.quantity, 'count', 1, 1, 1000),
  outline: {
    length: number(words.outline.length, 'mm', 30, 210, 500, 1),
    heelHeight: number(words.outline.heelHeight, 'mm', 8, 50, 120, 0.5),
    bellyStart: number(words.outline.bellyStart, 'mm', 0, 90, 500, 1),
    bellyHeight: number(words.outline.bellyHeight, 'mm', 5, 49, 120, 0.5),
    spineDropStart: number(words.outline.spineDropStart, 'mm', 0, 110, 500, 1),
    tipDrop: number(words.outline.tipDrop, 'mm', 0, 10, 120, 0.5),
    spineSagitta: number(words.outline.spineSagitta, 'mm', -20, 0, 20, 0.1),
    pointU: number(words.outline.pointU, 'mm', 0, 0, 500, 0.5),
    pointV: number(words.outline.pointV, 'mm', -30, 0, 120, 0.5),
  },
  ricasso: number(words.ricasso, 'mm', 0, 0, 80, 0.5),
  tang: {
    kind: choiceParameter(words.tang.kind, 'tang'),
    length: number(words.tang.length, 'mm', 20, 110, 250, 1),
    height: number(words.tang.height, 'mm', 4, 20, 60, 0.5),
    thickness: number(words.tang.thickness, 'mm', 0.8, 3, 45, 0.1),
    drop: number(words.tang.drop, 'mm', -25, 4, 100, 0.5),
  },
  thickness: {
    u: number(words.thickness.u, 'mm', -80, 0, 500, 1),
    t: number(words.thickness.t, 'mm', 0.8, 3, 10, 0.05),
  },
  spineRadius: number(words.spineRadius, 'mm', 0, 0.3, 3, 0.05),
  edge: {
    asHeatTreated: number(words.edge.asHeatTreated, 'mm', 0.2, 0.7, 10, 0.05),
    wanted: number(words.edge.wanted, 'mm', 0.1, 0.2, 2, 0.05),
    shareLeft: number(words.edge.shareLeft, 'ratio', 0, 0.5, 1, 0.05),
  },
  bevels: {
    height: number(words.bevels.height, 'mm', 2, 22, 120, 0.1),
    angle: number(words.bevels.angle, 'deg', 0.3, 3.5, 20, 0.05),
    depth: number(words.bevels.depth, 'mm', 0.05, 0.3, 3, 0.01),
    centre: number(words.bevels.centre, 'mm', 2, 20, 110, 0.1),
  },
  line: {
    follow: choiceParameter(words.line.follow, 'share'),
    allowed: number(words.line.allowed, 'mm', 0.1, 1, 15, 0.1),
  },
} as const;
