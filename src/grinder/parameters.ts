import { number } from '../core/parameter.ts';
import { choiceParameter } from '../schema/field.ts';
import { text } from '../text/index.ts';

const words = text.grinder.parameters;

/** Every number and choice of a grinder, with unit, range and reason: the only place they stand. */
export const grinderParameters = {
  belt: {
    width: number(words.belt.width, 'mm', 10, 50, 150, 1),
    length: number(words.belt.length, 'mm', 300, 1830, 4000, 1),
    tracking: number(words.belt.tracking, 'mm', 0, 2, 6, 0.5),
    flutter: number(words.belt.flutter, 'mm', 0, 0.3, 3, 0.1),
    splice: number(words.belt.splice, 'mm', 0, 0.2, 1, 0.05),
    direction: choiceParameter(words.belt.direction, 'down'),
  },
  belts: {
    grit: number(words.belts.grit, 'count', 12, 60, 5000, 1),
    thickness: number(words.belts.thickness, 'mm', 0.1, 1, 8, 0.05),
  },
  backings: {
    kind: choiceParameter(words.backings.kind, 'none'),
    thickness: number(words.backings.thickness, 'mm', 0, 0, 50, 0.1),
    radius: number(words.backings.radius, 'mm', 60, 900, 5000, 1),
  },
  platen: {
    radius: number(words.platen.radius, 'mm', 60, 900, 5000, 1),
    width: number(words.platen.width, 'mm', 10, 50, 160, 1),
    bottom: number(words.platen.bottom, 'mm', -250, -40, 200, 1),
    top: number(words.platen.top, 'mm', 10, 160, 500, 1),
    edgeRadius: number(words.platen.edgeRadius, 'mm', 0, 3, 50, 0.5),
    liner: number(words.platen.liner, 'mm', 0, 0, 10, 0.1),
  },
  wheels: {
    role: choiceParameter(words.wheels.role, 'idler'),
    diameter: number(words.wheels.diameter, 'mm', 10, 75, 400, 1),
    width: number(words.wheels.width, 'mm', 10, 50, 160, 1),
    y: number(words.wheels.y, 'mm', -1500, -40, 500, 1),
    z: number(words.wheels.z, 'mm', -1000, 0, 1500, 1),
    surface: choiceParameter(words.wheels.surface, 'hard'),
  },
  rest: {
    width: number(words.rest.width, 'mm', 40, 150, 500, 1),
    depth: number(words.rest.depth, 'mm', 30, 120, 400, 1),
    thickness: number(words.rest.thickness, 'mm', 2, 8, 40, 0.5),
    gap: number(words.rest.gap, 'mm', 0.5, 3, 60, 0.5),
    slotAxis: choiceParameter(words.rest.axis, 'y'),
    slotAt: number(words.rest.slotAt, 'mm', -250, 0, 450, 0.5),
    slotFrom: number(words.rest.slotFrom, 'mm', -250, 20, 450, 0.5),
    slotTo: number(words.rest.slotTo, 'mm', -250, 100, 450, 0.5),
    slotWidth: number(words.rest.slotWidth, 'mm', 4.2, 6.6, 16, 0.1),
    holeX: number(words.rest.holeX, 'mm', -250, 0, 250, 0.5),
    holeY: number(words.rest.holeY, 'mm', 0, 40, 450, 0.5),
    thread: choiceParameter(words.rest.thread, 'M6'),
    holeDiameter: number(words.rest.holeDiameter, 'mm', 4.2, 6.6, 16, 0.1),
    travelY: number(words.rest.travelY, 'mm', 0, 0, 200, 1),
    travelZ: number(words.rest.travelZ, 'mm', 0, 0, 200, 1),
    armWidth: number(words.rest.armWidth, 'mm', 12, 38, 80, 0.5),
    armHeight: number(words.rest.armHeight, 'mm', 6, 38, 80, 0.5),
    armReach: number(words.rest.armReach, 'mm', 40, 150, 500, 1),
  },
  lean: number(words.lean, 'deg', -20, 0, 20, 0.1),
  keepOuts: {
    coordinate: number(words.keepOuts.coordinate, 'mm', -1500, 0, 1500, 1),
    goes: choiceParameter(words.keepOuts.goes, 'frame'),
  },
  drive: {
    shaftSpeed: number(words.drive.shaftSpeed, '1/min', 100, 2850, 12000, 10),
    pulleyDiameter: number(words.drive.pulleyDiameter, 'mm', 20, 100, 400, 1),
    beltRating: number(words.drive.beltRating, 'm/s', 5, 35, 80, 1),
    wheelRating: number(words.drive.wheelRating, 'm/s', 5, 40, 100, 1),
  },
} as const;
