import { mm } from './lengths.ts';

export const rules = {
  below: (feature: string, value: number, least: number) =>
    `${feature} is ${mm(value)}; the process needs at least ${mm(least)}.`,
  tight: (feature: string, value: number, advised: number) =>
    `${feature} is ${mm(value)}; ${mm(advised)} or more is advised for the process.`,
  hole: (part: string, hole: string) => `The diameter of hole "${hole}" of ${part}`,
  slot: (part: string, hole: string) => `The width of slot "${hole}" of ${part}`,
  edge: (part: string, hole: string) =>
    `The material between hole "${hole}" and the outline of ${part}`,
  web: (part: string, one: string, other: string) =>
    `The material between holes "${one}" and "${other}" of ${part}`,
  wall: (part: string, layer: number) => `The thinnest wall in layer ${String(layer)} of ${part}`,
  post: (part: string, layer: number) =>
    `The diameter of the post in layer ${String(layer)} of ${part}`,
  innerCorner: (part: string, count: number, radius: number) =>
    `${part} has ${String(count)} inner corners sharper than the cut: they come out with a radius of about ${mm(radius)}.`,
  larger: 'Make it larger, use thinner sheet, or mark it and drill it afterwards.',
  inward: 'Move the hole inward, make it smaller or make the plate larger.',
  apart: 'Move the holes apart or make them smaller.',
  thicker: 'Make it thicker, or print with a finer nozzle.',
  relieve: 'Round the corners, or file them where a square edge has to fit.',
} as const;
