import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import type { PackageFile } from '../../src/export/index.ts';
import { has, run } from '../export/samples.ts';

/** The Python that Debian's ezdxf is installed for. */
export const python = ['/usr/bin/python3', 'python3'].find((p) => has(p, ['-c', 'import ezdxf']));
export const hasAdmesh = has('admesh');
export const hasPoppler = has('pdfinfo', ['-v']) && has('pdftotext', ['-v']);
const LIB3MF = "import ctypes; ctypes.CDLL('lib3MF.so.1')";
export const python3mf = ['/usr/bin/python3', 'python3'].find((p) => has(p, ['-c', LIB3MF]));

/** Writes files into a new folder and tells where each went. */
export const written = (files: readonly PackageFile[]): string[] => {
  const folder = mkdtempSync(join(tmpdir(), 'files-'));
  return files.map(({ path, bytes }) => {
    const to = join(folder, path);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, bytes);
    return to;
  });
};

/** Errors and fixes of ezdxf's audit, one line a file that has any. */
export const auditDxf = (paths: readonly string[]): string[] => {
  const script = `
import sys
from ezdxf import recover
for path in sys.argv[1:]:
    doc, auditor = recover.readfile(path)
    if auditor.errors or auditor.fixes or len(doc.modelspace()) == 0:
        print(path, len(auditor.errors), len(auditor.fixes), len(doc.modelspace()))
`;
  return run(python ?? '', ['-c', script, ...paths])
    .split('\n')
    .filter(Boolean);
};

/** What lib3mf, the consortium's own reader, warns of, and objects it finds not closed or not oriented. */
export const read3mf = (paths: readonly string[]): string[] => {
  const script = `
import ctypes, sys
lib = ctypes.CDLL('lib3MF.so.1')
def call(name, *args):
    code = getattr(lib, name)(*args)
    if code != 0: raise OSError(f'{name}: {code:#x}')
def made(name, *args):
    out = ctypes.c_void_p()
    call(name, *args, ctypes.byref(out))
    return out
def number(name, *args):
    out = ctypes.c_int32()
    call(name, *args, ctypes.byref(out))
    return out.value
for path in sys.argv[1:]:
    model = made('lib3mf_createmodel')
    reader = made('lib3mf_model_queryreader', model, b'3mf')
    call('lib3mf_reader_readfromfileutf8', reader, path.encode())
    warnings = number('lib3mf_reader_getwarningcount', reader)
    meshes = made('lib3mf_model_getmeshobjects', model)
    good = []
    while number('lib3mf_resourceiterator_movenext', meshes):
        mesh = made('lib3mf_resourceiterator_getcurrent', meshes)
        good.append(number('lib3mf_meshobject_ismanifoldandoriented', mesh))
    if warnings or not good or not all(good): print(path, warnings, good)
`;
  return run(python3mf ?? '', ['-c', script, ...paths])
    .split('\n')
    .filter(Boolean);
};

/**
 * Where the 3MF Consortium's published core schema lies, to be told by who has it: it is not ours to
 * ship. Undefined without xmllint to hold files against it.
 */
export const coreSchema = has('xmllint') ? process.env['THREEMF_XSD'] : undefined;

/** What xmllint finds against the core schema in the models of 3MF files. */
export const schemaFaults = (paths: readonly string[]): string[] =>
  paths.flatMap((path) => {
    const model = unzipSync(readFileSync(path))['3D/3dmodel.model'];
    if (!model) return [`${path}: no model`];
    const to = `${path}.xml`;
    writeFileSync(to, model);
    const { status, stderr } = spawnSync(
      'xmllint',
      ['--noout', '--nonet', '--schema', coreSchema ?? '', to],
      { encoding: 'utf8' },
    );
    return status === 0 ? [] : [stderr];
  });

const COUNTS = [
  'Total disconnected facets',
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets reversed',
  'Backwards edges',
  'Normals fixed',
];

/** Every count of admesh that is not nil, one line each. */
export const admeshFaults = (paths: readonly string[]): string[] =>
  paths.flatMap((path) => {
    const report = run('admesh', [path]);
    return COUNTS.flatMap((label) => {
      const count = new RegExp(`${label}\\s*:\\s*(-?\\d+)`).exec(report)?.[1];
      return count === '0' ? [] : [`${path}: ${label} ${count ?? 'not told'}`];
    });
  });

/** Page sizes, points, and the text of a PDF as poppler reads it. */
export const readPdf = (path: string) => {
  const info = spawnSync('pdfinfo', ['-l', '9999', path], { encoding: 'utf8' });
  return {
    complaints: info.stderr,
    sizes: [...info.stdout.matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm)].map(
      ([, w, h]): [number, number] => [Number(w), Number(h)],
    ),
    text: run('pdftotext', ['-layout', path, '-']),
  };
};
