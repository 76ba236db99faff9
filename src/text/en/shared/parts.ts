const mm = (value: number, decimals = 2): string =>
  `${String(Math.round(value * 10 ** decimals) / 10 ** decimals)} mm`;

/** Names, notes and purposes of parts that several families have. */
export const parts = {
  names: {
    base: 'Base',
    nose: 'Nose',
    packer: 'Packer',
    strip: 'Guide strip',
    keeper: 'Keeper',
    bar: 'Clamp bar',
    collar: 'Stop collar plate',
    bracket: 'Feed bracket',
    lug: 'Feed lug',
    knob: 'Knob',
    pushBody: 'Push block',
    pushStick: 'Push stick',
    pushPad: (i: number) => `Push pad ${String(i)}`,
  },
  finish: {
    plate: 'Deburr all edges 0.2 to 0.4 mm; leave bare, oil lightly',
    nose: 'Top flat and deburred; front upper edge broken 0.1 mm at most',
    print: 'As printed; remove strings from holes',
    stock: 'Sawn square, deburred',
  },
  purpose: {
    noseScrew: 'Thread of a nose screw',
    noseSlot: 'Slot of a nose screw: the nose is set to the belt',
    lockThread: 'Thread of a locking screw',
    lockPassage: 'Passage of a locking screw',
    lockSlot: 'Slot of a locking screw, as long as the travel',
    guidePin: (drill: number, pin: number) =>
      `Guide pin, press fit: cut or drill ${mm(drill)}, then ream ${mm(pin)} H7 (ISO 286-2) with base and packer bolted together`,
    guideSlot: 'Guide slot over the pins: file or ream to a sliding fit',
    packerThread: 'Thread of a packer screw',
    packerPassage: 'Passage of a packer screw',
    stripThread: 'Thread of a guide screw',
    stripPassage: 'Passage of a guide screw',
    stripAdjust: 'Oversize passage of a guide screw: the strip is set to the plate that slides',
    bracketThread: 'Thread of a bracket screw',
    bracketPassage: 'Passage of a bracket screw',
    lugThread: 'Thread of a lug screw',
    lugPassage: 'Passage of a lug screw',
    feedNut: 'Thread of the feed screw: this leg is the feed nut',
    feedPassage: 'Passage of the feed screw, turning',
    mountThread: 'Thread of a mounting screw from below',
    mountPassage: 'Passage of a mounting screw',
    mountRelief: 'Room for the head of a mounting screw',
    collarPassage: 'Passage of a collar screw',
    knobBore: 'Bore for the screw',
  },
  notes: {
    seat: 'The top is the seat: keep it flat over the whole length.',
    sides: 'Both side faces are stroke stops: keep them square to the front and the two equal.',
    openSlots: 'Slots: drill both ends and the middle, then file out what is left between.',
    transfer: 'Drill through packer and base clamped together, so that their holes agree.',
    ream: 'Ream the pin holes through packer and base bolted together.',
    sameSheet:
      'Cut from the same sheet as the plate that slides: its thickness sets the play under the keepers.',
    keeperShim: 'Put one thickness of paper (0.1 mm) between strip and keeper.',
    keeperLock: 'The locking screw in the middle presses the plate that slides onto the packer.',
    fromBelow: 'Mounting screws come from below; no screw may stand above this plate.',
    barUnder: 'Goes under the rest, across it; its screws pass outside.',
    collar: (distance: number) =>
      `Clamp with the inner face ${mm(distance, 1)} from the plunge; line it with thin leather or tape.`,
    angle: 'Sharp corners of the angle broken; legs square to each other as bought.',
    scribe: 'Scribe the index line for the knob across the middle of the upper edge.',
    knob: '50 divisions: one is 0.02 mm of travel. The wide notch is zero.',
    knobHead: 'The nut of the feed screw goes into the hexagon from the back.',
    printAway: 'Keep away from the belt, from heat and from sparks.',
    printSolid: 'Print with at least 4 walls and 30 % filling.',
    stick: (where: string, stop: number) =>
      `For the last of the tip: ${where}; hand behind the stop, ${mm(stop, 0)} from the nose. The belt wears it: print it anew when it is marked.`,
    padWear: 'A pad wears: replace it when the belt has marked it.',
    padHeight: (height: number) =>
      `Touches the blade ${mm(height, 1)} above the seat: mark it with its number.`,
    padSlide: 'Slides in the groove: set it opposite the belt where the blade is behind it.',
  },
  angleSection: (leg: number, wall: number) =>
    `Equal angle EN 10056-1 - ${String(leg)} x ${String(leg)} x ${String(wall)}`,
} as const;
