import type { glossary } from '../../text/en/glossary.ts';

/** A small picture of a word, in a box 96 wide and 64 high: what surrounds it, and the thing itself. */
export interface WordPicture {
  readonly around: string;
  readonly thing: string;
}

/** A blade from the side, tang to the left and edge down. */
const SIDE = 'M4 22H26V16H56Q78 17 92 30Q76 48 48 48H26V34H4Z';
/** A blade across: spine at the top, ground to the edge. */
const ACROSS = 'M40 6H56V30L49 58H47L40 30Z';
/** At the belt: the belt on the left, nose below, step behind, the blade edge up. */
const BELT = 'M20 2V62';
const NOSE = 'M24 44H60V54H24Z';
const STEP = 'M40 34H90V44H40Z';
const BLADE = 'M30 44L21 8H24L40 42V44Z';
const SET = `${BELT}${NOSE}${STEP}${BLADE}`;
/** A carriage at the belt: base, fence and foot, sole and upright, heel screw, blade and jaw. */
const BASE = 'M23 54H92V60H23Z';
const FENCE = 'M24 48H35V54H24Z';
const FOOT = 'M41 48m-6 0a6 6 0 1 0 12 0a6 6 0 1 0 -12 0';
const SOLE = 'M31 37L88 31L89 36L32 42Z';
const UPRIGHT = 'M28 12L33 11L37 36L31 37Z';
const HEEL = 'M76 24H80V54H76Z';
const CLAMPED = 'M22 4L26 4L31 34H27Z';
const JAW = 'M14 14H19L24 34H19Z';
const CARRIAGE = `${BELT}${BASE}${FENCE}${FOOT}${SOLE}${UPRIGHT}${HEEL}${CLAMPED}`;
/** Under a wheel: abrasive, seat and blade. */
const WHEEL = 'M30 2Q44 30 30 62M40 46V10H46V46';
/** Platen and belt from the side. */
const PLATEN = 'M34 6H46V58H34Z';

/** One picture a word of the glossary. */
export const wordPictures: Readonly<Record<keyof typeof glossary, WordPicture>> = {
  setoff: { around: SET, thing: 'M20 58H40M20 55V61M40 55V61' },
  plunge: { around: SIDE, thing: 'M26 10V56' },
  ricasso: { around: SIDE, thing: 'M26 16H38V48H26Z' },
  belly: { around: SIDE, thing: 'M92 30Q76 48 48 48' },
  thicknessBehindEdge: { around: ACROSS, thing: 'M38 58H47M49 58H58M47 54V62M49 54V62' },
  backing: { around: `${PLATEN}M56 2V62`, thing: 'M46 6H53V58H46Z' },
  liner: { around: `${PLATEN}M56 2V62`, thing: 'M46 6H49V58H46Z' },
  flutter: { around: PLATEN, thing: 'M50 2V14Q62 32 50 50V62M50 14V50' },
  lean: { around: 'M30 58V6M10 58H86', thing: 'M30 58L44 8M30 20Q36 18 40 21' },
  grindLine: { around: SIDE, thing: 'M26 34H52Q74 34 88 30' },
  leftStanding: { around: ACROSS, thing: 'M49 58L52 44L56 46V58Z' },
  pushWindow: { around: SET, thing: 'M56 12V28M52 12H60M52 28H60M50 20H28' },
  undercut: { around: ACROSS, thing: 'M56 30L49 58M56 26L52 44L49 52' },
  offset: { around: BELT, thing: 'M44 20V54M54 20V54M44 14H54M44 11V17M54 11V17' },
  toleranceBudget: { around: 'M8 56H88', thing: 'M14 56V40H26V56M36 56V20H48V56M58 56V34H70V56' },
  nose: { around: `${BELT}${STEP}${BLADE}`, thing: NOSE },
  seat: { around: SET, thing: 'M24 44H60' },
  step: { around: `${BELT}${NOSE}${BLADE}${STEP}`, thing: 'M40 34V44' },
  packer: { around: `${SET}`, thing: 'M64 44H90V54H64Z' },
  keeper: { around: SET, thing: 'M60 26H72V34H60Z' },
  stopCollar: { around: SIDE, thing: 'M14 14H22V42H14Z' },
  pushBlock: { around: SET, thing: 'M44 14H76V34H44ZM44 20H28' },
  pinZero: {
    around: `${BELT}M38 20H90V44H38Z`,
    thing: 'M29 32m-9 0a9 9 0 1 0 18 0a9 9 0 1 0 -18 0',
  },
  virtualGrind: { around: `${SIDE}M60 2V62`, thing: 'M56 20L88 30M50 26L84 34M44 32L78 40' },
  sectionModel: { around: SIDE, thing: 'M36 12V52M50 12V52M64 14V50M78 18V46' },
  standing: { around: ACROSS, thing: 'M56 30L49 58L53 58L60 32Z' },
  lineStrip: { around: SIDE, thing: 'M28 20H60Q74 21 84 26L82 29Q72 25 60 24H28Z' },
  roundedStep: { around: `${BELT}${NOSE}${BLADE}`, thing: 'M90 34H46Q40 34 40 39Q40 44 46 44H90Z' },
  lip: { around: 'M4 54H92M30 2Q44 30 30 62M40 54V10H46V54', thing: 'M34 54V42H38V54' },
  web: {
    around: 'M38 6H58V18Q50 32 58 46V58H38V46Q46 32 38 18Z',
    thing: 'M30 32H43M53 32H66M43 28V36M53 28V36',
  },
  guided: { around: SIDE, thing: 'M30 56H70M30 52V60M70 52V60' },
  setting: { around: SET, thing: 'M20 30H29M80 30H94M87 24V36' },
  stroke: { around: `${SIDE}M52 4V60M60 4V60`, thing: 'M20 56H80M74 52L80 56L74 60' },
  yaw: { around: 'M4 20H92M30 8H66V20H30Z', thing: 'M8 30L88 44L88 40L8 26ZM70 24Q76 32 72 38' },
  midplane: { around: ACROSS, thing: 'M48 2V62' },
  keepOut: { around: `${PLATEN}M56 2V62`, thing: 'M8 10H32V54H8Z' },
  pushStick: { around: SET, thing: 'M28 24L32 22L60 4L63 8L34 28Z' },
  pushPad: { around: `${SET}M50 14H78V34H50Z`, thing: 'M50 18H32A3 3 0 0 0 32 24H50Z' },
  carriage: {
    around: `${BELT}${BASE}${FENCE}${CLAMPED}`,
    thing: `${FOOT}${SOLE}${UPRIGHT}${HEEL}`,
  },
  fence: { around: CARRIAGE, thing: FENCE },
  foot: { around: CARRIAGE, thing: FOOT },
  heelScrew: { around: CARRIAGE, thing: HEEL },
  sole: { around: CARRIAGE, thing: SOLE },
  upright: { around: CARRIAGE, thing: UPRIGHT },
  jaw: { around: CARRIAGE, thing: JAW },
  wearStrip: { around: `${WHEEL}M38 52H92V60H38Z`, thing: 'M38 46H64V52H38Z' },
  lipSlide: { around: `${WHEEL}M38 46H64V52H38Z`, thing: 'M38 52H92V60H38Z' },
  carrier: { around: `${PLATEN}M64 2V62`, thing: 'M28 12H58V20H28ZM28 44H58V52H28Z' },
};
