import { mm } from './lengths.ts';

const list = (lengths: readonly number[]): string => lengths.map(String).join(', ');

export const materials = {
  steel: 'Mild steel',
  stainless: 'Stainless steel',
  aluminium: 'Aluminium alloy',
  brass: 'Brass',
  PLA: 'PLA',
  PETG: 'PETG',
  ABS: 'ABS',
  ASA: 'ASA',
  PA: 'Polyamide',
  POM: 'POM',
  'UHMW-PE': 'UHMW-PE',
  plywood: 'Birch plywood',
} as const;

export const hardware = {
  asBought: 'as bought',
  steel: 'Steel',
  clearanceStandard: (fit: 'close' | 'normal' | 'loose') => `ISO 273, ${fit}`,
  capScrew: (size: string) => `Socket head cap screw ${size}`,

  buttonScrew: (size: string) => `Button head screw ${size}`,
  countersunkScrew: (size: string) => `Countersunk screw ${size}`,
  setScrew: (size: string) => `Socket set screw ${size}`,
  threadedRod: (size: string) => `Threaded rod ${size}`,
  dowelPin: (size: string) => `Dowel pin ${size}`,
  nut: {
    full: (thread: string) => `Hexagon nut ${thread}`,
    thin: (thread: string) => `Thin hexagon nut ${thread}`,
    lock: (thread: string) => `Lock nut ${thread} with insert`,
  },
  washer: {
    plain: (thread: string) => `Washer for ${thread}`,
    large: (thread: string) => `Large washer for ${thread}`,
  },
  notListed: (what: string, length: number, lengths: readonly number[]) => ({
    message: `${what} is not made ${mm(length)} long; the listed lengths are ${list(lengths)} mm.`,
    fix: 'Choose one of the listed lengths.',
  }),
  rodLength: (length: number) => ({
    message: `A threaded rod of ${mm(length)} cannot be ordered; whole millimetres from 1 mm to 1000 mm can.`,
    fix: 'Round the length to whole millimetres.',
  }),
} as const;
