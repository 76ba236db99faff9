/** Words of the steps of building that fixtures on base, packer and a sliding plate share. */
import { mm, n } from '../rounded.ts';

/** A screw that holds parts: its length, and the washers under its head. */
export interface Fastened {
  readonly length: number;
  readonly washers: readonly ('plain' | 'large')[];
}

/** What the sentences of building need to know. */
export interface BuildOf {
  readonly strips: boolean;
  readonly mount: 'screws' | 'bars' | 'from-above';
  readonly mountThread: string;
  readonly mountScrew: Fastened;
  readonly noseScrew: Fastened;
  readonly packerScrew: Fastened;
  readonly bracketScrew: Fastened;
  readonly lugScrew: Fastened;
  readonly lockScrew: Fastened;
  readonly feed: number;
  readonly guidePlay: number;
}

/** What a family calls the plate that slides, the nose, and what both stand before. */
export interface BuildNames {
  readonly slide: string;
  readonly nose: string;
  readonly front: string;
}

/** What lies under heads: " (each on two large washers)". */
export const ringed = (washers: Fastened['washers'], screws = 2): string => {
  const counts = ['no', 'a', 'two', 'three', 'four'];
  const told = (series: 'plain' | 'large'): string[] => {
    const count = washers.filter((one) => one === series).length;
    const kind = `${series === 'large' ? 'large ' : ''}washer${count > 1 ? 's' : ''}`;
    return count === 0 ? [] : [`${counts[count] ?? String(count)} ${kind}`];
  };
  return washers.length === 0
    ? ''
    : ` (${screws > 1 ? 'each ' : ''}on ${[...told('large'), ...told('plain')].join(' and ')})`;
};

/** A screw by its name, and what lies under its head. */
export const held = (thread: string, { length, washers }: Fastened): string =>
  `${thread} x ${n(length)}${ringed(washers)}`;

/** Tools that every one of them takes; `own` in the order of the work. */
export const tools = (own: readonly string[]): string =>
  `Tools: files, a hacksaw, square, scriber, centre punch, ${[
    ...own,
    'hexagon keys, spanners, feeler gauges',
    'calipers, a straight edge, a vice, eye protection',
  ].join(', ')}.`;

/** Drills and what else the hole tables ask for. */
export const drilling = (reamed: boolean, countersunk: boolean): string =>
  `drills${countersunk ? ', a 90 degree countersink' : ''} and taps named in the hole tables${reamed ? ', a reamer 6 H7' : ''}`;

const tap = (mounted: boolean): string =>
  `Tap every thread that the hole tables name, square to its face${mounted ? ': from above, the mounting threads of the base from below' : ''}. Blow out every thread and put a drop of oil into it.`;

/** Packer and base together, and the plate fitted to its guide. */
export const guided = (s: BuildOf, { slide }: BuildNames): string[] => {
  const threads = tap(s.mount !== 'from-above');
  return s.strips
    ? [
        `Square the two long edges of the ${slide} and its front face: file until the square shows no light, then measure its width at both ends. It is what the strips guide.`,
        'Clamp packer and base together, rear edges and sides flush, and drill the packer holes through both with the tap drill; open the packer holes to their passage size.',
        threads,
      ]
    : [
        threads,
        `Bolt packer and base together, rear edges and sides flush, with four packer screws ${held('M6', s.packerScrew)}. Ream the two guide pin holes through both and press the pins in from above until they stand just below the top of the ${slide}.`,
        `Fit the guide slot of the ${slide} over the pins: it must slide along its whole travel without binding and rock by no more than ${mm(s.guidePlay)}. File the slot, not the pins.`,
      ];
};

/** Base and nose on the rest, finger tight. */
export const mounted = (s: BuildOf, { nose, front }: BuildNames): string[] => {
  const screws = `${s.mountThread} x ${n(s.mountScrew.length)}`;
  const under = ringed(s.mountScrew.washers);
  return [
    s.mount === 'bars'
      ? `Lay the base on the rest, front edge towards the ${front}. Hold the two clamp bars across the underside with the four mounting screws ${screws}${under} from below, finger tight.`
      : s.mount === 'screws'
        ? `Lay the base on the rest, front edge towards the ${front}. Put the mounting screws ${screws}${under} through the rest from below, finger tight.`
        : `Lay base and packer on the rest, front edge towards the ${front}. Put the mounting screws ${screws}${under} through the holes of the packer into the threads of the rest, finger tight.`,
    `Put the ${nose} on the base with its two screws ${held('M6', s.noseScrew)}, finger tight.`,
  ];
};

/** The plate that slides, on packer and nose. */
export const sliding = (s: BuildOf, { slide, nose }: BuildNames): string[] =>
  s.strips
    ? [
        `Lay the ${slide} on packer and ${nose}, a guide strip on either side, one thickness of paper on each strip, then the two keepers; hold them with four guide screws ${held('M6', s.packerScrew)}. Press the strips lightly against the ${slide} with a feeler of ${mm(s.guidePlay / 2)} on either side, tighten the screws firmly, take the feelers and try the travel. Remove the paper only if the ${slide} is loose up and down.`,
        `Screw one locking screw M6 x ${n(s.lockScrew.length)} into each keeper.`,
      ]
    : [
        `Lay the ${slide} over the pins on packer and ${nose} and hold it with two locking screws ${held('M6', s.lockScrew)}.`,
      ];

/** Lug, bracket and feed screw. */
export const fed = (s: BuildOf, { slide }: BuildNames): string[] => [
  `Screw the lug to the rear of the ${slide} with two screws ${held('M5', s.lugScrew)}, its leg at the rear edge; their ends must not stand out below. Screw the bracket to the packer with two screws ${held('M6', s.bracketScrew)}, its leg at the rear edge of the base.`,
  `Saw the feed screw, ${n(s.feed)} mm, from threaded rod M6 and dress its ends. Turn a nut onto one end until it is flush, sink it into the hexagon of the knob and lock it with a thin nut on the front of the knob. Grease the thread, screw the rod through the bracket; put a thin nut and a nut on it, pass the lug, put a nut and a thin nut in front of it.`,
  'Close the nuts on both sides of the lug until the screw just turns without play, and lock each nut with its thin nut. Turn the knob through the whole travel: it must run evenly.',
];

/** How tight screws are made, by their threads. */
export const tight = (threads: 'M6, M5' | 'M6, M5, M4'): string =>
  `Tighten by feel: M6 firmly with a short key (about 8 N m), M5 about 5 N m${threads === 'M6, M5' ? '' : ', M4 about 2 N m'}, nothing that holds plastic more than snug.`;
