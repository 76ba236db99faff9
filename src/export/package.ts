import { strFromU8, strToU8 } from 'fflate';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { carried } from './carry.ts';
import { lintIssue } from './lint/lint-issue.ts';
import { sha256 } from './sha256.ts';
import { unzip, zip } from './zip.ts';

/** A file of a package. */
export interface PackageFile {
  /** Relative to the package, forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** What it is for: "cut-file", "drawing", "print"; the design itself is "design". */
  readonly kind: string;
  /** Part it makes and how often, where it makes one. */
  readonly part?: string;
  readonly quantity?: number;
}

/** What a package says of itself. */
export interface Manifest {
  readonly format: 'platenwright-package';
  readonly schema: 1;
  /** Name of the design. */
  readonly design: string;
  /** Whether every check passed. */
  readonly passed: boolean;
  readonly files: readonly (Omit<PackageFile, 'bytes'> & { readonly sha256: string })[];
  /** The design it was made from, as every file carries it. */
  readonly carried?: string;
}

/** Kind of the one file that is the design. */
export const DESIGN_KIND = 'design';

const MANIFEST = 'manifest.json';

const byPath = (a: PackageFile, b: PackageFile): number =>
  a.path < b.path ? -1 : a.path > b.path ? 1 : 0;

/**
 * The files in the order of their paths with the manifest that lists them, its own line apart. A
 * shell whose platform computes SHA-256, which is many times as fast, hands that in.
 */
export const withManifest = (
  files: readonly PackageFile[],
  of: { readonly design: string; readonly passed: boolean },
  carry?: string,
  digest: (bytes: Uint8Array) => string = sha256,
): PackageFile[] => {
  const sorted = [...files].sort(byPath);
  const manifest: Manifest = {
    format: 'platenwright-package',
    schema: 1,
    ...of,
    files: sorted.map(({ bytes, ...rest }) => ({ ...rest, sha256: digest(bytes) })),
    ...(carry === undefined ? {} : { carried: carried(carry) }),
  };
  const bytes = strToU8(`${JSON.stringify(manifest, null, 2)}\n`);
  return [...sorted, { path: MANIFEST, kind: 'manifest', bytes }];
};

/** One archive of all files; the same files give the same bytes. */
export const zipPackage = (files: readonly PackageFile[]): Uint8Array => zip(files);

interface Listed {
  readonly path: string;
  readonly kind: string;
  readonly sha256: string;
}

const isListed = (file: unknown): file is Listed =>
  typeof file === 'object' &&
  file !== null &&
  ['path', 'kind', 'sha256'].every(
    (key) => typeof (file as Record<string, unknown>)[key] === 'string',
  );

const parseManifest = (bytes: Uint8Array): readonly Listed[] | undefined => {
  try {
    const read: unknown = JSON.parse(strFromU8(bytes));
    if (typeof read !== 'object' || read === null) return undefined;
    if (!('format' in read) || read.format !== 'platenwright-package') return undefined;
    return 'files' in read && Array.isArray(read.files) && read.files.every(isListed)
      ? read.files
      : undefined;
  } catch {
    return undefined;
  }
};

/**
 * The files of a packed package, by path. Fails when it is no package, when a listed file is
 * missing or was changed, or when it holds a file that is not listed.
 */
export const readPackage = (archive: Uint8Array): Result<readonly PackageFile[]> => {
  const unpacked = unzip(archive);
  if (!unpacked.ok) return unpacked;
  const listed = parseManifest(unpacked.value.get(MANIFEST) ?? new Uint8Array());
  if (listed === undefined) return fail(lintIssue('no-package', text.exporting.noPackage));
  const strays = [...unpacked.value.keys()].filter(
    (path) => path !== MANIFEST && !listed.some((file) => file.path === path),
  );
  const changed = listed.filter(({ path, sha256: sum }) => {
    const bytes = unpacked.value.get(path);
    return bytes === undefined || sha256(bytes) !== sum;
  });
  const wrong = [...strays, ...changed.map(({ path }) => path)];
  if (wrong.length > 0)
    return fail(lintIssue('package-changed', text.exporting.packageChanged(wrong)));
  return ok(
    listed.map(({ path, kind }) => ({
      path,
      kind,
      bytes: unpacked.value.get(path) ?? new Uint8Array(),
    })),
  );
};
