import { opens } from './export.ts';

export const cli = {
  name: 'jig',
  about:
    'Bevel-grinding fixtures from a blade family and a belt grinder: settings, checked parts, files to cut and print. Millimetres and degrees throughout.',
  solveAbout: 'Solve a design: settings, grind lines and facts',
  checkAbout: 'Solve, build and check a design',
  makeAbout: 'Write the complete package of a design',
  listAbout: 'List the fixture families, grinder presets and worked designs',
  schemaAbout:
    'Print the JSON Schema of a document: design, grinder, solve, check, report, readings, manifest, compare, mend, adapt, reach, grind, suit',
  fileArgument: 'a design file (*.jig.json), any exported file, a package folder or a link',
  jsonOption: 'print JSON instead of text',
  outOption: 'the package folder: missing, empty or an unchanged package',
  acceptOption: 'write the package although checks fail; every page then names them',
  unreadable: (file: string, why: string) => ({
    // A link that was cut short is taken for a file, and may be long.
    message: `The file "${file.length > 200 ? `${file.slice(0, 200)}…` : file}" cannot be read: ${why}.`,
    fix: `Look whether its name and folder are right. ${opens}`,
  }),
  notAFile: 'it is not a regular file',
  /** What the system calls the reason, in words. */
  notRead: {
    ENOENT: 'there is none of this name',
    ENOTDIR: 'there is none of this name',
    ENAMETOOLONG: 'there is none of so long a name',
    EACCES: 'you may not read it',
    EPERM: 'you may not read it',
  } as Readonly<Record<string, string>>,
  exists: (file: string) => ({
    message: `The output "${file}" exists already; an existing file is never replaced.`,
    fix: 'Give another name, or move that file away first.',
  }),
  fileUnwritable: (file: string, why: string) => ({
    message: `The file "${file}" cannot be written: ${why}.`,
    fix: 'Give a file in a folder that exists and may be written; nothing was left behind.',
  }),
  notAFolder: (dir: string) => ({
    message: `The output "${dir}" is a file; a package is a folder.`,
    fix: 'Give the path of a folder that is missing, empty or an earlier package.',
  }),
  foreignFolder: (dir: string, entry: string) => ({
    message: `The output folder "${dir}" holds "${entry}", which no package of this program put there; it would be lost.`,
    fix: 'Give the path of a folder that is missing, empty or an unchanged package, or move that entry away.',
  }),
  changedFile: (dir: string, entry: string) => ({
    message: `The file "${entry}" in the package "${dir}" was changed after it was written; the change would be lost.`,
    fix: 'Keep a copy of the changed file elsewhere and delete it here, or give another folder.',
  }),
  unwritable: (dir: string, why: string) => ({
    message: `The package cannot be written to "${dir}": ${why}.`,
    fix: 'Give a folder that may be written and has room; nothing was left behind.',
  }),
  unknownSchema: (name: string, known: string) => ({
    message: `There is no schema "${name}"; known are ${known}.`,
    fix: `Ask for one of ${known}.`,
  }),
  checksFailed: (count: number) => ({
    message: `${count} ${count === 1 ? 'check fails' : 'checks fail'}; no package was written.`,
    fix: 'Mend what the failed checks name, or write it all the same with --accept-failing; every page then names them.',
  }),
  usage: (message: string) => ({ message, fix: 'See "jig --help" or "jig COMMAND --help".' }),
  startUnknown: (argument: string, known: string) => ({
    message: `"npm start" does not know "${argument}"; it takes nothing but ${known}.`,
    fix: `Leave it out, or give ${known}: the package of the worked design is written and no app is served.`,
  }),
  internal: (detail: string) => ({
    message: `Something went wrong inside the program: ${detail}.`,
    fix: 'This is a defect of the program, not of the design. Report it with the design file; nothing was written.',
  }),
  written: (count: number, dir: string) => `${count} files in ${dir}`,
  settingsTitle: 'Settings (turns from the setting before; negative turns towards the belt)',
  turns: (turns: string) => `${turns} turns`,
  checksTitle: (passed: number, total: number) => `Checks: ${passed} of ${total} passed`,
  notComputed: 'not computed',
  atLeast: (value: string) => `at least ${value}`,
  atMost: (value: string) => `at most ${value}`,
  passed: 'pass',
  failed: 'FAIL',
  stop: (edge: string) => `stop at ${edge}`,
  familiesTitle: 'Fixture families',
  presetsTitle: 'Grinder presets',
  examplesTitle: 'Worked designs',
  filesTitle: 'Files',
  noApp: 'The app is not part of this checkout; the package above is complete.',
  serving: (url: string) => `The app is at ${url} (stop with Ctrl-C).`,
  issueLine: (severity: string, path: string, message: string, fix: string) =>
    `${severity}${path ? ` at ${path}` : ''}: ${message}\n  mend: ${fix}`,
} as const;
