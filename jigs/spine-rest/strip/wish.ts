import type { Design, SpineRestBody, StripWish } from '../../../src/family/index.ts';
import { printed } from '../../shared/parts/context.ts';
import type { Values } from '../parameters.ts';

/** Strip for a wandering line, mm: common practice, no source. The step for it is rounded. */
const STRIP = { height: 6, stepRadius: 8, tape: 0.2 } as const;
/** Lines of the nozzle in a printed wall, and what is kept beyond them, mm: as prints are checked. */
const WALL = { lines: 3, spare: 0.1 } as const;

/** What is asked of a strip: the blade's own wish for its line, the rest's own bearing. */
export const stripWish = (
  { making }: Design,
  v: Values,
  { line }: Design['blades'][number],
): StripWish => {
  const { name, density } = printed({ making });
  return {
    ...STRIP,
    least: WALL.lines * making.prints.nozzle + WALL.spare,
    allowed: line.allowed,
    centred: true,
    bearing: v.leastBearing,
    make: { kind: 'print', material: name, density },
  };
};

/** Nose and straight step as a blade meets them. */
export const straightBody = ({ grinder }: Design, v: Values): SpineRestBody => {
  const half = grinder.belt.width / 2;
  return {
    noseHalf: half + v.wing,
    noseFront: v.noseGap,
    step: { kind: 'wide', half: half + v.stepWing, yaw: 0 },
    stepTop: v.plate,
  };
};
