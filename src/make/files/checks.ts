import type { CheckResult } from '../../check/result.ts';
import { plain } from '../../core/units.ts';
import type { PackageFile } from '../../export/index.ts';
import { text } from '../../text/index.ts';
import { csv } from './table.ts';

const number = (value: number | null | undefined): string =>
  typeof value === 'number' ? plain(value, 3) : '';

const poseText = ({ pose }: CheckResult): string =>
  pose === undefined
    ? ''
    : [pose.setting, pose.blade, pose.u === undefined ? undefined : `u ${plain(pose.u, 1)}`]
        .filter((part) => part !== undefined)
        .join(', ');

/** Every check with its numbers, its worst pose and what would mend it. */
export const checksFile = (checks: readonly CheckResult[]): PackageFile => ({
  path: 'checks.csv',
  kind: 'checks',
  bytes: csv([
    text.make.checkColumns,
    ...checks.map((check) => [
      check.label,
      check.passed ? text.make.yes : text.make.no,
      number(check.found),
      number(check.atLeast),
      number(check.atMost),
      check.unit,
      poseText(check),
      check.basis,
      check.passed ? '' : check.fix,
    ]),
  ]),
});
