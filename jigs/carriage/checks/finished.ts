import {
  nut,
  rangeCheck,
  type CheckResult,
  type NutKind,
  type Part,
} from '../../../src/family/index.ts';
import { HEEL } from '../layout/sizes.ts';
import { settleParts } from '../settle.ts';
import { parameterPath, words, type Question } from './question.ts';

const { labels, basis, fix } = words;

/** How truly the finished carriage must tip, degrees. */
const CLOSE = 0.01;
/** Travel that must be left beyond the outermost setting, mm. */
const LEAST_RESERVE = 0.25;
/** Foot that must stay on the base at the ends of the stroke, beyond its own end, mm. */
const LEAST_SUPPORT = 2;
/** Thread that the heel screw keeps below the lock nut, mm. */
const LEAST_THREAD = 0.5;

const nutHeight = (kind: NutKind): number => nut('M6', kind).height;

const sizeOf = (part: Part | undefined, axis: 'x' | 'y'): number | null => {
  const outer = part?.layers[0]?.profile.outer;
  if (outer?.kind !== 'path') return null;
  const values = outer.vertices.map((p) => p[axis]);
  return Math.max(...values) - Math.min(...values);
};

const lengthOf = (part: Part | undefined): number | null =>
  part ? Math.max(...part.layers.map(({ to }) => to)) : null;

/** The tilt of the finished carriage, settled at every setting, against what was asked for. */
const angleChecks = ({ c, parts, items }: Question): CheckResult[] => {
  const off = c.plan.settings.map((setting) => {
    const settled = settleParts(c, parts, items, setting, setting.fence);
    return {
      setting: setting.id,
      tilt: settled ? Math.abs(settled.upright - setting.tilt) : null,
      square: settled ? Math.abs(settled.upright - settled.tilt) : null,
    };
  });
  const most = (key: 'tilt' | 'square') => {
    const values = off.map((one) => one[key]);
    const found = values.some((value) => value === null)
      ? null
      : Math.max(...values.map((value) => value ?? Infinity));
    const at = off.find((one) => one[key] === found);
    return { found, ...(at ? { pose: { setting: at.setting } } : {}) };
  };
  const terms = { unit: 'deg', atMost: CLOSE, basis: basis.finished, fix: fix.angle } as const;
  return [
    rangeCheck({ ...terms, id: 'finished/angle', label: labels.angle, ...most('tilt') }),
    rangeCheck({ ...terms, id: 'finished/square', label: labels.squareness, ...most('square') }),
  ];
};

/** Checks that measure the finished parts: angle, slots, screw and support. */
export const partChecks = (q: Question): CheckResult[] => {
  const { c, parts } = q;
  const { plan, l } = c;
  const part = (id: string) => parts.find((one) => one.id === id);
  const fence = part('fence');
  const slots = fence?.kind === 'plate' ? fence.holes : [];
  const travels = slots.map(({ slotLength = 0, size }) => slotLength - size);
  /** How far the fence goes from where its screws stand in the middle of its slots. */
  const needed = Math.max(...plan.settings.map((s) => Math.abs(s.fence - l.fence.rear)));
  const most = Math.max(...plan.settings.map(({ heel }) => heel.extension));
  const rod = lengthOf(part('heel-screw'));
  const base = sizeOf(part('base'), 'x');
  const foot = lengthOf(part('foot-bar'));
  return [
    ...angleChecks(q),
    rangeCheck({
      id: 'finished/fence-travel',
      label: labels.fenceTravel,
      found: travels.length > 0 ? Math.min(...travels) / 2 - needed : null,
      atLeast: LEAST_RESERVE,
      basis: basis.geometry,
      fix: fix.travel,
      parameter: parameterPath('travelReserve'),
    }),
    rangeCheck({
      id: 'finished/heel-thread',
      label: labels.heelThread,
      // What stands over the lock nut at the farthest setting, less knob and nuts.
      found:
        rod === null
          ? null
          : rod - most - l.soleTop - 2 * nutHeight('thin') - HEEL.knobWeb - nutHeight('full'),
      atLeast: LEAST_THREAD,
      basis: basis.geometry,
      fix: fix.heelThread,
    }),
    rangeCheck({
      id: 'finished/support',
      label: labels.support,
      found: base === null || foot === null ? null : base / 2 - foot / 2 - l.stroke,
      atLeast: LEAST_SUPPORT,
      basis: basis.geometry,
      fix: fix.support,
    }),
  ];
};
