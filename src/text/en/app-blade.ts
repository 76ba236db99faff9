/** What the page says about entering a blade. */
export const blade = {
  which: 'Blade in view',
  add: 'Another blade like this one',
  remove: 'Take this blade out',
  copyName: (name: string) => `${name} 2`.slice(0, 60),
  side: 'Side view',
  plan: 'Seen from the spine',
  section: 'Section in the middle',
  spine: 'spine',
  edge: 'edge',
  plunge: 'plunge',
  left: 'left',
  right: 'right',
  caption: 'Tang to the left, edge down. Distances along the blade run from the plunge.',
  sectionCaption: 'Looking from the tang towards the tip. Solid: as wanted. Dashed: the blank.',
  sectionNoWheel:
    'Looking from the tang towards the tip. Dashed: the blank. The hollow is not drawn: this grinder has no such wheel at the front.',
  curves: (n: number) =>
    `Drawn through ${n} points: length and heights only tell. “Scale the whole outline to” gives it another length.`,
  scale: {
    label: 'Scale the whole outline to',
    meaning:
      'Scales the outline with all its heights; thickness, edge, bevels and tang stay as they are.',
    reason: 'No blade is shorter or longer.',
  },
  alike: 'Grind the right side like the left',
  groups: {
    general: 'Name and number',
    outline: 'Outline',
    body: 'Thickness and spine',
    bevels: 'What is ground',
    line: 'Grind line',
    tang: 'Tang or handle',
  },
  kind: 'How it is stated',
} as const;
