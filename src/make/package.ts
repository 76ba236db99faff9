import { chain, fail, ok, type Result } from '../core/result.ts';
import type { Issue } from '../core/issue.ts';
import { plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import { saveDesign } from '../document/save.ts';
import { DESIGN_KIND, withManifest, type PackageFile } from '../export/index.ts';
import type { Fixture, Registry } from '../family/index.ts';
import { text } from '../text/index.ts';
import { checkFixture, solveDesign } from './engine.ts';
import { utf8 } from './files/bytes.ts';
import { checksFile } from './files/checks.ts';
import { drawingFiles } from './files/drawings.ts';
import { hardwareFile } from './files/hardware.ts';
import { plateFiles } from './files/plates.ts';
import { printFiles } from './files/prints.ts';
import { groundBlades } from './ground/ground.ts';
import { groundFile } from './ground/files.ts';
import { allPassed, reportOf } from './report.ts';

export interface PackageOptions {
  /** Typefaces for the PDFs, as TrueType bytes. */
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** Write the package although checks failed; every page then names them. */
  readonly acceptFailing: boolean;
  /** SHA-256 of the platform as hexadecimal digits, where it has one. */
  readonly digest?: (bytes: Uint8Array) => string;
  /** Told the share that is done, 0 to 1. */
  readonly progress?: (share: number) => void;
}

/** Grid of the maps in a package, mm: the lines on them are true to a tenth of a millimetre. */
const MAP_STEP = 2;

/** Marks a refusal because checks failed, apart from bad input. */
export const CHECKS_FAILED = 'checks-failed';

/** Numbers on the output grid: the last bits of two JavaScript engines differ. */
const onGrid = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(plain(value)) : value;

const json = (value: unknown): Uint8Array => utf8(`${JSON.stringify(value, onGrid, 2)}\n`);

/**
 * The complete package of a design, as files: cut files, prints, drawings, set-up sheet,
 * hardware list, the design itself, report and manifest. The same design gives the same bytes.
 * A failed check gives an issue and no files unless failing is accepted.
 */
export const makePackage = async (
  design: Design,
  { registry, ...options }: PackageOptions & { readonly registry: Registry },
): Promise<Result<PackageFile[]>> => {
  const solved = solveDesign(design, registry);
  if (!solved.ok) return solved;
  const family = registry.families[design.fixture.family]?.label ?? design.fixture.family;
  const made = await packageOf(design, solved.value, family, options);
  return made.ok ? ok(made.value, [...solved.issues, ...made.issues]) : made;
};

/** The package of a design that is solved; `family` is the label of its fixture family. */
export const packageOf = async (
  design: Design,
  fixture: Fixture,
  family: string,
  { fonts, acceptFailing, digest, progress = () => undefined }: PackageOptions,
): Promise<Result<PackageFile[]>> => {
  const checked = checkFixture(fixture, design.making);
  if (!checked.ok) return checked;
  const { parts, checks } = checked.value;
  const passed = allPassed(checks);
  progress(0.3);
  if (!passed && !acceptFailing) {
    const failed = checks.filter((check) => !check.passed);
    const issues = failed.map((check): Issue => ({
      code: CHECKS_FAILED,
      severity: 'error',
      path: check.parameter ?? '',
      message: check.message,
      fix: check.fix,
    }));
    return fail(...issues);
  }
  const carry = saveDesign(design);
  const made = chain(plateFiles(parts, design.making, carry), (plates) =>
    chain(printFiles(parts, design.making, carry), (prints) => ok([...plates, ...prints])),
  );
  if (!made.ok) return made;
  progress(0.5);
  const ground = fixture.virtual
    ? groundBlades(design, fixture, {
        step: MAP_STEP,
        progress: (share) => progress(0.5 + 0.2 * share),
      })
    : ok([]);
  if (!ground.ok) return ground;
  const drawings = await drawingFiles({
    design,
    fixture,
    parts,
    checks,
    family,
    fonts,
    carry,
    made: made.value,
    ground: ground.value,
  });
  progress(0.95);
  const files: PackageFile[] = [
    ...made.value,
    ...drawings,
    hardwareFile(parts, fixture.supplies),
    checksFile(checks),
    ...(ground.value.length > 0 ? [groundFile(ground.value)] : []),
    { path: text.make.designFile, kind: DESIGN_KIND, bytes: utf8(carry) },
    {
      path: 'report.json',
      kind: 'report',
      bytes: json(reportOf(design, fixture, parts, checks, carry)),
    },
  ];
  return ok(withManifest(files, { design: design.name, passed }, carry, digest), [
    ...checked.issues,
    ...made.issues,
  ]);
};
