import { hasError, problem, type Issue } from '../core/issue.ts';
import { fail, ok, chain, type Result } from '../core/result.ts';
import { grinderIssues } from '../grinder/rules.ts';
import { grinderSchema, type Grinder } from '../grinder/schema.ts';
import { checkFields } from '../schema/check.ts';
import { text } from '../text/index.ts';
import { designFormat, grinderFormat } from './formats.ts';
import { parseJson } from './json.ts';
import { checkParameters } from './family-parameters.ts';
import { designIssues } from './rules.ts';
import { documentSchema, type Design, type Families } from './schema.ts';
import { upgrade, type Draft } from './version.ts';

/** Largest file that is opened: some ten times the largest design that passes the schema. */
export const MAX_DESIGN_BYTES = 512 * 1024;
export const MAX_GRINDER_BYTES = 64 * 1024;

const withIssues = <T>(value: T, issues: readonly Issue[]): Result<T> =>
  hasError(issues) ? { ok: false, issues } : ok(value, issues);

/** Brings the grinder inside a design to the present version of its own format. */
const upgradeGrinder = (draft: Draft): Result<Draft> =>
  draft.grinder === undefined
    ? ok(draft)
    : chain(upgrade(draft.grinder, grinderFormat, 'grinder'), (grinder) =>
        ok({ ...draft, grinder }),
      );

/** Checks the fixture's parameters by the table of its family. */
const checkFixture = (design: Design, { families }: Families): Result<Design> => {
  const { family, parameters } = design.fixture;
  const known = Object.hasOwn(families, family) ? families[family] : undefined;
  if (known === undefined) {
    const names = Object.keys(families).join(', ');
    const words = text.document.open.unknownFamily(family, names);
    return fail(problem('family-unknown', 'fixture.family', words));
  }
  return chain(checkParameters(known.parameters, parameters), (checked) =>
    ok({ ...design, fixture: { ...design.fixture, parameters: checked } }),
  );
};

/** Fields and the family's parameters, each by itself. */
const checkValues = (data: unknown, registry: Families): Result<Design> =>
  chain(checkFields(documentSchema, data), (fields) => checkFixture(fields, registry));

/**
 * Checks plain data as a design of the present version: fields, the family's parameters, and
 * what holds them together. For data that never was a file, such as a design under edit.
 */
export const checkDesign = (data: unknown, registry: Families): Result<Design> =>
  chain(checkValues(data, registry), (design) => withIssues(design, designIssues(design)));

/** Checks plain data as a grinder of the present version. */
export const checkGrinder = (data: unknown): Result<Grinder> =>
  chain(checkFields(grinderSchema, data), (grinder) => withIssues(grinder, grinderIssues(grinder)));

const openWith = (
  input: Uint8Array | string,
  check: (data: unknown) => Result<Design>,
): Result<Design> =>
  chain(parseJson(input, MAX_DESIGN_BYTES), (data) =>
    chain(upgrade(data, designFormat), (draft) => chain(upgradeGrinder(draft), check)),
  );

/**
 * Opens a design file; there is no other way in. Size, nesting and keys are bounded before
 * anything looks at the content; a file of a newer version is refused untouched; older ones are
 * migrated; then every field is checked, and the fields against each other. Initial values
 * stand in for what is left out; unknown fields are dropped with a warning each.
 */
export const openDesign = (input: Uint8Array | string, registry: Families): Result<Design> =>
  openWith(input, (data) => checkDesign(data, registry));

/** The same of a design whose values may contradict each other, as it is opened to be mended. */
export const openToMend = (input: Uint8Array | string, registry: Families): Result<Design> =>
  openWith(input, (data) => checkValues(data, registry));

/** Opens a grinder file; see `openDesign`. */
export const openGrinder = (input: Uint8Array | string): Result<Grinder> =>
  chain(parseJson(input, MAX_GRINDER_BYTES), (data) =>
    chain(upgrade(data, grinderFormat), checkGrinder),
  );
