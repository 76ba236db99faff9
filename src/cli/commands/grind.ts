import { SIDES } from '../../blade/schema.ts';
import { registry } from '../../../jigs/registry.ts';
import { number } from '../../core/parameter.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import type { Design } from '../../document/schema.ts';
import { solveDesign } from '../../make/engine.ts';
import { groundFolder } from '../../make/ground/files.ts';
import { CHECKS_FAILED } from '../../make/package.ts';
import { yawSentence } from '../../make/ground/work.ts';
import { groundBlades, groundPlaces, type Ground } from '../../make/ground/ground.ts';
import { cureSettings, grindReport } from '../../make/ground/report.ts';
import type { Cure } from '../../virtual/index.ts';
import { text } from '../../text/index.ts';
import { issueOf, printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { refusal, writePackage } from '../package-folder.ts';
import { columns, printChecks } from '../print.ts';

const words = text.virtual.command;

export interface GrindOptions {
  readonly blade?: string;
  readonly grid?: string;
  readonly advice?: boolean;
  readonly cure?: boolean;
  readonly out?: string;
  readonly acceptFailing?: boolean;
  readonly json?: boolean;
}

const GRID = number(words.grid, 'mm', 0.5, 1, 10, 0.5);
/** Spacing of the printed places, mm. */
const SPACING = 20;

const gridOf = (given: string | undefined): Result<number> => {
  if (given === undefined) return ok(GRID.initial);
  const value = given.trim() === '' ? NaN : Number(given);
  if (!Number.isFinite(value))
    return fail(issueOf('not-a-number', text.document.field.notNumber(GRID, given), '--grid'));
  return value >= GRID.min && value <= GRID.max
    ? ok(value)
    : fail(issueOf('out-of-range', text.document.field.range(GRID, value), '--grid'));
};

const show = (value: number): string => plain(value, 2);

/** What the feed's dial shows at a setting with the strip. */
const dialOf = (kit: Ground['kit'], setting: string): string => {
  const at = kit?.ok ? kit.value.settings.find((one) => one.setting === setting) : undefined;
  return at ? words.cureDial(at.turnsFromZero, at.division) : '';
};

const printCure = (cure: Result<Cure>, kit: Ground['kit']): void => {
  printIssues(cure.issues, false);
  if (!cure.ok) return;
  const { oneForBoth, facts } = cure.value;
  printLine(`  ${words.cureTitle(oneForBoth)}`);
  const unit = (of: string): string => (of === 'count' ? '' : of);
  columns([
    ...facts.map((fact) => [`    ${fact.label}`, show(fact.value), unit(fact.unit)]),
    ...cureSettings(cure.value).map(({ setting, setoff }) => [
      `    ${words.cureSetting}, ${setting}`,
      show(setoff),
      'mm',
      dialOf(kit, setting),
    ]),
  ]).forEach(printLine);
  if (kit?.ok) printChecks(kit.value.checks, false);
  else if (kit) printIssues(kit.issues, false);
};

/** What a turned step would do, or why there is none. */
const printYaw = (yaw: NonNullable<Ground['yaw']>, report: Ground['report']): void => {
  if (!yaw.ok) {
    yaw.issues.forEach(({ message, fix }) => printLine(`  ${message} ${fix}`));
    return;
  }
  printLine(`  ${yawSentence(yaw.value, report)}`);
};

const printGround = (ground: Ground): void => {
  const { blade, report, work, advice, yaw, cure, kit } = ground;
  const { standing, uneven, lines, model, grind, assumptions } = report;
  printLine(words.title(blade.name));
  printLine(`  ${words.edge(standing.value, standing.u, uneven)}`);
  for (const { side, worst } of lines)
    printLine(`  ${words.line(side, Math.abs(worst.value), worst.u)}`);
  for (const { side, worst } of model)
    if (worst) printLine(`  ${words.model(side, Math.abs(worst.off), worst.u)}`);
  const rows = groundPlaces(ground, SPACING).map(({ u, thickness, standing: over, ...place }) => [
    `    ${plain(u, 0)}`,
    show(thickness),
    show(over),
    ...SIDES.flatMap((side) => {
      const line = place.lines[side];
      return line ? [show(line.height), show(line.height - line.wanted)] : ['', ''];
    }),
    place.steers ? '' : words.notJudged,
  ]);
  columns([[`    ${words.places[0]}`, ...words.places.slice(1), ''], ...rows]).forEach(printLine);
  printLine(`  ${words.volume}`);
  columns(
    grind.passes.map(({ pass: { id }, volume, missed }) => [
      `    ${id}`,
      words.cubic(volume),
      missed.length > 0 ? words.missed(missed.length) : '',
    ]),
  ).forEach(printLine);
  if (advice) printLine(`  ${advice.sentence}`);
  else if (work.advice === undefined) printLine(`  ${words.noAdvice}`);
  if (yaw) printYaw(yaw, report);
  if (cure) printCure(cure, kit);
  assumptions.forEach((line) => printLine(`  ${line}`));
};

const grind = (
  file: string,
  { blade, grid, advice, cure }: GrindOptions,
): Result<{ readonly design: Design; readonly ground: Ground[] }> =>
  chain(gridOf(grid), (step) =>
    chain(loadDesign(file), (design) =>
      chain(solveDesign(design, registry), (fixture) =>
        chain(
          groundBlades(design, fixture, {
            blade,
            step,
            advice: advice === true,
            cure: cure === true,
            kit: cure === true,
          }),
          (ground) => ok({ design, ground }),
        ),
      ),
    ),
  );

/** How many checks of strips and their steps failed; one that could not be built counts as one. */
const failedOf = (ground: readonly Ground[]): number =>
  ground.reduce((sum, { kit }) => {
    if (kit === undefined) return sum;
    return sum + (kit.ok ? kit.value.checks.filter(({ passed }) => !passed).length : 1);
  }, 0);

/**
 * `grind FILE`: what the belt leaves of the blades. Ends with 0, with 1 where a check of a strip
 * failed (and then writes nothing unless that is accepted), or with 2.
 */
export const grindFile = async (file: string, options: GrindOptions): Promise<ExitCode> => {
  const { out, json = false, acceptFailing = false } = options;
  const refused = out === undefined ? undefined : refusal(out);
  if (refused) {
    printIssues([refused], json);
    return 2;
  }
  const done = grind(file, options);
  if (!done.ok) {
    printIssues(done.issues, json);
    return 2;
  }
  const { design, ground } = done.value;
  const failed = failedOf(ground);
  if (out !== undefined && failed > 0 && !acceptFailing) {
    if (!json) ground.forEach(printGround);
    printIssues([issueOf(CHECKS_FAILED, text.cli.checksFailed(failed))], json);
    return 1;
  }
  const files = out === undefined ? ok([]) : groundFolder(design, ground);
  if (!files.ok) {
    printIssues(files.issues, json);
    return 2;
  }
  const problem = out === undefined ? undefined : writePackage(out, files.value);
  if (problem) {
    printIssues([problem], json);
    return 2;
  }
  if (json) printJson(grindReport(design, ground));
  else {
    printIssues(done.issues, false);
    ground.forEach(printGround);
  }
  return failed > 0 ? 1 : 0;
};
