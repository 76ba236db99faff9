import { mendedBy, problem, type Issue } from '../core/issue.ts';
import { toHundredth } from '../core/units.ts';
import { distance2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { beltPath, faceDepth, leaned } from './belt-path.ts';
import { beltSpeed } from './belt-speed.ts';
import { restIssues } from './rest-rules.ts';
import type { Grinder } from './schema.ts';

const words = text.grinder.rules;
const labels = text.grinder.parameters;

/** Least flat between the rounded ends of a platen, mm. */
const LEAST_FLAT = 10;
/** How thick a platen is taken to be behind its face, mm; what is behind it is a keep-out. */
export const PLATEN_DEPTH = 8;
/** How far belt length and path may differ before it is worth a word, as a share. */
const LENGTH_SHARE = 0.03;

const doubles = (list: readonly { readonly id: string }[], label: string, at: string): Issue[] =>
  list.flatMap(({ id }, i) =>
    list.findIndex((other) => other.id === id) < i
      ? [problem('same-id', `${at}.${i}.id`, words.sameId(label, id))]
      : [],
  );

const platenIssues = ({ platen, wheels }: Grinder, at: string): Issue[] => {
  if (platen.kind === 'none') {
    const issues: Issue[] = [];
    if (wheels.length < 2)
      issues.push(problem('too-few-supports', `${at}.wheels`, words.supports(wheels.length)));
    if (!wheels.some((wheel) => wheel.role === 'contact'))
      issues.push(problem('no-contact', `${at}.wheels`, words.noContact()));
    return issues;
  }
  const least = 2 * platen.edgeRadius + LEAST_FLAT;
  return platen.top - platen.bottom < least
    ? [
        problem(
          'platen-ends',
          `${at}.platen.top`,
          words.platenEnds(platen.bottom, platen.top, least),
        ),
      ]
    : [];
};

/** Platen or contact wheel that a narrow belt leaves bare at its sides, wherever it tracks. */
const bareIssues = ({ platen, wheels, belt }: Grinder, at: string): Issue[] => {
  const most = belt.width + 2 * belt.tracking;
  const bare = (path: string, label: string, width: number): Issue[] =>
    width > most
      ? [problem('beside-belt', path, words.besideBelt(label, width, belt.width, most), 'warning')]
      : [];
  if (platen.kind !== 'none')
    return bare(`${at}.platen.width`, labels.platen.width.label, platen.width);
  return wheels.flatMap(({ role, width }, i) =>
    role === 'contact' ? bare(`${at}.wheels.${i}.width`, labels.wheels.width.label, width) : [],
  );
};

const backingIssues = ({ platen, backings }: Grinder, at: string): Issue[] =>
  backings.flatMap(({ kind, thickness }, i) => {
    const path = `${at}.backings.${i}`;
    if (kind === 'none')
      return thickness === 0
        ? []
        : [problem('bare-backing', `${path}.thickness`, words.bareBacking(thickness))];
    if (platen.kind === 'none')
      return [problem('backing-without-platen', path, words.backingWithoutPlaten())];
    return thickness > 0
      ? []
      : [problem('thin-backing', `${path}.thickness`, words.thinBacking(kind))];
  });

const wheelIssues = ({ wheels }: Grinder, at: string): Issue[] =>
  wheels.flatMap((wheel, i) =>
    wheels.slice(0, i).flatMap((other) => {
      const distance = distance2(wheel.centre, other.centre);
      const least = (wheel.diameter + other.diameter) / 2;
      return distance < least
        ? [
            problem(
              'wheels-overlap',
              `${at}.wheels.${i}.centre`,
              words.wheelsOverlap(other.id, wheel.id, toHundredth(distance), least),
            ),
          ]
        : [];
    }),
  );

const driveIssues = (grinder: Grinder, at: string): Issue[] => {
  const { drive, wheels } = grinder;
  const speed = beltSpeed(grinder);
  const tooFast = (['beltRating', 'wheelRating'] as const)
    .filter((key) => speed > drive[key])
    .map((key) =>
      problem(
        'too-fast',
        `${at}.drive.${key}`,
        words.tooFast(labels.drive[key].label, toHundredth(speed), drive[key]),
      ),
    );
  const wheel = wheels.find(({ role }) => role === 'drive');
  return wheel === undefined || wheel.diameter === drive.pulleyDiameter
    ? tooFast
    : [
        ...tooFast,
        problem(
          'drive-differs',
          `${at}.drive.pulleyDiameter`,
          words.driveDiffers(wheel.diameter, drive.pulleyDiameter),
          'warning',
        ),
      ];
};

const pathIssues = (grinder: Grinder, at: string): Issue[] =>
  grinder.backings.flatMap((backing, i) => {
    const path = beltPath(grinder, backing);
    if (!path.ok) return path.issues.map((issue) => ({ ...issue, path: `${at}.backings.${i}` }));
    const { length } = grinder.belt;
    return i === 0 && Math.abs(path.value.length - length) > LENGTH_SHARE * length
      ? [
          problem(
            'belt-length',
            `${at}.belt.length`,
            words.beltLength(toHundredth(path.value.length), length),
            'warning',
          ),
        ]
      : [];
  });

const keepOutIssues = ({ keepOuts }: Grinder, at: string): Issue[] =>
  keepOuts.flatMap(({ name, min, max }, i) =>
    min[0] < max[0] && min[1] < max[1] && min[2] < max[2]
      ? []
      : [problem('empty-box', `${at}.keepOuts.${i}`, words.box(name))],
  );

/**
 * A keep-out box that stays where it is and reaches half through the platen, leaned as that is: it
 * was measured at another lean, or leans as well. What is less may be the platen's own thickness, which no one states.
 */
const leanIssues = ({ keepOuts, platen, lean }: Grinder, at: string): Issue[] => {
  if (platen.kind === 'none' || lean === 0) return [];
  const ends = [platen.bottom, platen.top].map((z) => leaned([0, z], lean));
  return keepOuts.flatMap(({ name, min, max, goes }, i) => {
    if (goes === 'platen') return [];
    const holds = ends.some(
      ([y, z]) => y > min[1] && y < max[1] + PLATEN_DEPTH / 2 && z > min[2] && z < max[2],
    );
    if (!holds || min[0] >= platen.width / 2 || max[0] <= -platen.width / 2) return [];
    const path = `${at}.keepOuts.${i}.goes`;
    const issue = problem('platen-in-box', path, words.platenInBox(name, lean), 'warning');
    return [mendedBy(issue, 'platen')];
  });
};

/** Every distance from the bare platen face to the abrasive that belts and backings can give. */
const stacks = (grinder: Grinder): number[] =>
  grinder.backings.flatMap((backing) =>
    grinder.belts.map((belt) => faceDepth(grinder, belt, backing)),
  );

/** What holds the fields of a grinder together; `at` is its path in the document, or "". */
export const grinderIssues = (grinder: Grinder, at = ''): Issue[] => {
  const basic = [
    ...doubles(grinder.belts, labels.belts.label, `${at}.belts`),
    ...doubles(grinder.backings, labels.backings.label, `${at}.backings`),
    ...doubles(grinder.wheels, labels.wheels.label, `${at}.wheels`),
    ...platenIssues(grinder, at),
    ...bareIssues(grinder, at),
    ...backingIssues(grinder, at),
    ...wheelIssues(grinder, at),
    ...restIssues(grinder.rest, stacks(grinder), `${at}.rest`),
    ...driveIssues(grinder, at),
    ...keepOutIssues(grinder, at),
    ...leanIssues(grinder, at),
  ];
  const issues = basic.some((issue) => issue.severity === 'error')
    ? basic
    : [...basic, ...pathIssues(grinder, at)];
  const rooted = <T extends { readonly path: string }>(one: T): T => ({
    ...one,
    path: one.path.replace(/^\./, ''),
  });
  return issues.map(({ mend, ...issue }) => ({
    ...rooted(issue),
    ...(mend === undefined ? {} : { mend: rooted(mend) }),
  }));
};
